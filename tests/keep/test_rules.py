"""The rules of keeping are rows with their papers; days count from the day of making."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import NotFoundError, OutOfRangeError
from krume.design import families
from krume.keep import (
    caution,
    keep_rule,
    least_growth_activity,
    room_rules,
    rule_of_family,
    use_by,
)
from tests.agreement import agrees, reads


@pytest.mark.source("fda-food-code-2022", "3-501.17: R51")
def test_seven_days_count_the_day_of_making() -> None:
    assert reads(use_by(date(2026, 2, 26), days=7).isoformat(), "2026-03-04")


@pytest.mark.source("fda-food-code-2022", "3-501.19: R52")
def test_time_without_cooling_is_4_hours_or_6_below_21() -> None:
    hours = {row.text("key"): row.number_of("hours") for row in room_rules()}
    assert agrees(hours["any-temperature"], "4")
    assert agrees(hours["never-above-21"], "6")


@pytest.mark.source("reference-book", "R87: lowest water activity for growth")
@pytest.mark.parametrize(
    ("organism", "printed"),
    [
        ("staphylococcus-aureus", "0.83"),
        ("listeria", "0.92"),
        ("clostridium-perfringens", "0.93"),
        ("salmonella", "0.94"),
        ("bacillus-cereus", "0.92"),
    ],
)
def test_the_lower_of_two_sources_is_the_limit_of_growth(organism: str, printed: str) -> None:
    assert agrees(least_growth_activity(organism), printed)


def test_every_family_of_the_program_has_its_rule() -> None:
    assert [f.key for f in families() if rule_of_family(f.key) is None] == []


def test_a_family_nobody_knows_has_no_rule() -> None:
    assert rule_of_family(None) is None
    assert rule_of_family("blancmange") is None


def test_each_rule_runs_from_its_lowest_to_its_highest_hour() -> None:
    for one in (rule_of_family(f.key) for f in families()):
        assert one is not None
        assert 0 < one.cold_h.low <= one.cold_h.best <= one.cold_h.high


def test_a_custard_keeps_three_to_five_days() -> None:
    hours = keep_rule("custard").cold_h
    assert (hours.low, hours.high) == (72.0, 120.0)


@given(st.integers(1, 30))
def test_one_more_day_is_one_day_later(days: int) -> None:
    made = date(2027, 2, 27)
    assert (use_by(made, days=days + 1) - use_by(made, days=days)).days == 1


def test_what_does_not_exist_is_refused() -> None:
    with pytest.raises(NotFoundError):
        keep_rule("no-rule")
    with pytest.raises(NotFoundError):
        least_growth_activity("nobody")
    with pytest.raises(OutOfRangeError):
        use_by(date(2027, 1, 1), days=0)


def test_a_caution_carries_its_papers() -> None:
    said = caution("cold-chain")
    assert "5 °C" in said.text
    assert said.source == "fda-food-code-2022"
