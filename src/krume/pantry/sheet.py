"""A supplier's sheet as plain text: one's own ingredient, what it does not say stays unknown."""

import re
from dataclasses import dataclass
from functools import cache

from krume.base import Notice, Option, Problem, Read, read_number
from krume.evidence import column, load
from krume.pantry.composition import Composition
from krume.pantry.ingredients import CLASSES, ROLES, Ingredient

RANGE_COLUMNS = (
    column("group", "key"),
    column("quantity"),
    column("low", "number"),
    column("high", "number"),
    column("unit", "unit"),
    column("status", "status"),
    column("source", "source"),
)
_SALT_PER_SODIUM = 2.5
_BALANCE_G = (97.0, 103.0)
_LINE = re.compile(r"^\s*([^:=]{2,40})\s*[:=]\s*(.*?)\s*$")
_AMOUNT = re.compile(r"^(<|≤|>)?\s*([\d.,]+)\s*(g|mg|µg|ug|kcal|kj|%)?\s*(?:/\s*100\s*g)?$", re.I)
_FIELDS = {
    "water": "water_g", "moisture": "water_g", "energy": "energy_kcal", "protein": "protein_g",
    "fat": "fat_g", "total fat": "fat_g", "saturated": "saturated_g", "saturates": "saturated_g",
    "of which saturates": "saturated_g", "saturated fat": "saturated_g", "trans": "trans_g",
    "carbohydrate": "carbohydrate_g", "carbohydrates": "carbohydrate_g", "fibre": "fibre_g",
    "fiber": "fibre_g", "dietary fibre": "fibre_g", "sugars": "sugars_g", "sugar": "sugars_g",
    "of which sugars": "sugars_g", "starch": "starch_g", "polyols": "polyols_g", "ash": "ash_g",
    "alcohol": "alcohol_g", "sodium": "sodium_mg", "salt": "sodium_mg",
    "potassium": "potassium_mg", "calcium": "calcium_mg", "iron": "iron_mg",
    "vitamin d": "vitamin_d_ug", "cholesterol": "cholesterol_mg",
}  # fmt: skip
_TEXT_KEYS = ("name", "class", "role", "allergens", "contains", "may contain", "carbohydrate basis")
_ROLE_OF_CLASS = {"spice": "flavour", "alcohol": "spirit", "cocoa": "cocoa"}


@dataclass(frozen=True, slots=True)
class _Sheet:
    texts: dict[str, str]
    figures: dict[str, float]
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]


def read_supplier_sheet(text: str) -> Read[Ingredient | None]:
    r"""Read `Key: value` lines per 100 g; what cannot be is asked, what is not said is unknown.

    >>> read = read_supplier_sheet("Name: Xanthan gum X\nClass: gel\nFibre: 78 g\nWater: 11 g")
    >>> read.value.composition.fibre_g, read.value.composition.ash_g, read.value.status
    (78.0, None, 'declared')
    """
    sheet = _sheet(text)
    kind = sheet.texts.get("class", "").casefold()
    problems = (*sheet.problems, *_missing(sheet.texts), *_implausible(kind, sheet.figures))
    if not sheet.texts.get("name"):
        return Read(None, problems, sheet.notices)
    mine = _ingredient(sheet, kind if kind in CLASSES else "other")
    return Read(mine, (*problems, *_unbalanced(mine)), sheet.notices)


def _sheet(text: str) -> _Sheet:
    texts: dict[str, str] = {}
    figures: dict[str, float] = {}
    problems: list[Problem] = []
    notices: list[Notice] = []
    for number, line in enumerate(text.splitlines(), start=1):
        match = _LINE.match(line)
        if match is None:
            continue
        name = " ".join(match[1].casefold().split())
        where = f"line {number}"
        if name in _TEXT_KEYS:
            texts.setdefault(name, match[2])
        elif name in _FIELDS:
            problems += _take(figures, name, match[2], line.strip(), where)
        else:
            notices.append(Notice("sheet-line", f"'{line.strip()}' was not used", where))
    return _Sheet(texts, figures, tuple(problems), tuple(notices))


def _take(
    figures: dict[str, float], name: str, value: str, line: str, where: str
) -> tuple[Problem, ...]:
    """Put one figure where it belongs; a figure that cannot be read is asked."""
    if value.casefold() in ("", "-", "–", "unknown", "?", "n/a", "not declared"):
        return ()
    field = _FIELDS[name]
    amount = _amount(name, value)
    if amount is None:
        ask = f"'{value}' is no amount per 100 g. Type a number with its unit, or unknown."
        return (
            Problem("figure-unread", where, line, ask, (Option("unknown", f"{name}: unknown"),)),
        )
    if field in figures and figures[field] != amount:
        ask = f"{name} stands here a second time with another value. Which one holds?"
        return (Problem("figure-twice", where, line, ask, (Option("this one", line),)),)
    figures[field] = amount
    return ()


def _amount(name: str, value: str) -> float | None:
    match = _AMOUNT.match(value)
    number = read_number(match[2], comma_is_decimal=True) if match else None
    if match is None or number is None:
        return None
    field = _FIELDS[name]
    unit = (match[3] or _default_unit(name)).casefold().replace("µ", "u")
    scale = _SCALES.get((unit, field.rsplit("_", 1)[1]))
    if scale is None:
        return None
    return number.value * scale / (_SALT_PER_SODIUM if name == "salt" else 1.0)


