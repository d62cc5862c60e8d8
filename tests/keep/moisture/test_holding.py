"""`krume.keep.moisture.holding`: what a formula holds, and what is named when it is not known."""

import pytest

from krume.design import read
from krume.keep import Holding, holding_of


def held(text: str, lost_share: float | None = 0.0) -> Holding | str:
    return holding_of(read(f"A layer\n\n{text}").value, lost_share=lost_share)


def whole(text: str, lost_share: float = 0.0) -> Holding:
    found = held(text, lost_share)
    assert isinstance(found, Holding), found
    return found


def test_a_syrup_is_water_and_sugar_by_its_lines() -> None:
    found = whole("100 g caster sugar\n100 g water")
    assert found.water == pytest.approx(0.4996, abs=1e-3)
    assert found.sugar == pytest.approx(0.499, abs=1e-3)
    assert found.fat == 0.0


def test_shares_add_up_to_one() -> None:
    found = whole("400 g whole milk\n80 g caster sugar\n35 g maize starch\n40 g butter", 0.05)
    assert found.water + found.sugar + found.starch_share + found.fat == pytest.approx(
        1.0, abs=1e-12
    )


def test_what_leaves_in_the_oven_is_water() -> None:
    raw = whole("100 g white rice flour\n100 g water")
    baked = whole("100 g white rice flour\n100 g water", 0.2)
    assert baked.water == pytest.approx((raw.water - 0.2) / 0.8, abs=1e-9)
    dry = (raw.starch_share + raw.sugar) / 0.8
    assert baked.starch_share + baked.sugar == pytest.approx(dry, abs=1e-9)


def test_chocolate_and_butterfat_keep_water_back_and_cream_does_not() -> None:
    assert whole("100 g dark chocolate, 60 %").is_barrier
    assert not whole("100 g butter").is_barrier
    assert not whole("100 g dark chocolate, 60 %\n100 g whipping cream, 35 % fat").is_barrier


def test_fruit_without_a_figure_for_sugars_counts_its_carbohydrate_without_the_fibre() -> None:
    found = whole("100 g blackcurrant puree")
    assert 0.05 < found.sugar < 0.16


def test_little_of_something_unknown_is_counted_as_what_swells() -> None:
    found = whole("100 g white rice flour\n100 g water\n0.5 g xanthan gum")
    assert found.starch_share > 0.38


@pytest.mark.parametrize(
    ("text", "lost", "words"),
    [
        ("100 g white rice flour\n100 g fonio flour", 0.0, "the composition of fonio flour"),
        ("100 g white rice flour\nsome water", 0.0, "has no grams"),
        ("100 g white rice flour\n100 g water", None, "loses in the oven is not known"),
        ("100 g white rice flour\n10 g water", 0.4, "loses more in the oven than it holds"),
        ("", 0.0, "has no grams"),
    ],
)
def test_what_is_not_known_is_named(text: str, lost: float | None, words: str) -> None:
    found = held(text, lost)
    assert isinstance(found, str)
    assert words in found
