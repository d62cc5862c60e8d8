"""The batter of a formula: what its lines come to in water, protein, fat and the rest."""

from dataclasses import dataclass

from krume.bake.batter import Batter
from krume.bake.parameters import value
from krume.base import NotFoundError, Notice, Problem, Read
from krume.design import Formula, Line, batter_lines
from krume.pantry import Ingredient, ingredient
from krume.properties import food_properties, powder_gas_ml

PARTS = ("water", "protein", "fat", "carbohydrate", "fibre", "ash")
_WHOLE_G = 100.0
_POWDER_AT_C = 21.0


@dataclass(frozen=True, slots=True)
class _Sum:
    """Grams of each part, of sugar and of baking powder, and the lines with something unknown."""

    parts: dict[str, float]
    sugar_g: float
    powder_g: float
    egg_g: float
    unknown: tuple[str, ...]
    unknown_g: float


def batter_of(
    formula: Formula,
    *,
    family: str | None,
    density_g_ml: float,
    density_measured: bool,
    own: tuple[Ingredient, ...] = (),
) -> Read[Batter | None]:
    """Batter of a formula's lines; asks where a line's mass or composition decides too much.

    An unknown content is closed by what is missing to 100 g where only one part is unknown, a
    binder counts as fibre, and what no table has counts as carbohydrate: all of it is said. Where
    such lines make more than a twentieth of the batter, they are asked instead.
    """
    lines, _ = batter_lines(formula)
    problems = tuple(_unweighed(line) for line in lines if line.mass_g is None)
    found = [(line, _known(line, own)) for line in lines if line.mass_g is not None]
    total = sum(line.mass_g or 0.0 for line, _ in found)
    if problems or total <= 0:
        return Read(None, problems or (_empty(),))
    added = _add(found)
    if added.unknown_g > value("unknown-share") * total:
        return Read(None, (_too_unknown(added, total),))
    batter = Batter(
        mass_g=total,
        density_g_ml=density_g_ml,
        water=added.parts["water"] / total,
        protein=added.parts["protein"] / total,
        fat=added.parts["fat"] / total,
        carbohydrate=added.parts["carbohydrate"] / total,
        fibre=added.parts["fibre"] / total,
        ash=added.parts["ash"] / total,
        sugar=added.sugar_g / total,
        gas_ratio=_gas_ratio(added, total, density_g_ml),
        egg=added.egg_g > 0,
        core_c=formula.core_c,
        colour="pale" if family == "roulade" else "golden",
        density_measured=density_measured,
    )
    return Read(batter, (), _notices(added))


def _unweighed(line: Line) -> Problem:
    ask = f"“{line.read}” has no mass, and the minutes need it. Write its grams."
    return Problem("mass-needed", f"line {line.number}", line.read, ask)


def _empty() -> Problem:
    return Problem("nothing-to-bake", "line 1", "", "No line has a mass: there is nothing to bake.")


def _too_unknown(added: _Sum, total: float) -> Problem:
    names = ", ".join(added.unknown)
    ask = (
        f"The composition of {names} is not known, {added.unknown_g:.0f} g of {total:.0f} g. "
        "Say what it is, or give its supplier's sheet: without it there are no minutes."
    )
    return Problem("composition-needed", "line 1", names, ask)


def _known(line: Line, own: tuple[Ingredient, ...]) -> Ingredient | None:
    if line.ingredient is None:
        return None
    try:
        return ingredient(line.ingredient, own=own)
    except NotFoundError:
        return None


def _add(found: list[tuple[Line, Ingredient | None]]) -> _Sum:
    parts = dict.fromkeys(PARTS, 0.0)
    sugar = powder = egg = unknown_g = 0.0
    unknown: list[str] = []
    for line, good in found:
        mass = line.mass_g or 0.0
        shares = _shares(good)
        if shares is None:
            unknown.append(line.name)
            unknown_g += mass
            shares = {"fibre" if good is not None and good.binder else "carbohydrate": 1.0}
        for name, share in shares.items():
            parts[name] += share * mass
        if good is not None:
            sugar += _sugar_share(good) * mass
            powder += mass if good.leavening == "baking-powder" else 0.0
            egg += mass if good.role == "egg" else 0.0
    return _Sum(parts, sugar, powder, egg, tuple(dict.fromkeys(unknown)), unknown_g)


def _shares(good: Ingredient | None) -> dict[str, float] | None:
    """Parts of one gram; None where more than one of them is unknown. Alcohol counts as water."""
    if good is None:
        return None
    held = good.composition
    fibre = held.fibre_g
    net = held.carbohydrate_net_g
    if net is None and fibre is None:
        net, fibre = held.carbohydrate_g, 0.0  # fibre conducts as carbohydrate does
    found = {
        "water": held.water_g,
        "protein": held.protein_g,
        "fat": held.fat_g,
        "carbohydrate": net,
        "fibre": fibre,
        "ash": held.ash_g,
    }
    known = {name: grams for name, grams in found.items() if grams is not None}
    missing = [name for name in PARTS if name not in known]
    alcohol = held.alcohol_g or 0.0
    if len(missing) > 1 and set(missing) != {"water", "ash"}:
        return None
    if missing:
        rest = max(_WHOLE_G - sum(known.values()) - alcohol, 0.0)
        known |= {"water": rest} if "water" in missing else {missing[0]: rest}
        known.setdefault("ash", 0.0)
    known["water"] += alcohol
    whole = sum(known.values())
    return {name: grams / whole for name, grams in known.items()} if whole > 0 else None


def _sugar_share(good: Ingredient) -> float:
    """Total sugars of one gram; a sugar whose row has none of them is taken as all sugar.

    Flours and starches without the figure count as none: they move the boiling point by less than
    a tenth of a degree.
    """
    sugars = good.composition.sugars_g
    if sugars is not None:
        return sugars / _WHOLE_G
    return (good.composition.carbohydrate_g or _WHOLE_G) / _WHOLE_G if good.role == "sugar" else 0.0


def _gas_ratio(added: _Sum, total: float, density_g_ml: float) -> float:
    """Leavening gas over whipped-in gas, at most 1: beyond it, the foam loses what it is given."""
    if added.powder_g <= 0:
        return 0.0
    fractions = {name: grams / total for name, grams in added.parts.items()}
    whole = sum(fractions.values())
    even = {name: part / whole for name, part in fractions.items()}
    solid = food_properties(even, temp_c=20.0).density_kg_m3 / 1000
    held = max(1 - density_g_ml / solid, 0.0) * total / density_g_ml
    percent = 100 * value("gas-of-powder")
    gas = powder_gas_ml(added.powder_g, available_pct=percent, temp_c=_POWDER_AT_C)
    return min(1.0, gas / held) if held > 0 else 1.0


def _notices(added: _Sum) -> tuple[Notice, ...]:
    if not added.unknown:
        return ()
    names = ", ".join(added.unknown)
    text = (
        f"The composition of {names} is not in the table: {added.unknown_g:.3g} g are counted as "
        "carbohydrate, binders as fibre. So little does not move the minutes."
    )
    return (Notice("composition-assumed", text),)
