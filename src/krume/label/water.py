"""How much of the water added to a product is still in it: its place in a list."""

import math

from krume.label.product import Product, ProductPart, Used


def is_water(used: Used) -> bool:
    """Whether goods are added water."""
    return used.role == "water"


def water_left_g(product: Product) -> float | None:
    r"""Grams of added water in the finished product; None where a part's mass is not known.

    Of each part: what it weighs finished, less everything else that went in, never below nothing.
    Part by part, so that water a sponge loses in the oven takes none off a syrup.

    >>> sugar = Used("sugar", "sugar", "sugar", "sugar", 60.0)
    >>> syrup = (sugar, Used("water", "water", "water", "water", 40.0))
    >>> part = ProductPart("S", "Syrup", syrup, 90.0)
    >>> water_left_g(Product("Syrup", "formula", syrup, 90.0, "measured", {}, parts=(part,)))
    30.0
    """
    left = [_left_g(part) for part in _parts(product)]
    known = [grams for grams in left if grams is not None]
    return math.fsum(known) if len(known) == len(left) else None


def _parts(product: Product) -> tuple[ProductPart, ...]:
    whole = ProductPart(product.name, product.name, product.used, product.finished_g)
    return product.parts or (whole,)


def _left_g(part: ProductPart) -> float | None:
    water = [each.mass_g for each in part.used if is_water(each)]
    if not water:
        return 0.0
    others = [each.mass_g for each in part.used if not is_water(each)]
    if part.finished_g is None or any(mass is None for mass in (*water, *others)):
        return None
    return max(0.0, part.finished_g - math.fsum(mass for mass in others if mass is not None))
