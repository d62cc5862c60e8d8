"""How much each gram off matters: half the width of the family's band for it, in grams."""

from krume.design.balance import Balance
from krume.design.bands import band
from krume.design.ratios import best_of
from krume.design.varying.parts_of import HELD, known, per_gram
from krume.pantry import ingredient
from krume.properties import constants

_TABLE = "varying.csv"
_EGG = "egg-whole-fresh"


def weights_g(found: Balance) -> dict[str, float]:
    r"""Half a band of fat, water, sugar and starch [g]; where there is no band, a share of all.

    The water of a family without a band of liquid is that of half its band of egg.

    >>> from krume.design.balance import balance
    >>> from krume.design.reader import read
    >>> text = "Sponge\nFamily: separated\n\n100 g white rice flour\n250 g egg\n120 g sugar\n"
    >>> {key: round(grams, 1) for key, grams in weights_g(balance(read(text).value)).items()}
    {'fat': 17.5, 'water': 53.3, 'sugar': 27.5, 'starch': 10.0}
    """
    return {name: _banded_g(found, name) or _plain_g(found, name) for name in HELD}


def _plain_g(found: Balance, name: str) -> float:
    total = best_of(found.total_g) or 1.0
    return constants(_TABLE)[f"plain-{name}"] / 100 * total


def _banded_g(found: Balance, name: str) -> float | None:
    if name == "fat":
        as_butter = ingredient("butter-82-ciqual").added_fat_pct or 0.0
        return _half_g(found, "added_fat") or _times(_half_g(found, "butter"), as_butter / 100)
    if name == "water":
        water = per_gram(known(_EGG)).water_g or 0.0
        return _half_g(found, "liquid") or _times(_half_g(found, "egg"), water)
    return _half_g(found, name)


def _times(value: float | None, factor: float) -> float | None:
    return None if value is None else value * factor


def _half_g(found: Balance, quantity: str) -> float | None:
    """Half a band in grams of its basis; None where there is none, or it has no width."""
    limits = None if found.family is None else band(found.family, quantity)
    basis = best_of(found.flour_g if quantity == "starch" else found.basis_g)
    if limits is None or basis is None or limits.unit != "%":
        return None
    return (limits.high - limits.low) / 2 / 100 * basis or None
