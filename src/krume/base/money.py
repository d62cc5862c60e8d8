"""Money: decimal amounts in one currency, exact until the one rounding to the cent, half up."""

import re
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

_AMOUNT = re.compile(
    r"^(?P<before>[^\d\s.,+-]{0,8})\s*(?P<digits>\d{1,9}(?:\.\d{1,4}|,\d{1,2})?)\s*"
    r"(?P<after>[^\d\s.,+-]{0,8})$"
)
_SIGNS = {"€": "EUR", "£": "GBP", "EURO": "EUR", "EUROS": "EUR"}


@dataclass(frozen=True, slots=True)
class Money:
    """An amount with its currency; the empty text is a currency that is not said."""

    amount: Decimal
    currency: str = ""


def read_money(text: str) -> Money | None:
    """Read one amount with or without a currency beside it; None when the text is not one.

    >>> read_money("96.00"), read_money("€ 3,20")
    (Money(amount=Decimal('96.00'), currency=''), Money(amount=Decimal('3.20'), currency='EUR'))
    >>> read_money("1,500") is None, read_money("-3") is None
    (True, True)
    """
    match = _AMOUNT.match(text.strip())
    if match is None or not match["digits"].isascii() or (match["before"] and match["after"]):
        return None
    return Money(
        Decimal(match["digits"].replace(",", ".")),
        currency_named(match["before"] or match["after"]),
    )


def currency_named(word: str) -> str:
    """One spelling of a currency: a sign that means one currency only becomes its code.

    >>> currency_named("€"), currency_named("eur"), currency_named("$")
    ('EUR', 'EUR', '$')
    """
    spelled = word.strip().upper()
    return _SIGNS.get(spelled, spelled)


def exact(value: float | Decimal) -> Fraction:
    """The number as it is written, without the dust of the binary form.

    >>> exact(2.7), exact(Decimal("0.32"))
    (Fraction(27, 10), Fraction(8, 25))
    """
    return Fraction(str(value))


def to_cent(amount: Fraction | Decimal) -> Decimal:
    """Amount rounded to the cent, an exact half up (away from zero).

    >>> to_cent(Fraction(1, 8)), to_cent(Decimal("115.005")), to_cent(Fraction(-1, 200))
    (Decimal('0.13'), Decimal('115.01'), Decimal('-0.01'))
    """
    cents = abs(Fraction(amount)) * 100
    whole = (2 * cents.numerator + cents.denominator) // (2 * cents.denominator)
    return Decimal(whole if amount >= 0 else -whole).scaleb(-2)


def money_text(amount: Decimal | None, currency: str = "") -> str:
    """An amount with two digits, its currency behind it; unknown is a word.

    >>> money_text(Decimal("52.8")), money_text(Decimal("6.76"), "EUR"), money_text(None)
    ('52.80', '6.76 EUR', 'unknown')
    """
    return "unknown" if amount is None else f"{amount:.2f} {currency}".rstrip()
