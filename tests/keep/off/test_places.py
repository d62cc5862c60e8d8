"""Rules of places: hours on the side each rule says, and whose rule it is."""

import pytest

from krume.keep.off import place_rule, place_rules
from tests.agreement import agrees, reads


@pytest.mark.source("uk-temperature-2006", "Schedule 4, paragraph 5(1)(c)")
def test_four_hours_are_within_the_american_rule_and_not_within_the_british() -> None:
    assert reads(str(place_rule("us-warm-4").holds_for_hours(4.0)), "True")
    assert reads(str(place_rule("uk-served").holds_for_hours(4.0)), "False")
    assert reads(str(place_rule("uk-served").holds_for_hours(3.99)), "True")


@pytest.mark.source("uk-temperature-2006", "Schedule 4, paragraph 2(1)")
def test_britain_says_eight_degrees() -> None:
    assert agrees(place_rule("uk-cold").most_c, "8")


def test_the_european_rule_names_no_figure_and_so_holds_for_no_hours() -> None:
    rule = place_rule("eu-cold")
    assert (rule.most_c, rule.hours) == (None, None)
    assert not rule.holds_for_hours(0.1)


def test_every_rule_says_whose_it_is_and_none_calls_food_safe() -> None:
    assert all(rule.whose and rule.words for rule in place_rules())
    assert not any("safe" in rule.words for rule in place_rules())
