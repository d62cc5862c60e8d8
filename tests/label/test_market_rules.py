"""The rules of each market for a list, one row each."""

import pytest

from krume.base import InputError
from krume.label import market_rule
from krume.pantry import MARKETS


@pytest.mark.parametrize(
    ("market", "emphasis", "line", "clause", "finished", "shares", "classes"),
    [
        ("us", False, True, True, False, False, False),
        ("eu", True, False, False, True, True, True),
        ("uk", True, False, False, True, True, True),
        ("ca", False, True, False, False, False, False),
        ("au-nz", True, True, False, True, True, True),
    ],
)
def test_each_market_has_its_own_rules(
    market: str,
    emphasis: bool,
    line: bool,
    clause: bool,
    finished: bool,
    shares: bool,
    classes: bool,
) -> None:
    rule = market_rule(market)
    found = (rule.has_emphasis, rule.has_contains_line, rule.has_clause)
    assert found == (emphasis, line, clause)
    others = (rule.water_is_finished, rule.has_shares, rule.has_classes)
    assert others == (finished, shares, classes)


def test_a_market_that_is_not_held_is_refused_with_those_that_are() -> None:
    with pytest.raises(InputError, match="us, eu, uk, ca, au-nz"):
        market_rule("jp")


def test_every_market_of_the_allergens_has_a_rule() -> None:
    assert [market_rule(market).key for market in MARKETS] == list(MARKETS)
