"""How much alcohol is kept: the printed rows, as a range on the careful side."""

import pytest

from krume.design import read
from krume.keep.treated import AlcoholKept, alcohol_kept
from tests.agreement import agrees

SYRUP = "Rum syrup\n\n100 g sugar\n100 g water\n40 g rum\n"


def kept(text: str, kind: str | None) -> AlcoholKept:
    found = alcohol_kept(read(text).value, kind)
    assert found is not None
    return found


@pytest.mark.source("usda-retention-6", "no heat: 100, a night in the fridge: 70")
def test_a_cold_syrup_keeps_from_a_nights_share_to_all() -> None:
    found = kept(SYRUP, "syrup")
    assert agrees(found.kept_pct.low, "70")
    assert agrees(found.kept_pct.high, "100")
    assert found.in_g == pytest.approx(13.36, abs=0.05)
    assert found.kept_g is not None
    assert found.kept_g.low == pytest.approx(0.7 * 13.36, abs=0.05)


@pytest.mark.source("usda-retention-6", "stirred in and baked: 40 at 15 min, 35 at 30, 25 at 60")
def test_a_baked_cake_keeps_what_stands_round_its_minutes() -> None:
    text = "Rum cake\nBake: 30 minutes\n\n100 g rice flour\n40 g rum\n\nBake 30 minutes.\n"
    formula = read(text).value
    found = alcohol_kept(formula, "butter")
    assert found is not None
    assert formula.bake_min is not None
    assert agrees(found.kept_pct.low, "35")
    assert agrees(found.kept_pct.high, "35")


def test_a_cream_that_is_boiled_has_a_wide_range_since_nobody_says_when_it_went_in() -> None:
    found = kept(SYRUP + "\nBoil sugar and water, add the rum.\n", "syrup")
    assert (found.kept_pct.low, found.kept_pct.high) == (40.0, 100.0)


def test_heat_never_takes_all_and_no_spirit_is_none() -> None:
    long = "Cake\n\n100 g rice flour\n40 g rum\n\nBake 400 minutes.\n"
    assert kept(long, "butter").kept_pct.low > 0
    assert alcohol_kept(read("Syrup\n\n100 g sugar\n100 g water").value, "syrup") is None


def test_grams_nobody_gave_stay_unknown() -> None:
    found = kept("Syrup\n\n100 g sugar\na splash of rum\n", "syrup")
    assert found.in_g is None
    assert found.kept_g is None
