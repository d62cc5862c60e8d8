"""Quick sums on labels: panel figures, energy, salt, gluten, shares, allergens."""

import math
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from krume.base import InputError, Interval, OutOfRangeError
from krume.calc.allergen_sum import ALLERGEN_SUM
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.naming import nearest
from krume.calc.summing import Sum
from krume.calc.units import in_unit
from krume.calc.values import is_unknown, quantity
from krume.label import (
    GlutenPart,
    atwater_kcal,
    cut_share,
    declared_share_pct,
    eu_energy,
    gluten_mix,
    own_servings,
    panel_unit,
    salt_g,
    us_amount,
    us_daily_value_pct,
    us_nutrients,
    us_servings,
)
from krume.pantry import find, ingredient

_OTHER_WORDS = {
    "energy": "calories", "kcal": "calories", "total-fat": "fat", "saturated-fat": "saturated",
    "trans-fat": "trans", "carbs": "carbohydrate", "carbohydrates": "carbohydrate",
    "total-carbohydrate": "carbohydrate", "fiber": "fibre", "dietary-fibre": "fibre",
    "dietary-fiber": "fibre", "sugar": "sugars", "total-sugars": "sugars",
    "added-sugar": "added-sugars", "vitamin d": "vitamin-d",
}  # fmt: skip


def _nutrient(given: Given) -> str:
    typed = given.text("nutrient").casefold().replace("_", "-").replace(" ", "-")
    name = _OTHER_WORDS.get(typed, typed)
    if name in us_nutrients():
        return name
    close = nearest(name, us_nutrients())
    hint = f" Did you mean {close[0]}?" if close else ""
    raise InputError(
        f"The panel has no nutrient '{typed}'. It has {', '.join(us_nutrients())}.{hint}",
        field="nutrient", got=typed, want=", ".join(us_nutrients()),
    )  # fmt: skip


def _exact_amount(given: Given, nutrient: str) -> Decimal:
    """The amount in the panel's unit, with its digits as typed so that a half stays a half."""
    read = given.quantity("amount")
    if not read.unit:
        return read.exact
    unit = panel_unit(nutrient)
    return Decimal(repr(round(in_unit(read.value, read.unit, unit, field="amount"), 9)))


def _us_amount(given: Given) -> Values:
    nutrient = _nutrient(given)
    found = us_amount(nutrient, _exact_amount(given, nutrient))
    if found.value is None:
        given.note("words", "The law has words for this amount; there is no figure to print.")
    return {"value": found.value, "text": found.text}


def _us_daily_value(given: Given) -> Values:
    nutrient = _nutrient(given)
    if nutrient == "protein":
        given.note("protein-quality", "The law wants protein corrected for its quality here.")
    return {"percent": us_daily_value_pct(nutrient, _exact_amount(given, nutrient))}


def _us_servings(given: Given) -> Values:
    if not given.has("serving") and not given.has("reference"):
        raise given.missing("reference", "serving", either=True)
    if given.has("serving"):
        found = own_servings(given.number("cake"), serving_g=given.number("serving"))
    else:
        found = us_servings(given.number("cake"), reference_g=given.number("reference"))
    if found.needs_container_column:
        text = "From two to three reference amounts the panel has a column for the whole cake too."
        given.note("container-column", text)
    return {
        "per_container": found.servings_per_container,
        "serving_g": found.serving_g,
        "text": found.text,
    }


_EU = ("fat", "carbohydrate", "polyols", "fibre", "protein", "alcohol", "organic_acids")


def _slice_carbohydrate(given: Given) -> Values:
    whole_g, slices = given.number("carbohydrate"), given.count("slices")
    if slices is None:
        raise given.missing("slices")
    if whole_g < 0:
        raise OutOfRangeError(
            f"carbohydrate is {whole_g:g} g; type 0 or more.",
            field="carbohydrate", got=f"{whole_g:g}", want="0 g or more",
        )  # fmt: skip
    found = cut_share(Interval.around(whole_g, given.or_zero("spread")), slices)
    given.note("not-analysed", "Worked out, not analysed: no dose of insulin rests on it alone.")
    return {"low_g": found.low, "best_g": found.best, "high_g": found.high}


