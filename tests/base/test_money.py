"""Money is exact until the one rounding to the cent, half up."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Money, currency_named, exact, money_text, read_money, to_cent

AMOUNTS = st.decimals("-1e9", "1e9", allow_nan=False, allow_infinity=False, places=5)


@pytest.mark.parametrize(
    ("text", "amount", "currency"),
    [
        ("96", "96", ""),
        ("96.00", "96.00", ""),
        (" 3,20 ", "3.20", ""),
        ("€96", "96", "EUR"),
        ("96 eur", "96", "EUR"),
        ("0.0325", "0.0325", ""),
        ("96.00 CHF", "96.00", "CHF"),
        ("$12", "12", "$"),
        ("0", "0", ""),
    ],
)
def test_an_amount_is_read_with_its_currency(text: str, amount: str, currency: str) -> None:
    assert read_money(text) == Money(Decimal(amount), currency)


@pytest.mark.parametrize(
    "text",
    ["", "-3", "+3", "1,500", "1.500,00", "3.20.1", "NaN", "inf", "1e3", "€3 EUR", "1234567890",
     "3 20", "0.00001", "٨٥", "3/4", "ninety"],
)  # fmt: skip
def test_what_is_not_one_plain_amount_is_not_read(text: str) -> None:
    assert read_money(text) is None


def test_a_sign_of_one_currency_is_that_currency_and_any_other_stays() -> None:
    assert [currency_named(word) for word in ("€", "Euro", "£", "$", "sek", "")] == [
        *("EUR", "EUR", "GBP", "$", "SEK", "")
    ]


@pytest.mark.parametrize(
    ("amount", "cents"),
    [("0.005", "0.01"), ("0.00499", "0.00"), ("-0.005", "-0.01"), ("2.675", "2.68"), ("7", "7.00")],
)
def test_an_exact_half_cent_goes_up(amount: str, cents: str) -> None:
    assert str(to_cent(Decimal(amount))) == cents


@given(AMOUNTS)
def test_rounding_agrees_with_the_decimal_library(amount: Decimal) -> None:
    wanted = amount.quantize(Decimal("0.01"), rounding=ROUND_HALF_UP)
    assert to_cent(amount) == to_cent(Fraction(amount)) == wanted


@given(st.integers(-(10**9), 10**9), st.integers(1, 997))
def test_rounding_moves_an_amount_by_half_a_cent_at_most(top: int, bottom: int) -> None:
    amount = Fraction(top, bottom)
    assert abs(Fraction(to_cent(amount)) - amount) <= Fraction(1, 200)


@given(st.integers(0, 10**7), st.integers(0, 4))
def test_a_float_counts_as_the_decimal_it_is_written_as(digits: int, places: int) -> None:
    written = Fraction(digits, 10**places)
    assert exact(float(written)) == written


def test_money_prints_two_digits_and_unknown_as_a_word() -> None:
    assert money_text(Decimal("1234.5")) == "1234.50"
    assert money_text(Decimal("-2.63"), "EUR") == "-2.63 EUR"
    assert money_text(None, "EUR") == "unknown"
