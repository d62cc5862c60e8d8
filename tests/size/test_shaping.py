"""Loose numbers behind a tin's width: a depth with its own unit, else a question."""

from krume.size import Tin
from krume.size.asking import Asking
from krume.size.shaping import build_tin
from krume.size.sizes import Sizes


def test_a_second_length_with_its_own_unit_is_the_depth() -> None:
    sizes = Sizes("cm", groups=[[20.0]], loose=[5.0])
    tin = build_tin("round", sizes, Asking("typed", "tin"), Tin("typed", "round"))
    assert tin is not None and tin.height_cm == 5.0


def test_a_bare_second_number_is_asked() -> None:
    asking = Asking("20 cm ring 6", "tin")
    sizes = Sizes("cm", groups=[[20.0]], loose=[6.0], loose_has_unit=False)
    assert build_tin("ring", sizes, asking, Tin("typed", "ring")) is None
    assert [o.line for o in asking.problems[0].options] == [
        "ring 20 x 6 cm",
        "ring-mould 20 cm, hole 6 cm",
    ]
