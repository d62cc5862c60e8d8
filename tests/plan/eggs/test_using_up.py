"""What takes the left-overs: the order's own first, then the batches that use the most."""

from dataclasses import replace
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.plan import Loose, Taker, most_used, offers, use_up
from tests.agreement import agrees

C5 = Taker(
    "C5", "buttercream", "cooked-white-buttercream", {"white": 532.9}, {"white": 600.0},
    is_ordered=True, batch_g={"white": 120.0}, step_batches=0.5,
)  # fmt: skip
C1 = Taker(
    "C1", "custard", "custard-lightened", {}, {}, is_ordered=False, batch_g={"yolk": 87.5},
    step_batches=0.5,
)  # fmt: skip
THIRTY = Loose("eu-m", "white", 0, 30.0)


@pytest.mark.source("reference-book", "twelve tortes: eggs")
def test_twelve_tortes_leave_405_g_of_white_after_the_buttercream() -> None:
    (left,), (taken,) = use_up((THIRTY,), (C5, C1))
    assert agrees(left.mass_g, "1005") and agrees(taken.mass_g, "600")
    assert agrees(left.left_g, "405")
    assert taken.use.heat_c == 71.0 and taken.batches is None and taken.more_g == 0


def test_three_more_batches_of_buttercream_use_up_the_most() -> None:
    left, _ = use_up((THIRTY,), (C5,))
    (offer,) = offers(left, (C5, C1))
    assert (offer.formula, offer.batches, offer.mass_g) == ("C5", 3.0, 360.0)


def test_a_yolk_that_fills_no_batch_is_offered_with_what_it_wants_beside() -> None:
    left, taken = use_up((Loose("eu-m", "yolk", 0, 1.0),), (C1,))
    (offer,) = offers(left, (C1,))
    assert taken == ()
    assert (offer.formula, offer.batches, offer.mass_g) == ("C1", 0.5, 17.5)
    assert offer.more_g == pytest.approx(26.25)


def test_less_than_one_part_is_offered_to_nobody() -> None:
    left, _ = use_up((Loose("eu-m", "yolk", 0, 0.5),), (C1,))
    assert offers(left, (C1,)) == ()


def test_an_order_that_wants_more_than_is_left_takes_it_all() -> None:
    (left,), (taken,) = use_up((Loose("eu-m", "white", 0, 2.0),), (C5,))
    assert (taken.mass_g, taken.more_g, left.left_g) == (67.0, 533.0, 0.0)


@pytest.mark.parametrize(("day", "takes"), [(0, True), (4, True), (5, False)])
def test_a_white_is_taken_while_it_keeps(day: int, takes: bool) -> None:
    later = Taker(
        "C5", "x", "cooked-white-buttercream", {}, {"white": 60.0}, is_ordered=True, day=day
    )
    _, taken = use_up((THIRTY,), (later,))
    assert bool(taken) is takes


def test_the_oldest_white_goes_first_and_two_takers_share() -> None:
    old, new = Loose("eu-m", "white", 0, 2.0), Loose("eu-l", "white", 1, 2.0)
    one, two = (
        Taker(n, n, "cooked-white-buttercream", {}, {"white": 60.0}, is_ordered=True, day=1)
        for n in "ab"
    )
    left, taken = use_up((new, old), (two, one))
    assert [(t.formula, t.mass_g) for t in taken] == [("a", 60.0), ("b", 60.0)]
    assert [round(each.left_g, 6) for each in left] == [28.0, 0.0]


def test_a_family_that_does_not_heat_it_takes_no_white() -> None:
    cold = Taker(
        "M", "mousse", "fruit-mousse", {}, {"white": 60.0}, is_ordered=True, batch_g={"white": 60.0}
    )
    left, taken = use_up((THIRTY,), (cold,))
    assert taken == () and offers(left, (cold,)) == ()


@settings(max_examples=80, deadline=None)
@given(
    st.integers(0, 600).map(float),
    st.lists(st.integers(40, 300).map(float), min_size=1, max_size=3),
)
def test_no_other_batches_use_up_more(rest_g: float, steps_g: list[float]) -> None:
    found = most_used(rest_g, steps_g)
    used = sum(n * g for n, g in zip(found, steps_g, strict=True))
    every = [
        (sum(n * g for n, g in zip(ns, steps_g, strict=True)), sum(ns))
        for ns in product(*(range(int(rest_g // g) + 1) for g in steps_g))
    ]
    best = max(total for total, _ in every if total <= rest_g)
    assert used == best
    assert sum(found) == min(count for total, count in every if total == best)


@given(st.floats(0.1, 40.0), st.floats(0.0, 2000.0))
def test_taken_and_left_are_all_there_was(count: float, want_g: float) -> None:
    taker = replace(C5, made_g={"white": want_g})
    (left,), taken = use_up((Loose("eu-m", "white", 0, count),), (taker,))
    assert left.taken_g + left.left_g == pytest.approx(count * 33.5)
    assert sum(t.mass_g for t in taken) == pytest.approx(left.taken_g, abs=1e-6)
    assert left.taken_g <= want_g + 1e-9
