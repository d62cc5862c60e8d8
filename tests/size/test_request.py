"""What the size job is asked: plain values with usual ones."""

from krume.size import SizeLine, SizeRequest, Tin
from krume.size.request import EGGS


def test_whole_eggs_and_a_tenth_of_a_gram_are_usual() -> None:
    request = SizeRequest((SizeLine("rice", 40.0),), (Tin("", "round", diameter_cm=20.0),))
    assert (request.eggs, request.step_g, request.depth_cm) == ("whole", 0.1, None)
    assert request.eggs in EGGS