def _eu_energy(given: Given) -> Values:
    if not any(given.has(name) for name in _EU):
        raise given.missing(*_EU, either=True)
    found = eu_energy({name.replace("_", "-"): given.or_zero(name) for name in _EU})
    return {"energy_kj": found.energy_kj, "energy_kcal": found.energy_kcal}


def _salt(given: Given) -> Values:
    return {"salt_g": salt_g(given.number("sodium"))}


def _atwater(given: Given) -> Values:
    factors = _factors(given) if given.has("food") else None
    energy = atwater_kcal(
        given.number("protein"),
        given.number("fat"),
        given.number("carbohydrate"),
        factors_kcal_g=factors,
    )
    return {"energy_kcal": energy, "factors": "general" if factors is None else "specific"}


def _factors(given: Given) -> tuple[float, float, float] | None:
    """Specific factors of a food; without a row the general ones hold, and that is said."""
    words = given.text("food")
    found = find(words)
    known = None if found.key is None else ingredient(found.key).factors
    parts = (
        () if known is None
        else (known.kcal_per_g_protein, known.kcal_per_g_fat, known.kcal_per_g_carbohydrate)
    )  # fmt: skip
    numbers = [part for part in parts if part is not None]
    if len(numbers) != 3:
        given.note("general-factors", f"'{words}' has no factors of its own: 4, 9, 4 were taken.")
        return None
    given.cite("usda-sr28")
    return numbers[0], numbers[1], numbers[2]


def _gluten(given: Given) -> Values:
    found = gluten_mix([_part(item) for item in given.items("parts")])
    if found.gluten_ppm is None:
        given.note("unknown-part", "A part has no known gluten: the mixture has none known either.")
    given.note("no-claim", "The side of the limit only. A claim needs records and a tested cake.")
    return {
        "ppm": found.gluten_ppm,
        "us_gluten_free": found.us_gluten_free,
        "eu_gluten_free": found.eu_gluten_free,
    }


def _part(item: object) -> GlutenPart:
    """One part: `mass:ppm`, `mass:?`, or a pair."""
    pair: Sequence[object] = item.split(":") if isinstance(item, str) else ()
    if isinstance(item, list | tuple):
        pair = item
    if len(pair) != 2:
        raise InputError(
            f"'{item}' is no part. Type mass:ppm, for example 250:10, or 40:? when unknown.",
            field="parts", got=str(item), want="mass:ppm",
        )  # fmt: skip
    mass = _exact(pair[0], "g")
    return GlutenPart(mass, None if is_unknown(pair[1]) else _exact(pair[1], "ppm"))


def _exact(raw: object, unit: str) -> Fraction:
    read = quantity(raw, field="parts")
    if not read.unit:
        return Fraction(read.exact)
    return Fraction(repr(round(in_unit(read.value, read.unit, unit, field="parts"), 9)))


def _quid(given: Given) -> Values:
    percent = declared_share_pct(
        given.number("part"),
        total_g=given.number("total"),
        evaporated_g=given.or_zero("evaporated"),
    )
    if percent > 100:
        used = math.floor(percent + 0.5)
        given.note("above-100", f"Above 100 %: declare {used} g used per 100 g instead.")
    return {"percent": percent}


_NUTRIENT = Input("nutrient", "nutrient of the panel", kind="text")
_AMOUNT = Input("amount", "per serving, in kcal, g, mg or ug as the panel has it", kind="quantity")

