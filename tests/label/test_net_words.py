"""The net quantity in words: never more than is in it, and high enough to read."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.label import net_height_mm, net_phrases
from tests.agreement import agrees


@pytest.mark.parametrize(
    ("grams", "phrases"),
    [
        (453.5, ("NET WT", "15.9 OZ", "(453 g)")),
        (453.6, ("NET WT", "16.0 OZ", "(1 LB)", "(453 g)")),
        (1815.0, ("NET WT", "4 LB", "(1815 g)")),
        (28.35, ("NET WT", "1.0 OZ", "(28 g)")),
    ],
)
def test_ounces_pounds_and_grams_stand_together_in_the_us(
    grams: float, phrases: tuple[str, ...]
) -> None:
    assert net_phrases(grams, "us") == phrases


@given(st.floats(min_value=1, max_value=20_000))
def test_no_label_says_more_than_is_in_it(grams: float) -> None:
    ounce = Decimal("28.349523125")
    for phrase in net_phrases(grams, "us"):
        if phrase.endswith(" OZ") and "LB" not in phrase:
            assert Decimal(phrase.split()[0]) * ounce <= Decimal(repr(grams))
    metric = net_phrases(grams, "eu")[1]
    assert int(metric.split()[0]) <= grams


@pytest.mark.parametrize("grams", [0, 0.4, -3, float("inf"), float("nan"), 2e6])
@pytest.mark.parametrize("market", ["eu", "us"])
def test_what_is_no_weight_is_refused(grams: float, market: str) -> None:
    with pytest.raises(OutOfRangeError, match="is no net weight"):
        net_phrases(grams, market)


@pytest.mark.source("us-21-cfr-101-7", "(i): sixteenths of an inch by the panel's square inches")
@pytest.mark.parametrize(
    ("square_inches", "printed"), [(5, "1.5875"), (25, "3.175"), (100, "4.7625"), (400, "6.35")]
)
def test_us_letters_grow_with_the_panel(square_inches: float, printed: str) -> None:
    assert agrees(net_height_mm(150, "us", square_inches * 6.4516), printed)


def test_a_panel_that_is_not_said_counts_as_a_large_one() -> None:
    assert net_height_mm(150, "us") == net_height_mm(150, "us", 2580.0)
    assert net_height_mm(150, "us") > net_height_mm(150, "us", 600.0)


@pytest.mark.source("eu-76-211", "annex I 3.1")
@pytest.mark.parametrize(("grams", "printed"), [(50, "2"), (200, "3"), (1000, "4"), (1001, "6")])
def test_the_eus_figures_grow_with_the_quantity(grams: float, printed: str) -> None:
    assert agrees(net_height_mm(grams, "eu"), printed)
