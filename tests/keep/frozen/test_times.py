"""Hours of freezing and thawing: thicker takes longer, and no figure beyond what is asked about."""

from dataclasses import replace

import pytest

from krume.base import OutOfRangeError
from krume.keep.frozen import ColdBody, freeze_and_thaw

PARTS = (
    ("water", 0.45), ("protein", 0.05), ("fat", 0.17), ("carbohydrate", 0.31), ("fibre", 0.01),
    ("ash", 0.01),
)  # fmt: skip
TORTE = ColdBody(10.15, 6.6, 1195.0, PARTS, 0.962)


def test_a_torte_freezes_over_a_morning_and_thaws_over_a_night() -> None:
    found = freeze_and_thaw(TORTE)
    assert found.freeze_h is not None
    assert found.thaw_h is not None
    assert 4 < found.freeze_h.low < found.freeze_h.best < found.freeze_h.high < 16
    assert 8 < found.thaw_h.low < found.thaw_h.high < 30
    assert found.freezing_point_c == pytest.approx(-3.94, abs=0.1)


def test_half_as_high_is_quicker_and_a_colder_freezer_too() -> None:
    whole = freeze_and_thaw(TORTE).freeze_h
    flat = freeze_and_thaw(replace(TORTE, height_cm=3.3, mass_g=597.5)).freeze_h
    colder = freeze_and_thaw(TORTE, freezer_c=-30.0).freeze_h
    assert whole is not None
    assert flat is not None
    assert colder is not None
    assert flat.best < 0.6 * whole.best
    assert colder.best < whole.best


@pytest.mark.parametrize(
    ("wrong", "words"),
    [({"freezer_c": -5.0}, "A freezer is asked about"), ({"fridge_c": 5.1}, "thaws in a fridge")],
)
def test_a_freezer_too_warm_and_a_fridge_too_warm_are_refused(
    wrong: dict[str, float], words: str
) -> None:
    with pytest.raises(OutOfRangeError, match=words):
        freeze_and_thaw(TORTE, **wrong)


def test_exactly_five_degrees_is_a_fridge_that_may_thaw() -> None:
    assert freeze_and_thaw(TORTE, fridge_c=5.0).thaw_h is not None
