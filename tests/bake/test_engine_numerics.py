"""The page of the model's numerics holds what its tables come to today, and they are as claimed."""

from functools import cache
from pathlib import Path

import pytest

from benchmarks import bake_checks as checks
from tests.bake.cases import CASES, Case


@cache
def _page() -> str:
    return (Path(__file__).parents[2] / "docs" / "models" / "bake-numerics.md").read_text(
        encoding="utf-8"
    )


def _stands(rows: checks.Table) -> bool:
    return all("| " + " | ".join(row) + " |" in _page() for row in rows)


def test_the_series_is_exact_over_all_biot_and_fourier_numbers() -> None:
    for row in checks.series_rows():
        assert max(float(row[1]), float(row[2])) <= 5e-15, row[0]


def test_printed_figures_are_met_to_their_last_digit() -> None:
    rows = checks.property_rows()
    assert _stands(rows)
    for what, known, got, _ in rows:
        places = len(known.partition(".")[2])
        assert abs(float(got) - float(known)) <= 0.5001 * 10**-places, what


def test_the_cells_are_of_second_order_and_the_page_says_so() -> None:
    rows = checks.grid_rows()
    assert _stands(rows)
    assert min(float(row[2]) for row in rows[2:]) > 1.8
    assert abs(float(rows[1][1])) < 0.1


def test_the_steps_are_of_second_order_on_a_plain_body() -> None:
    rows = checks.step_rows()
    assert _stands(rows)
    assert min(float(row[2]) for row in rows[1:]) > 1.8


def test_flat_and_tall_bodies_are_as_near_as_the_page_says() -> None:
    rows = checks.shape_rows()
    assert _stands(rows)
    assert max(abs(float(off)) for row in rows for off in row[1:]) < 0.1


def test_long_tins_are_as_far_off_as_the_page_says() -> None:
    assert _stands(checks.long_rows())


def test_what_must_not_happen_does_not() -> None:
    never, hole = checks.limit_rows()
    assert never[2] == "inf min"
    assert abs(float(hole[2].removesuffix(" %"))) < 3


@pytest.mark.parametrize("name", checks.AROUNDS)
def test_heat_and_water_are_all_accounted_for(name: str) -> None:
    for case in (CASES[4], CASES[7]):
        assert max(checks.closure(case, checks.AROUNDS[name])) < 1e-12


@pytest.mark.parametrize("case", CASES, ids=lambda c: c.name)
def test_the_page_has_the_minutes_of_the_grid_in_use(case: Case) -> None:
    coarse = checks.fine_minutes(case, *checks.FINE[0])
    assert f"| {case.name} | {coarse:.2f} |" in _page()
