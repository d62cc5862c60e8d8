"""The reference amount of a product by its kind, and the servings that follow from it."""

import pytest

from krume.label import reference_amount, servings_of
from tests.agreement import agrees, reads
from tests.label.studio import of, product


@pytest.mark.source("us-21-cfr-101-12", "(b) table 2: R11")
@pytest.mark.parametrize(
    ("name", "amount"), [("F1", "55"), ("F5", "55"), ("F6", "80"), ("T1", "80"), ("T2", "80")]
)
def test_a_cake_has_the_reference_amount_of_its_kind(name: str, amount: str) -> None:
    row = reference_amount(product(name))
    assert row is not None
    assert agrees(row.number_of("amount_g"), amount)


@pytest.mark.source("us-21-cfr-101-12", "(b) table 2: R11, heavy")
@pytest.mark.parametrize(("grams", "amount"), [("35", "125"), ("34", "80")])
def test_a_cake_is_heavy_from_35_percent_of_fruit_and_nuts(grams: str, amount: str) -> None:
    made = of(
        "Nut loaf\nFamily: butter\nTin: round 20 x 5 cm\nBaked: 10 mm high, 100 g\n\n"
        f"{grams} g ground walnuts\n70 g potato starch\n"
    )
    row = reference_amount(made)
    assert row is not None
    assert agrees(row.number_of("amount_g"), amount)


def test_a_cream_on_its_own_has_no_serving() -> None:
    assert servings_of(product("C1")) is None


@pytest.mark.source("us-21-cfr-101-9", "(b)(6) and (b)(12)(i): a slice sold on its own")
@pytest.mark.parametrize(
    ("slices", "words"),
    [
        (12, "1 serving per container, serving size 1 slice (100 g)"),
        (7, "2 servings per container, serving size 1/2 slice (85 g)"),
    ],
)
def test_a_slice_sold_on_its_own_is_a_package_of_its_own(slices: int, words: str) -> None:
    found = servings_of(product("T1"), slices=slices)
    assert found is not None
    assert reads(found.text, words)
    assert found.needs_container_column == (slices == 7)


def test_a_tart_is_divided_as_a_tart() -> None:
    found = servings_of(product("TART"))
    assert found is not None
    assert "tart" in found.size_text
