"""A fridge that was off: what is not shown is not kept; every limit on the side of its rule."""

import itertools

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.keep.off import DISCARD, DOORS, KEEP, NOT_SHOWN, OffEvidence, judge_off, worst_of
from tests.agreement import reads


def verdict(**known: object) -> str:
    return judge_off(OffEvidence(**known), needs_cold=True).verdict  # type: ignore[arg-type]


@pytest.mark.source("fda-food-code-2022", "3-501.16")
@pytest.mark.parametrize(
    ("food", "word"), [(5.0, KEEP), (4.9, KEEP), (5.01, DISCARD), (9.5, DISCARD)]
)
def test_exactly_five_degrees_in_the_food_is_cold(food: float, word: str) -> None:
    assert reads(verdict(product_c=food, hours=9.0), word)


@pytest.mark.source("foodsafety-gov-outage", "table of the fridge: above 40 F for over 2 hours")
@pytest.mark.parametrize(("hours", "word"), [(1.9, KEEP), (2.0, KEEP), (2.01, DISCARD)])
def test_exactly_two_hours_warm_is_not_over_two_hours(hours: float, word: str) -> None:
    assert reads(verdict(product_c=9.5, hours=hours, before_c=4.0), word)


@pytest.mark.source("foodsafety-gov-outage", "no more than 4 hours, the door kept shut")
@pytest.mark.parametrize(("hours", "word"), [(4.0, NOT_SHOWN), (4.01, DISCARD), (12.0, DISCARD)])
def test_a_shut_fridge_is_asked_about_up_to_four_hours_and_never_after(
    hours: float, word: str
) -> None:
    assert reads(verdict(hours=hours, door="shut", before_c=3.0), word)


@pytest.mark.parametrize(("before", "word"), [(None, NOT_SHOWN), (5.0, KEEP), (7.0, DISCARD)])
def test_two_hours_only_count_from_food_that_was_cold(before: float | None, word: str) -> None:
    assert verdict(hours=1.0, before_c=before) == word
    assert verdict(hours=1.0, product_c=8.0, before_c=before) == word


def test_cold_air_keeps_only_what_was_cold_before() -> None:
    assert verdict(air_c=5.0, hours=6.0, before_c=4.0) == KEEP
    assert verdict(air_c=5.0, hours=6.0) == NOT_SHOWN


def test_warm_air_is_no_reading_of_the_food() -> None:
    found = judge_off(OffEvidence(hours=3.0, air_c=11.0, before_c=4.0), needs_cold=True)
    assert found.verdict == NOT_SHOWN
    assert "Probe its warmest place now" in found.opens


def test_readings_that_contradict_each_other_keep_nothing() -> None:
    found = judge_off(OffEvidence(hours=3.0, product_c=4.0, before_c=7.0), needs_cold=True)
    assert found.verdict == NOT_SHOWN
    assert "one of the two is wrong" in found.text


def test_warm_for_an_unknown_time_is_not_shown() -> None:
    assert verdict(product_c=9.0, before_c=4.0) == NOT_SHOWN
    assert verdict() == NOT_SHOWN


def test_what_needs_no_cold_is_kept_whatever_was_read() -> None:
    warm = OffEvidence(hours=40.0, product_c=25.0)
    assert judge_off(warm, needs_cold=False).verdict == KEEP


KNOWN = st.builds(
    OffEvidence,
    hours=st.none() | st.floats(0, 48),
    door=st.sampled_from(DOORS),
    product_c=st.none() | st.floats(-5, 30),
    air_c=st.none() | st.floats(-5, 30),
    before_c=st.none() | st.floats(-5, 30),
)
RANK = {KEEP: 0, NOT_SHOWN: 1, DISCARD: 2}


@settings(max_examples=200)
@given(KNOWN)
def test_taking_evidence_away_never_makes_anything_kept(known: OffEvidence) -> None:
    """Except a reading that was too warm: without it there is less against the food."""
    full = judge_off(known, needs_cold=True).verdict
    fields: tuple[str, ...] = ("hours", "before_c")
    if known.product_c is not None and known.product_c <= 5:
        # A warm reading before speaks against the food: without it less does.
        fields = ("hours",)
    for gone in itertools.chain.from_iterable(itertools.combinations(fields, n) for n in (1, 2)):
        kept = {f: getattr(known, f) for f in ("hours", "door", "product_c", "air_c", "before_c")}
        less = judge_off(OffEvidence(**{**kept, **dict.fromkeys(gone)}), needs_cold=True).verdict
        assert not (less == KEEP and full != KEEP)


@settings(max_examples=200)
@given(KNOWN, st.floats(0, 48))
def test_longer_is_never_better(known: OffEvidence, more: float) -> None:
    if known.hours is None:
        return
    kept = {f: getattr(known, f) for f in ("door", "product_c", "air_c", "before_c")}
    longer = OffEvidence(hours=known.hours + more, **kept)
    before, after = (judge_off(each, needs_cold=True).verdict for each in (known, longer))
    assert RANK[after] >= RANK[before] or DISCARD in (before, after)
    assert not (after == KEEP and before != KEEP)


@settings(max_examples=100)
@given(KNOWN)
def test_nothing_is_kept_without_a_cold_reading_or_two_hours_from_cold(known: OffEvidence) -> None:
    if judge_off(known, needs_cold=True).verdict != KEEP:
        return
    is_food_cold = known.product_c is not None and known.product_c <= 5
    was_cold = known.before_c is not None and known.before_c <= 5
    is_short = known.hours is not None and known.hours <= 2
    is_air_cold = known.air_c is not None and known.air_c <= 5
    assert is_food_cold or (was_cold and (is_short or is_air_cold))


@pytest.mark.parametrize(
    "wrong", [{"hours": -1.0}, {"hours": 999.0}, {"product_c": 200.0}, {"air_c": float("nan")}]
)
def test_a_figure_of_no_fridge_is_refused(wrong: dict[str, float]) -> None:
    with pytest.raises(OutOfRangeError, match="no figure of a fridge"):
        OffEvidence(**wrong)  # type: ignore[arg-type]


def test_the_worst_of_nothing_is_not_shown() -> None:
    assert worst_of([]) == NOT_SHOWN
    assert worst_of([KEEP, NOT_SHOWN]) == NOT_SHOWN


@pytest.mark.parametrize("hours", [None, 1.0, 2.0, 2.02, 4.0, 5.0])
def test_food_that_was_warm_before_is_discarded_however_long_it_was_off(
    hours: float | None,
) -> None:
    assert verdict(hours=hours, before_c=5.01) == DISCARD
