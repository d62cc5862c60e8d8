"""Which depth of custard cools in time, and in what."""

from functools import cache
from pathlib import Path

import pytest

from krume.base import OutOfRangeError
from krume.keep import CustardCooling, CustardVessel, custard_cooling, custard_depth


@cache
def _all() -> CustardCooling:
    return custard_cooling()


def _vessel(key: str) -> CustardVessel:
    return next(each for each in _all().vessels if each.key == key)


def test_words_go_from_within_over_may_to_over_as_it_gets_deeper() -> None:
    order = {"within": 0, "may": 1, "over": 2}
    for each in _all().vessels:
        found = [order[depth.verdict] for depth in each.depths]
        assert found == sorted(found), each.key


def test_what_is_within_keeps_both_limits_at_the_late_end() -> None:
    for each in _all().vessels:
        for depth in each.depths:
            if depth.verdict == "within":
                assert depth.first_h is not None
                assert depth.total_h is not None
                assert depth.first_h.high <= 2
                assert depth.total_h.high <= 6


def test_what_is_over_breaks_a_limit_at_the_early_end() -> None:
    deep = custard_depth("tray-fridge", 8.0)
    assert deep.verdict == "over"
    assert deep.first_h is None or deep.first_h.low > 2


@pytest.mark.pin
def test_the_page_of_cooling_has_the_depths_as_they_are_predicted() -> None:
    page = Path(__file__).parents[2] / "docs" / "models" / "cooling.md"
    rows = [line.split("|")[1:-1] for line in page.read_text("utf-8").splitlines()]
    printed = {row[0].strip(): [cell.strip() for cell in row[1:]] for row in rows if len(row) == 3}
    for each in _all().vessels:
        assert printed[each.words] == [
            "" if depth is None else f"{depth:g} cm" for depth in (each.within_cm, each.over_cm)
        ]


@pytest.mark.parametrize("depth_cm", [5.1, 7.6])
def test_two_and_three_inches_in_a_cold_room_are_not_promised(depth_cm: float) -> None:
    """Roberts and others 2013: in a walk-in refrigerator neither depth met both limits."""
    assert custard_depth("tray-fan", depth_cm).verdict != "within"


def test_the_stirred_bowl_in_ice_is_the_fastest_way_for_a_deep_one() -> None:
    bowl, tray = custard_depth("bowl-ice", 4.0), custard_depth("tray-ice", 4.0)
    assert bowl.total_h is not None
    assert tray.total_h is not None
    assert bowl.total_h.best < tray.total_h.best


def test_a_warmer_fridge_allows_less_depth() -> None:
    cold, warm = (custard_depth("tray-fridge", 1.5, fridge_c=fridge) for fridge in (2.0, 4.0))
    assert (cold.verdict, warm.verdict) == ("within", "may")


@pytest.mark.parametrize("fridge_c", [5.0, 7.0, 14.0])
def test_a_fridge_that_never_gets_it_cold_is_refused_with_the_limit(fridge_c: float) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        custard_cooling(fridge_c=fridge_c)
    assert refused.value.field == "fridge_c"
    assert "never brings custard to 5 °C" in refused.value.message


def test_equal_questions_have_equal_answers() -> None:
    assert custard_depth("tray-fan", 2.0) == custard_depth("tray-fan", 2.0)
