"""Finished bakes one by one: which count, for how long, in which words they are refused."""

from dataclasses import replace

import pytest

from benchmarks.cake_doubt import HEAT, TEMPERATURE, own_scatter, scatter
from benchmarks.coverage import Asked
from krume.bake import Oven
from krume.learn import FinishedBake, learn_offset, oven_figure, true_c, why_not
from krume.learn.own_oven.judging import timed_bakes
from krume.learn.own_oven.records import Reading
from tests.learn.own_oven.cakes import CAKES, PRIOR, SPONGE, bake


@pytest.mark.parametrize(
    ("made", "code", "word"),
    [
        (bake("a", "sponge", 1.0), "bake-minutes", "no bake"),
        (bake("a", "sponge", 240.0), "bake-minutes", "no bake"),
        (bake("a", "sponge", 38.0, not_done_min=40.0), "bake-order", "turn the two round"),
        (bake("a", "sponge", 38.0, oven_c=90.0), "bake-oven", "outside 100 to 300"),
        (bake("a", "sponge", 38.0, core_c=120.0), "bake-core", "boils"),
        (bake("a", "sponge", 38.0, core_c=40.0), "bake-core", "no cake yet"),
        (bake("a", "sponge", 38.0, core_c=None, test="colour"), "bake-colour", "colour decided"),
    ],
)
def test_what_cannot_have_been_is_refused_with_words(
    made: FinishedBake, code: str, word: str
) -> None:
    found = why_not(made, made.oven_c or 0.0)
    assert found is not None
    assert found[0] == code
    assert word in found[1]


def test_a_batter_above_the_rim_is_refused_with_both_figures() -> None:
    made = replace(bake("a", "sponge", 38.0), batter=replace(SPONGE, mass_g=1500.0))
    found = why_not(made, 170.0)
    assert found is not None
    assert found[0] == "bake-rim"
    assert "9.9 cm deep in a tin of 7 cm" in found[1]


def test_a_usual_bake_is_not_refused() -> None:
    assert why_not(bake("a", "sponge", 38.0), 170.0) is None


def test_a_probe_knows_one_moment_a_skewer_two_looks() -> None:
    made = (
        bake("probe", "sponge", 38.0),
        bake("two looks", "sponge", 38.0, core_c=None, test="skewer", not_done_min=34.0),
        bake("one look", "sponge", 38.0, core_c=None, test="skewer"),
    )
    timed, flags = timed_bakes(made, None, PRIOR)
    assert flags == ()
    spans = {each.bake.key: (each.least_min, each.most_min) for each in timed}
    assert spans == {"probe": (38.0, 38.0), "two looks": (34.0, 38.0), "one look": (33.0, 38.0)}


def test_a_core_close_to_boiling_only_says_that_it_was_long_enough() -> None:
    (timed,), _ = timed_bakes((bake("a", "sponge", 60.0, core_c=100.8),), None, PRIOR)
    assert timed.least_min == 0.0
    assert timed.bake.core_c is not None
    assert timed.bake.core_c < 100.0


def test_a_colour_with_a_core_counts_by_its_core() -> None:
    timed, flags = timed_bakes((bake("a", "sponge", 38.0, test="colour"),), None, PRIOR)
    assert (len(timed), flags) == (1, ())


def test_the_same_bake_written_twice_counts_once_and_is_named() -> None:
    made = bake("first", "sponge", 38.0, day="2027-06-01")
    timed, (flag,) = timed_bakes((made, replace(made, key="again")), None, PRIOR)
    assert [each.bake.key for each in timed] == ["first"]
    assert (flag.key, flag.code) == ("again", "bake-twice")
    assert "first" in flag.reason


def test_a_dial_is_corrected_by_what_the_oven_is_off_it() -> None:
    offset, _ = learn_offset((Reading("r", 160.0, (148.0,)),), PRIOR)
    made = bake("a", "sponge", 38.0, oven_c=None, dial_c=182.0)
    assert true_c(made, offset) == pytest.approx(170.0, abs=0.2)
    assert true_c(made, None) == 182.0
    assert true_c(replace(made, oven_c=165.0), offset) == 165.0


ASKED = {name: Asked(*CAKES[name], Oven(170.0)) for name in ("sponge", "nut", "butter")}


def test_the_doubt_of_a_cake_is_what_its_batter_and_tin_scatter() -> None:
    assert own_scatter(ASKED, count=128) == pytest.approx(oven_figure("cake-parameters"), abs=0.005)


def test_a_hotter_oven_is_a_stronger_one_to_every_cake_alike() -> None:
    parts = [scatter(a, TEMPERATURE, count=64) / scatter(a, HEAT, count=64) for a in ASKED.values()]
    assert max(parts) < 1.1 * min(parts)
