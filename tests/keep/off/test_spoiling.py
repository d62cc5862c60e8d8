"""What spoils in a warm fridge: measured figures first, then a published chart, else all of it."""

import pytest

from krume.keep.off import spoiling
from tests.agreement import reads


@pytest.mark.source("foodsafety-gov-outage", "cakes without custard fillings: kept")
@pytest.mark.parametrize("family", ["separated", "genoise", "butter", "roulade"])
def test_a_plain_baked_cake_is_kept_by_the_chart(family: str) -> None:
    word = "discard" if spoiling(family, "tcs").needs_cold else "keep"
    assert reads(word, "keep")


@pytest.mark.source("foodsafety-gov-outage", "custards; pastries, cream-filled: discard")
@pytest.mark.parametrize("family", ["custard", "custard-lightened", "set-cream"])
def test_custard_and_cream_need_the_cold(family: str) -> None:
    found = spoiling(family, "tcs")
    assert reads("discard" if found.needs_cold else "keep", "discard")
    assert "not measured" in found.why


@pytest.mark.parametrize("family", ["ganache", "syrup", "jelly", "cooked-white-buttercream", None])
def test_what_no_chart_names_needs_the_cold_until_it_is_measured(family: str | None) -> None:
    assert spoiling(family, "tcs").needs_cold
    assert spoiling(family, "assess").needs_cold
    assert not spoiling(family, "non-tcs").needs_cold


def test_a_cake_with_raw_fruit_is_no_plain_cake() -> None:
    assert spoiling("separated", "tcs", frozenset({"fresh-fruit"})).needs_cold
