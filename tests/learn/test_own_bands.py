"""Ranges of one's own: the printed confidences, chance itself, and who counts."""

from itertools import pairwise
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.learn import (
    OwnFormula,
    confidence_of,
    expected_coverage,
    independent,
    least_share,
    own_band,
    roots,
)
from tests.agreement import agrees


def egg(name: str, value: float, tried: str | None = None, root: str = "") -> OwnFormula:
    return OwnFormula(name, "separated", {"egg": value}, root or name, tried)


@pytest.mark.source("nist-ehandbook", "7.2.6.4, confidence for coverages, N = 25")
@pytest.mark.parametrize(
    ("share", "printed"),
    [
        (0.5, "1.000"),
        (0.75, "0.993"),
        (0.9, "0.729"),
        (0.95, "0.358"),
        (0.975, "0.129"),
        (0.99, "0.026"),
        (0.995, "0.007"),
    ],
)
def test_how_sure_a_range_of_25_is_of_a_share_is_as_printed(share: float, printed: str) -> None:
    assert agrees(confidence_of(25, share=share), printed)


@given(n=st.integers(2, 60), sure=st.floats(0.5, 0.99))
def test_the_least_share_is_held_with_the_confidence_that_was_asked(n: int, sure: float) -> None:
    least = least_share(n, sure_share=sure)
    assert confidence_of(n, share=least) == pytest.approx(sure, abs=1e-9)


def test_a_larger_sample_promises_more() -> None:
    for fewer, more in pairwise(range(2, 40)):
        assert expected_coverage(more) > expected_coverage(fewer)
        assert least_share(more, sure_share=0.9) > least_share(fewer, sure_share=0.9)


@pytest.mark.parametrize("n", [2, 3, 5])
def test_drawn_ranges_hold_the_shares_that_are_promised(n: int) -> None:
    drawn = Random(8)  # noqa: S311 - chance, no secret
    held = []
    for _ in range(20_000):
        sample = [drawn.random() for _ in range(n)]
        held.append(max(sample) - min(sample))
    assert sum(held) / len(held) == pytest.approx(expected_coverage(n), abs=0.01)
    least = least_share(n, sure_share=0.9)
    assert sum(share >= least for share in held) / len(held) == pytest.approx(0.9, abs=0.01)


def test_one_formula_makes_no_range_and_promises_nothing() -> None:
    found = own_band("egg", [egg("F1", 245.2)])
    assert (found.n, found.low, found.high) == (1, None, None)
    assert (found.coverage_pct, found.content_pct, found.status) == (None, None, None)
    with pytest.raises(OutOfRangeError, match="2 formulas"):
        expected_coverage(1)


@given(values=st.lists(st.floats(1, 400), min_size=2, max_size=8))
def test_every_own_formula_lies_in_its_range_and_both_ends_are_of_it(values: list[float]) -> None:
    found = own_band("egg", [egg(f"F{at}", value) for at, value in enumerate(values)])
    assert found.low in values
    assert found.high in values
    assert all(found.low <= value <= found.high for value in values)


def test_a_formula_that_does_not_know_the_figure_does_not_count() -> None:
    found = own_band("sugar", [egg("F1", 245.2), OwnFormula("F2", "separated", {}, "F2")])
    assert (found.n, found.names) == (0, ())


def test_only_measured_trials_of_every_formula_make_it_measured() -> None:
    baked = [egg("A", 240.0, "measured"), egg("B", 250.0, "measured")]
    assert own_band("egg", baked).status == "measured"
    assert own_band("egg", [*baked, egg("C", 260.0)]).status == "derived"
    drawn_up = own_band("egg", [*baked, egg("C", 260.0, "invented")])
    assert (drawn_up.status, drawn_up.tried) == ("derived", 3)


def test_kin_count_once_and_the_tried_one_stands_for_them() -> None:
    family = [egg("F1", 245.0), egg("F1b", 300.0, "measured", root="F1"), egg("F9", 230.0)]
    assert [each.name for each in independent(family, without=None)] == ["F1b", "F9"]


def test_an_untried_root_stands_for_its_untried_variations() -> None:
    family = [egg("A variation", 300.0, root="F1"), egg("F1", 245.0)]
    assert [each.name for each in independent(family, without=None)] == ["F1"]


def test_what_is_checked_is_left_out_with_its_variations() -> None:
    family = [egg("F1", 245.0), egg("F1b", 300.0, root="F1"), egg("F9", 230.0)]
    assert [each.name for each in independent(family, without="F1")] == ["F9"]


def test_a_circle_of_parents_is_one_kinship() -> None:
    assert set(roots({"A": "B", "B": "C", "C": "A", "D": "A"}).values()) == {"A"}
