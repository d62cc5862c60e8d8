"""A water activity by sugar and water is a remark with its doubt."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.design import read
from krume.keep import activity_estimate
from tests.agreement import agrees


def of(text: str, evaporated_g: float = 0.0) -> float | None:
    """Best estimate of a typed formula."""
    found = activity_estimate(read(text).value, evaporated_g=evaporated_g)
    return None if found is None else found.best


@pytest.mark.source("norrish-1966", "R24: sucrose 50 and 60 %")
def test_a_plain_syrup_is_the_form_itself() -> None:
    half = of("Syrup\n\n100 g sugar\n100 g water\n")
    more = of("Syrup\n\n150 g sugar\n100 g water\n")
    why = "table sugar and tap water are not pure"
    assert agrees(half, "0.9348", within="0.0005", why=why)
    assert agrees(more, "0.8953", within="0.0005", why=why)


@given(st.floats(10.0, 140.0), st.floats(1.0, 10.0))
def test_more_sugar_never_raises_it(sugar: float, more: float) -> None:
    less = of(f"Syrup\n\n{sugar:.2f} g sugar\n100 g water\n")
    above = of(f"Syrup\n\n{sugar + more:.2f} g sugar\n100 g water\n")
    assert less is not None
    assert above is not None
    assert above <= less


def test_water_baked_out_lowers_it() -> None:
    text = "Syrup\n\n100 g sugar\n100 g water\n"
    wet, dry = of(text), of(text, evaporated_g=20.0)
    assert wet is not None
    assert dry is not None
    assert dry < wet


@pytest.mark.parametrize(
    "text",
    [
        "Cream\n\n100 g whipping cream\nsugar to taste\n",
        "Gum\n\n100 g sugar\n100 g water\n50 g xanthan gum\n",
        "Sugar\n\n100 g sugar\n",
        "Syrup\n\n1000 g sugar\n100 g water\n",
        "Nothing\n",
    ],
)
def test_where_too_much_is_unknown_or_the_form_ends_nothing_is_said(text: str) -> None:
    assert of(text) is None


def test_a_trace_of_unknown_goods_leaves_the_remark() -> None:
    assert of("Syrup\n\n100 g sugar\n100 g water\n1 g xanthan gum\n") is not None


def test_the_doubt_stands_on_both_sides() -> None:
    found = activity_estimate(read("Syrup\n\n100 g sugar\n100 g water\n").value)
    assert found is not None
    assert found.low < found.best < found.high <= 1.0
