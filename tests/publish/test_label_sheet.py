"""Labels as values: least type by the law, and the signs no font has."""

import pytest

from krume.base import InputError
from krume.properties import constants
from krume.publish import least_letter_mm, least_type_pt, missing_label_signs
from tests.agreement import agrees
from tests.publish.labels import label, us_label

MARKETS = ("eu", "uk", "us", "ca", "au-nz")


@pytest.mark.source("eu-1169-2011", "article 13(2) and (3): R93")
def test_the_eus_small_letters_are_1_2_mm_high_and_0_9_on_a_small_package() -> None:
    assert agrees(least_letter_mm("eu"), "1.2")
    assert agrees(least_letter_mm("eu", 79.99), "0.9")
    assert agrees(least_letter_mm("eu", 80.0), "1.2")


@pytest.mark.parametrize("market", MARKETS)
def test_the_least_type_is_just_high_enough(market: str) -> None:
    share = constants("label_print.csv")["font-x-height"]
    size = least_type_pt(market)
    assert size * 25.4 / 72 * share >= least_letter_mm(market)
    assert (size - 0.1) * 25.4 / 72 * share < least_letter_mm(market)


def test_a_market_nobody_has_is_refused_with_those_there_are() -> None:
    with pytest.raises(InputError, match="au-nz"):
        least_letter_mm("moon")


def test_signs_no_font_has_are_named() -> None:
    assert missing_label_signs(label()) == ()
    assert missing_label_signs(us_label()) == ()
    assert "🥜" in missing_label_signs(label(name="Cake 🥜"))[0].text
