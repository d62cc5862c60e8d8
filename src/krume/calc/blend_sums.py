"""The quick sum on a blend: what 100 g of flours and starches together hold."""

from collections.abc import Sequence

from krume.base import InputError, NotFoundError
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.calc.units import in_unit
from krume.calc.values import quantity
from krume.pantry import Ingredient, find, ingredient

_EXAMPLE = "white rice flour:40"
_HELD = ("protein_g", "fat_g", "fibre_g", "water_g")


def _composition(given: Given) -> Values:
    parts = [_part(item) for item in given.items("parts")]
    total_g = sum(mass for _, mass in parts)
    for item, _ in parts:
        given.cite(item.source)
        blank = [name.removesuffix("_g") for name in _HELD if item.composition.amount(name) is None]
        if blank:
            text = f"{item.label_name}: {' and '.join(blank)} is not known, so the blend's is not."
            given.note("composition-blank", text)
    return {
        "total_g": total_g,
        **{name: _mean(parts, name, total_g) for name in _HELD},
        "starch_pct": _share(parts, total_g, [item.role == "starch" for item, _ in parts]),
        "sweet_rice_pct": _share(parts, total_g, [item.sweet_rice for item, _ in parts]),
    }


def _mean(parts: Sequence[tuple[Ingredient, float]], name: str, total_g: float) -> float | None:
    held = [(item.composition.amount(name), mass) for item, mass in parts]
    known = [value * mass for value, mass in held if value is not None]
    return sum(known) / total_g if len(known) == len(held) else None


def _share(
    parts: Sequence[tuple[Ingredient, float]], total_g: float, counts: Sequence[bool]
) -> float:
    counted = sum(mass for (_, mass), is_in in zip(parts, counts, strict=True) if is_in)
    return 100 * counted / total_g


def _part(item: object) -> tuple[Ingredient, float]:
    """One part: `name:mass`, or a pair of both."""
    pair: Sequence[object] = item.rsplit(":", 1) if isinstance(item, str) else ()
    if isinstance(item, list | tuple):
        pair = item
    if len(pair) != 2:
        message = f"'{item}' is no part of a blend. Type its name, a colon and grams: {_EXAMPLE}."
        raise InputError(message, field="parts", got=str(item), want="name:mass")
    return _named(str(pair[0]).strip()), _mass_g(pair[1])


def _named(words: str) -> Ingredient:
    """Row of a name or of a key; a name of several goods is asked back."""
    try:
        return ingredient(words)
    except NotFoundError:
        found = find(words)
    if found.key is None:
        names = " or ".join(choice.words for choice in found.choices) or "its everyday name"
        message = f"'{words}' is not one row of the pantry. Type {names}."
        raise InputError(message, field="parts", got=words, want=names)
    return ingredient(found.key)


def _mass_g(raw: object) -> float:
    read = quantity(raw, field="parts")
    mass = in_unit(read.value, read.unit, "g", field="parts") if read.unit else read.value
    if mass <= 0:
        message = f"A part of a blend weighs more than nothing, not {mass:g} g."
        raise InputError(message, field="parts", got=f"{mass:g}", want="more than 0 g")
    return mass


BLEND_SUMS = (
    Sum(
        "blend-composition",
        "What 100 g of a blend hold, from the pantry's rows of its flours and starches.",
        (Input("parts", "name:mass of each part, by comma", "g", kind="parts"),),
        (
            Output("total_g", "all parts together"),
            Output("protein_g", "in 100 g; null when a part's is not known"),
            Output("fat_g", "in 100 g; null when a part's is not known"),
            Output("fibre_g", "in 100 g; null when a part's is not known"),
            Output("water_g", "in 100 g; null when a part's is not known"),
            Output("starch_pct", "pure starches, of the blend"),
            Output("sweet_rice_pct", "sweet rice, of the blend"),
        ),
        _composition,
        ("mathematics",),
        (("parts", "white rice flour:40,teff flour:20,potato starch:30"),),
        "Grain and grinding differ from bag to bag; a supplier's sheet says more than a table.",
    ),
)