LABEL_SUMS = (
    Sum(
        "us-amount",
        "An amount as a US panel prints it.",
        (_NUTRIENT, _AMOUNT),
        (
            Output("value", "rounded; null where the law has words"),
            Output("text", "as printed"),
        ),
        _us_amount,
        ("us-21-cfr-101-9",),
        (("nutrient", "sodium"), ("amount", "145")),
        "Halves go up, rounded once from the unrounded amount.",
    ),
    Sum(
        "us-daily-value",
        "Percent of the daily value as a US panel prints it.",
        (_NUTRIENT, _AMOUNT),
        (Output("percent", "rounded"),),
        _us_daily_value,
        ("us-21-cfr-101-9",),
        (("nutrient", "fat"), ("amount", "12")),
    ),
    Sum(
        "us-servings",
        "A slice as a fraction of the cake, nearest the reference amount; or pieces in a package.",
        (
            Input("cake", "the whole cake, finished", "g"),
            Input(
                "reference",
                "reference amount: heavy 125, medium 80, light 55",
                "g",
                required=False,
            ),
            Input("serving", "mass of a piece, where it comes in pieces", "g", required=False),
        ),
        (
            Output("per_container", "slices in the cake, or pieces as printed"),
            Output("serving_g", "mass of one"),
            Output("text", "words of the panel"),
        ),
        _us_servings,
        ("us-21-cfr-101-9", "us-21-cfr-101-12"),
        (("cake_g", "1120"), ("reference_g", "80")),
    ),
    Sum(
        "slice-carbohydrate",
        "Carbohydrate of a slice that is cut by hand, with its ends.",
        (
            Input("carbohydrate", "carbohydrate of the whole cake", "g"),
            Input("slices", "slices it is cut into", kind="count"),
            Input("spread", "how far that of the whole may be off", "g", required=False),
        ),
        (
            Output("low_g", "a small slice"),
            Output("best_g", "an even slice"),
            Output("high_g", "a large slice"),
        ),
        _slice_carbohydrate,
        ("krume",),
        (("carbohydrate", "372"), ("slices", "12"), ("spread", "12")),
        "The cut is taken as 10 % of a slice: assumed. It and the spread lie apart.",
    ),
    Sum(
        "eu-energy",
        "Energy by the factors of the EU.",
        (
            *(
                Input(name, f"{name.replace('_', ' ')} per 100 g", "g", required=False)
                for name in _EU
            ),
        ),
        (Output("energy_kj", "not rounded"), Output("energy_kcal", "not rounded")),
        _eu_energy,
        ("eu-1169-2011",),
        (("fat", "18"), ("carbohydrate", "45"), ("fibre", "2"), ("protein", "6")),
        "Carbohydrate as declared, polyols included. A nutrient left out counts as none of it.",
    ),
    Sum(
        "salt",
        "Salt as the EU declares it, from sodium.",
        (Input("sodium", "all sodium", "mg"),),
        (Output("salt_g", "not rounded"),),
        _salt,
        ("eu-1169-2011",),
        (("sodium", "250mg"),),
    ),
    Sum(
        "atwater",
        "Energy by general factors, or by the factors of one food.",
        (
            Input("protein", "protein", "g"),
            Input("fat", "fat", "g"),
            Input("carbohydrate", "carbohydrate, fibre included", "g"),
            Input("food", "a food, for its own factors", kind="text", required=False),
        ),
        (Output("energy_kcal", "not rounded"), Output("factors", "general or specific")),
        _atwater,
        ("us-21-cfr-101-9",),
        (("protein", "12.56"), ("fat", "9.51"), ("carbohydrate", "0.72"), ("food", "egg")),
    ),
    Sum(
        "gluten-mix",
        "Gluten of a mixture by mass balance: the side of the limit, never a claim.",
        (Input("parts", "mass:ppm of each part, mass:? when unknown", kind="parts"),),
        (
            Output("ppm", "null as soon as a part is unknown"),
            Output("us_gluten_free", "below 20; null when unknown"),
            Output("eu_gluten_free", "20 or less; null when unknown"),
        ),
        _gluten,
        ("us-21-cfr-101-91", "eu-828-2014"),
        (("parts", "250:10,40:325"),),
    ),
    Sum(
        "quid",
        "Share of a named ingredient over the finished food.",
        (
            Input("part", "the ingredient as it goes in", "g"),
            Input("total", "everything that goes in", "g"),
            Input("evaporated", "water lost in the oven", "g", required=False),
        ),
        (Output("percent", "not rounded"),),
        _quid,
        ("eu-1169-2011",),
        (("part", "100"), ("total", "460"), ("evaporated", "60")),
    ),
    ALLERGEN_SUM,
)
