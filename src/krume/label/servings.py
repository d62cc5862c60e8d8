"""A serving of a whole cake as a fraction of it, nearest the reference amount."""

import math
from dataclasses import dataclass
from decimal import Decimal

from krume.base import OutOfRangeError
from krume.label.net_quantity import servings_per_container
from krume.label.printed import printed
from krume.properties import constants

_FRACTIONS = (2, 3, 4, 5, 6)
_MOST = 5000


@dataclass(frozen=True, slots=True)
class Servings:
    """Servings in a cake, the mass of one, and the words of the panel, together and apart.

    `needs_container_column` says that the panel has a second column for the whole cake.
    """

    servings_per_container: float
    serving_g: float
    text: str
    count_text: str = ""
    size_text: str = ""
    cake_g: float = 0.0
    needs_container_column: bool = False


def us_servings(cake_g: float, *, reference_g: float, whole: str = "cake") -> Servings:
    """Serving of a cake: the allowed fraction whose mass is nearest the reference amount.

    allowed: 1/2, 1/3, 1/4, 1/5, 1/6 and their halvings and thirdings

    Parameters
    ----------
    cake_g : the whole cake, finished [g]
    reference_g : reference amount: heavy 125, medium 80, light 55 [g]
    whole : what is divided, as the panel calls it: cake, tart

    Returns
    -------
    servings per container, mass of one [g], the words, and whether the whole has its own column

    Raises
    ------
    OutOfRangeError : a mass is not above 0, or the cake holds more than 5000 reference amounts

    Valid for
    ---------
    Large discrete units that are divided. A cake below twice the reference amount is one serving;
    from twice to three times it, both included, the whole has a column of its own.

    Source
    ------
    `us-21-cfr-101-9`, (b)(2)(ii), (b)(6) and (b)(12)(i); fractions and (b)(6) from memory

    Examples
    --------
    >>> us_servings(1120.0, reference_g=80.0).text
    '15 servings per container, serving size 1/15 cake (75 g)'
    >>> us_servings(200.0, reference_g=80.0).needs_container_column
    True
    """
    _checked(cake_g, reference_g, "reference")
    amounts, limits = _exact(cake_g) / _exact(reference_g), constants("declared.csv")
    if amounts < _exact(limits["single-serving-below"]):
        return _servings(1, cake_g, f"1 {whole}", is_dual=False)
    count = min(_allowed(cake_g / reference_g), key=lambda n: (abs(cake_g / n - reference_g), n))
    dual = (
        _exact(limits["container-column-from"])
        <= amounts
        <= _exact(limits["container-column-most"])
    )
    return _servings(count, cake_g, f"1/{count} {whole}", is_dual=dual)


def _checked(cake_g: float, serving_g: float, name: str) -> None:
    """Refuse masses that no cake and no serving can have."""
    for field, mass_g in (("cake", cake_g), (name, serving_g)):
        if not 0 < mass_g < math.inf:
            raise OutOfRangeError(
                f"{field} is {mass_g:g} g; type a mass above 0.",
                field=field, got=f"{mass_g:g}", want="more than 0 g",
            )  # fmt: skip
    if cake_g > _MOST * serving_g:
        raise OutOfRangeError(
            f"A cake of {cake_g:g} g and servings of {serving_g:g} g do not go together.",
            field="cake", got=f"{cake_g:g}", want=f"at most {_MOST} servings",
        )  # fmt: skip


def _servings(count: int, cake_g: float, measure: str, *, is_dual: bool) -> Servings:
    serving_g = cake_g / count
    size = f"{measure} ({serving_grams(serving_g)})"
    said = f"{count} serving{'' if count == 1 else 's'} per container"
    return Servings(count, serving_g, f"{said}, serving size {size}", said, size, cake_g, is_dual)


def own_servings(cake_g: float, *, serving_g: float, piece: str = "piece") -> Servings:
    """Servings in a cake that comes in pieces of a mass of their own.

    n = cake / serving; from 2 to 5 to the nearest half, else the nearest whole, then with “about”

    Parameters
    ----------
    cake_g : all pieces together, finished [g]
    serving_g : one piece [g]
    piece : what one is called

    Returns
    -------
    servings per container as printed, mass of one [g], and the words

    Raises
    ------
    OutOfRangeError : a mass is not above 0, a piece weighs more than all, or there are over 5000

    Valid for
    ---------
    Pieces that are not sold one by one.

    Source
    ------
    `us-21-cfr-101-9`, (b)(8)

    Examples
    --------
    >>> own_servings(180.0, serving_g=80.0, piece="slice").text
    'about 2.5 servings per container, serving size 1 slice (80 g)'
    """
    _checked(cake_g, serving_g, "serving")
    if serving_g > cake_g:
        raise OutOfRangeError(
            f"A serving of {serving_g:g} g is more than the {cake_g:g} g there are.",
            field="serving", got=f"{serving_g:g}", want=f"at most {cake_g:g} g",
        )  # fmt: skip
    exact = _exact(cake_g) / _exact(serving_g)
    shown = servings_per_container(exact)
    about = "" if shown == exact else "about "
    said = f"{about}{shown:f} serving{'' if shown == 1 else 's'} per container"
    size = f"1 {piece} ({serving_grams(serving_g)})"
    text = f"{said}, serving size {size}"
    return Servings(_plain(shown), serving_g, text, said, size, cake_g)


def _plain(count: Decimal) -> float:
    return int(count) if count == int(count) else float(count)


def serving_grams(serving_g: float) -> str:
    """Grams of a serving as the panel prints them: whole, finer below 5 g.

    >>> serving_grams(74.5), serving_grams(4.3)
    ('75 g', '4.5 g')
    """
    return printed(_exact(serving_g), "us_rounding.csv", "serving", unit="g").text


def _exact(amount: float) -> Decimal:
    return Decimal(repr(round(amount, 9)))


def _allowed(about: float) -> list[int]:
    """Denominators up to three times the wished number."""
    return [n for n in range(2, int(3 * about) + 7) if _is_allowed(n)]


def _is_allowed(denominator: int) -> bool:
    return any(
        denominator % first == 0 and _only_twos_and_threes(denominator // first)
        for first in _FRACTIONS
    )


def _only_twos_and_threes(number: int) -> bool:
    for factor in (2, 3):
        while number % factor == 0:
            number //= factor
    return number == 1
