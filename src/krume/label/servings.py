"""A serving of a whole cake as a fraction of it, nearest the reference amount."""

import math
from dataclasses import dataclass

from krume.base import OutOfRangeError, as_text
from krume.properties import constants

_FRACTIONS = (2, 3, 4, 5, 6)
_MOST = 5000


@dataclass(frozen=True, slots=True)
class Servings:
    """Servings in a cake, the mass of one, and the words of the panel."""

    per_container: int
    serving_g: float
    text: str


def us_servings(cake_g: float, *, reference_g: float) -> Servings:
    """Serving of a cake: the allowed fraction whose mass is nearest the reference amount.

    allowed: 1/2, 1/3, 1/4, 1/5, 1/6 and their halvings and thirdings

    Parameters
    ----------
    cake_g : the whole cake, finished [g]
    reference_g : reference amount: heavy 125, medium 80, light 55 [g]

    Returns
    -------
    servings per container, mass of one [g], and the words

    Raises
    ------
    OutOfRangeError : a mass is not above 0, or the cake holds more than 5000 reference amounts

    Valid for
    ---------
    Large discrete units that are divided. A cake below twice the reference amount is one serving.

    Source
    ------
    `us-21-cfr-101-9`, (b)(2)(i); wording from memory

    Examples
    --------
    >>> us_servings(1120.0, reference_g=80.0).text
    '15 servings per container, serving size 1/15 cake (75 g)'
    """
    for name, mass_g in (("cake", cake_g), ("reference", reference_g)):
        if not 0 < mass_g < math.inf:
            raise OutOfRangeError(
                f"{name} is {mass_g:g} g; type a mass above 0.",
                field=name, got=f"{mass_g:g}", want="more than 0 g",
            )  # fmt: skip
    if cake_g < constants("declared.csv")["single-serving-below"] * reference_g:
        return Servings(1, cake_g, f"1 serving per container, serving size 1 cake ({_g(cake_g)})")
    if cake_g > _MOST * reference_g:
        raise OutOfRangeError(
            f"A cake of {cake_g:g} g and servings of {reference_g:g} g do not go together.",
            field="cake", got=f"{cake_g:g}", want=f"at most {_MOST} reference amounts",
        )  # fmt: skip
    count = min(_allowed(cake_g / reference_g), key=lambda n: (abs(cake_g / n - reference_g), n))
    serving = cake_g / count
    text = f"{count} servings per container, serving size 1/{count} cake ({_g(serving)})"
    return Servings(count, serving, text)


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


def _g(mass_g: float) -> str:
    return f"{as_text(math.floor(mass_g + 0.5), 0)} g"