_SCALES = {
    ("g", "g"): 1.0, ("mg", "g"): 0.001, ("%", "g"): 1.0, ("g", "mg"): 1000.0, ("mg", "mg"): 1.0,
    ("%", "mg"): 1000.0, ("ug", "ug"): 1.0, ("mg", "ug"): 1000.0, ("kcal", "kcal"): 1.0,
    ("kj", "kcal"): 1 / 4.184, ("ug", "mg"): 0.001,
}  # fmt: skip


def _default_unit(name: str) -> str:
    return "g" if name == "salt" else _FIELDS[name].rsplit("_", 1)[1]


def _missing(texts: dict[str, str]) -> tuple[Problem, ...]:
    problems = []
    if not texts.get("name"):
        ask = "The sheet has no name. What is the ingredient called?"
        problems.append(
            Problem("name-missing", "after line 0", "", ask, (Option("a name", "Name: "),))
        )
    if texts.get("class", "").casefold() not in CLASSES:
        options = tuple(Option(kind, f"Class: {kind}") for kind in CLASSES)
        read = texts.get("class", "")
        ask = "Which class is it? The class says what is plausible."
        problems.append(Problem("class-missing", "after line 1", read, ask, options))
    return tuple(problems)


def _implausible(kind: str, figures: dict[str, float]) -> tuple[Problem, ...]:
    problems = []
    for quantity, (low, high) in plausible(kind).items():
        value = figures.get(quantity)
        if value is not None and not low <= value <= high:
            name = quantity.rsplit("_", 1)[0].replace("_", " ")
            ask = (
                f"{name} {value:g} per 100 g is unusual for the class {kind} "
                f"({low:g} to {high:g}). Is it per 100 g, and is the unit right?"
            )
            option = Option("the sheet does not say", f"{name.capitalize()}: unknown")
            problems.append(
                Problem("figure-implausible", "sheet", f"{name} {value:g}", ask, (option,))
            )
    return tuple(problems)


def plausible(kind: str, key: str = "") -> dict[str, tuple[float, float]]:
    """Plausible range of each quantity for a class, in the unit of its name.

    A key narrows it to the group of its first words: the fat of a butter, not that of any fat.

    >>> plausible("fat")["fat_g"][0] < plausible("fat", "butter-salted")["fat_g"][0]
    True
    """
    groups = _ranges()
    words = key.split("-")
    starts = ("-".join(words[:count]) for count in range(len(words), 0, -1))
    narrow = next((s for s in starts if s in groups and s not in CLASSES), kind)
    return {**groups.get(kind, {}), **groups.get(narrow, {})}


@cache
def _ranges() -> dict[str, dict[str, tuple[float, float]]]:
    groups: dict[str, dict[str, tuple[float, float]]] = {}
    for row in load("ranges.csv", RANGE_COLUMNS, ("group", "quantity")):
        span = (row.number_of("low"), row.number_of("high"))
        groups.setdefault(row.text("group"), {})[row.text("quantity")] = span
    return groups


def _unbalanced(mine: Ingredient) -> tuple[Problem, ...]:
    parts = mine.composition.parts_g
    if parts is None or _BALANCE_G[0] <= parts <= _BALANCE_G[1]:
        return ()
    ask = (
        f"water, protein, fat, carbohydrate, fibre, ash and alcohol come to {parts:.1f} g per "
        "100 g. Which of them is not per 100 g, or does the carbohydrate hold the fibre?"
    )
    option = Option("the carbohydrate holds the fibre", "Carbohydrate basis: by difference")
    return (Problem("parts-do-not-add-up", "sheet", f"{parts:.1f} g", ask, (option,)),)


def _ingredient(sheet: _Sheet, kind: str) -> Ingredient:
    name = sheet.texts["name"]
    basis = sheet.texts.get("carbohydrate basis", "").casefold()
    by_difference = "difference" in basis or "fibre in" in basis
    composition = Composition(
        carbohydrate_basis="by_difference" if by_difference else "available",
        energy_basis="declared",
        **sheet.figures,
    )
    said = sheet.texts.get("contains", sheet.texts.get("allergens"))
    typed = sheet.texts.get("role", "").casefold()
    role = typed if typed in ROLES else _ROLE_OF_CLASS.get(kind, kind)
    return Ingredient(
        key=slug(name),
        name=name,
        label_name=name,
        kind=kind,
        role=role,
        composition=composition,
        pure_starch=role == "starch",
        liquid=role in ("liquid", "water"),
        acid=role == "acid",
        binder=role == "binder",
        added_fat_pct=composition.fat_g if role == "fat" else None,
        source="supplier-sheet",
        status="declared",
        contains=_listed(said),
        may_contain=_listed(sheet.texts.get("may contain")),
    )


def _listed(text: str | None) -> tuple[str, ...] | None:
    """Words of a list; `none` is an empty list, silence is unknown."""
    if text is None or text.casefold() in ("", "?", "unknown", "not declared"):
        return None
    if text.casefold() in ("none", "no", "-", "–"):
        return ()
    return tuple(part.strip() for part in re.split(r"[,;]", text) if part.strip())


def slug(name: str) -> str:
    """Key made of a name.

    >>> slug("Rice flour, fine (L-001)")
    'own-rice-flour-fine-l-001'
    """
    words = re.sub(r"[^a-z0-9]+", "-", name.casefold()).strip("-")
    return f"own-{words or 'ingredient'}"
