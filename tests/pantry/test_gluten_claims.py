"""Each market's own limit, on the side its law says."""

import pytest

from krume.base import InputError
from krume.pantry import claim_rule
from tests.agreement import agrees


@pytest.mark.source("us-21-cfr-101-91", "(a)(3)(ii): below 20 ppm")
def test_exactly_20_is_too_much_in_the_us() -> None:
    rule = claim_rule("us")
    assert agrees(rule.limit_ppm, "20")
    assert not rule.allows(20.0)
    assert rule.allows(19.999)
    assert rule.allows(20.0, is_below=True)
    assert rule.words == "below 20 ppm"


@pytest.mark.source("eu-828-2014", "annex A: no more than 20 mg/kg")
@pytest.mark.parametrize("market", ["eu", "uk"])
def test_exactly_20_is_allowed_in_the_eu_and_the_uk(market: str) -> None:
    rule = claim_rule(market)
    assert agrees(rule.limit_ppm, "20")
    assert rule.allows(20.0)
    assert not rule.allows(20.001)
    assert rule.words == "20 mg/kg or less"


@pytest.mark.source("ca-b-24-018", "position: not exceeding 20 ppm")
def test_exactly_20_is_allowed_in_canada() -> None:
    assert agrees(claim_rule("ca").limit_ppm, "20")
    assert claim_rule("ca").allows(20.0)


def test_where_the_rule_is_not_judged_no_figure_is_allowed() -> None:
    rule = claim_rule("au-nz")
    assert not rule.allows(0.1)
    assert rule.sentence == ""
    assert "no gluten that can be found" in rule.why


def test_a_market_that_no_row_knows_is_refused_with_those_there_are() -> None:
    with pytest.raises(InputError, match="us, eu, uk, ca, au-nz"):
        claim_rule("mars")
