"""The own range on the page: a mark below the strip, whose it is, nothing where there is none."""

from collections.abc import Callable

import pytest

from krume.cli.own_range import own_mark
from krume.usecases import CheckBand, CheckOwn
from tests.cli.conftest import Run

SPONGE = (
    "New sponge\nFamily: separated\n\n50 g white rice flour\n50 g potato starch\n"
    "5 eggs, EU M\n120 g caster sugar\n"
)


def band(low: float, high: float) -> CheckBand:
    own = CheckOwn(3, 0, ("A", "B", "C"), low, high, 50.0, 20.0, 90.0, "derived", "")
    return CheckBand("egg", "Egg", 250, 200, 340, None, "%", "flour", "assumed", "krume", own)


@pytest.mark.parametrize("columns", [40, 80, 120])
def test_each_range_stands_below_its_strip_within_the_width(
    run: Run, write: Callable[[str], str], columns: int
) -> None:
    said = run("check", write(SPONGE), columns=columns)
    assert said.code == 0
    marks = [line for line in said.out.splitlines() if set(line) & {"="} and "(=" not in line]
    assert len(marks) == 8
    assert said.out.count("  your own 2") == 8
    assert max(len(line) for line in said.out.splitlines()) <= columns
    assert "242.9–245.2 %" in said.out


def test_it_says_whose_they_are_and_what_they_hold(run: Run, write: Callable[[str], str]) -> None:
    said = " ".join(run("check", write(SPONGE)).out.split())
    assert "F1, F2, 1 of them baked and judged good" in said
    assert "holds 33 % of the formulas you make, and 5 % or more 9 times in 10." in said
    assert "The usual ranges stay what is judged by." in said


def test_one_other_formula_is_no_range(run: Run) -> None:
    said = run("check", "F2").out
    assert "your own 1" not in said
    assert "Too few for a range of your own: F1" in said


def test_a_mark_of_the_whole_band_is_as_long_as_its_strip() -> None:
    assert own_mark(band(200, 340), 24) == f"{'':6}{'=' * 12}{'':6}"


def test_a_mark_beyond_the_strip_ends_at_its_edge() -> None:
    assert own_mark(band(0, 900), 24) == "=" * 24
    assert own_mark(band(900, 900), 24).strip() == "="
