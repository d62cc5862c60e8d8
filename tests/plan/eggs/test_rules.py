"""The rows of eggs: what keeps how long, which family takes what, and their words."""

import pytest

from krume.design import families
from krume.evidence import load
from krume.pantry import ingredient
from krume.plan import cold_days, egg_cautions, egg_good, liquid_words, near_enough_fraction
from krume.plan import spare_use as use_of
from krume.plan.eggs.rules import GOOD_COLUMNS, SPARE_COLUMNS, SWAP_COLUMNS


@pytest.mark.parametrize(("part", "days"), [("yolk", 2), ("white", 4), ("whole", 2)])
def test_loose_parts_keep_the_usual_days(part: str, days: int) -> None:
    assert cold_days(part) == days
    assert f"{part}s: {days} days" in egg_cautions()["loose"] or part == "whole"


def test_a_white_of_a_buttercream_is_heated_and_a_yolk_of_a_custard_boiled() -> None:
    white, yolk = use_of("white", "cooked-white-buttercream"), use_of("yolk", "custard")
    assert white is not None and white.treated == "heated to 71 °C"
    assert yolk is not None and yolk.treated == "boiled"
    assert use_of("white", "set-cream") is None and use_of("white", None) is None


@pytest.mark.parametrize("family", ["separated", "genoise", "angel", "roulade", "nut", "chiffon"])
def test_no_pack_is_offered_for_a_whipped_white(family: str) -> None:
    assert liquid_words("white", family) is None
    assert liquid_words("whole", family) is None


def test_a_pack_does_for_what_is_boiled_or_leavened() -> None:
    assert "gram for gram" in (liquid_words("yolk", "custard-lightened") or "")
    assert liquid_words("whole", "butter") is not None


def test_every_row_names_a_family_and_a_good_there_is() -> None:
    known = {family.key for family in families()}
    rows = [*load("spares.csv", SPARE_COLUMNS), *load("egg_swaps.csv", SWAP_COLUMNS)]
    assert {row.text("family") for row in rows} <= known
    goods = load("egg_goods.csv", GOOD_COLUMNS)
    assert {ingredient(row.text("key")).role for row in goods} == {"egg"}
    assert [row.text("key") for row in goods if row.text("part") not in row.text("key")] == []


def test_a_good_that_is_no_hens_egg_from_shell_or_pack_is_none() -> None:
    assert egg_good("egg-white-dried") is None and egg_good(None) is None
    assert egg_good("egg-yolk-fresh") == ("yolk", "shell")


def test_the_tolerance_is_a_twentieth() -> None:
    assert near_enough_fraction() == 0.05
