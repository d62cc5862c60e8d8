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
_AMOUNT = re.compile(r"^([\d.,]+)\s*(g|mg|µg|ug|kcal|kj|%)?\s*(?:/\s*100\s*g)?$", re.I)
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
_UNSAID = ("", "-", "–", "unknown", "?", "n/a", "not declared")
_TEXT_KEYS = ("name", "class", "role", "allergens", "contains", "may contain", "carbohydrate basis")
_ROLE_OF_CLASS = {"spice": "flavour", "alcohol": "spirit", "cocoa": "cocoa"}


@dataclass(frozen=True, slots=True)
class _Said:
    """A figure and the line that says it."""

    value: float
    where: str
    line: str


@dataclass(frozen=True, slots=True)
class _Sheet:
    texts: dict[str, str]
    said: dict[str, _Said]
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
    problems = (*sheet.problems, *_missing(sheet.texts), *_implausible(kind, sheet.said))
    if not sheet.texts.get("name"):
        return Read(None, problems, sheet.notices)
    mine = _ingredient(sheet, kind if kind in CLASSES else "other")
    return Read(mine, (*problems, *_unbalanced(mine, sheet.said)), sheet.notices)


def _sheet(text: str) -> _Sheet:
    texts: dict[str, str] = {}
    said: dict[str, _Said] = {}
    problems: list[Problem] = []
    notices: list[Notice] = []
    for number, line in enumerate(text.splitlines(), start=1):
        match = _LINE.match(line)
        name = " ".join(match[1].casefold().split()) if match else ""
        where = f"line {number}"
        if match is not None and name in _TEXT_KEYS:
            texts.setdefault(name, match[2])
        elif match is not None and name in _FIELDS and match[2].startswith(("<", "≤")):
            notices.append(Notice("below-limit", _below(name, match[2]), where))
        elif match is not None and name in _FIELDS:
            problems += _take(said, name, match[2], line.strip(), where)
        elif line.strip():
            notices.append(Notice("sheet-line", f"'{line.strip()}' was not used", where))
    return _Sheet(texts, said, tuple(problems), tuple(notices))


def _below(name: str, value: str) -> str:
    return f"{name} {value} is a limit and no figure: it stays unknown"


def _take(
    said: dict[str, _Said], name: str, value: str, line: str, where: str
) -> tuple[Problem, ...]:
    """Put one figure where it belongs; a figure that cannot be read is asked."""
    if value.casefold() in _UNSAID:
        return ()
    field = _FIELDS[name]
    amount = _amount(name, value)
    if amount is None:
        ask = f"'{value}' is no amount per 100 g. Type a number with its unit, or unknown."
        option = Option("unknown", f"{name.capitalize()}: unknown")
        return (Problem("figure-unread", where, line, ask, (option,)),)
    if field in said and said[field].value != amount:
        ask = f"{name} stands here a second time with another value. Which one holds?"
        options = tuple(Option(text, text) for text in (said[field].line, line))
        return (Problem("figure-twice", where, line, ask, options),)
    said[field] = _Said(amount, where, line)
    return ()


def _amount(name: str, value: str) -> float | None:
    match = _AMOUNT.match(value)
    number = read_number(match[1], comma_is_decimal=True) if match else None
    if match is None or number is None:
        return None
    field = _FIELDS[name]
    unit = (match[2] or _default_unit(name)).casefold().replace("µ", "u")
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


def _implausible(kind: str, said: dict[str, _Said]) -> tuple[Problem, ...]:
    ranges = plausible(kind)
    return tuple(
        _unusual(kind, quantity, figure, ranges[quantity])
        for quantity, figure in said.items()
        if quantity in ranges and not ranges[quantity][0] <= figure.value <= ranges[quantity][1]
    )


def _unusual(kind: str, quantity: str, said: _Said, span: tuple[float, float]) -> Problem:
    name = quantity.rsplit("_", 1)[0].replace("_", " ")
    ask = (
        f"{name} {said.value:g} per 100 g is unusual for the class {kind} "
        f"({span[0]:g} to {span[1]:g}). Is it per 100 g, and is the unit right?"
    )
    option = Option("the sheet does not say", f"{said.line.split(':')[0].strip()}: unknown")
    return Problem("figure-implausible", said.where, said.line, ask, (option,))


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


def _unbalanced(mine: Ingredient, said: dict[str, _Said]) -> tuple[Problem, ...]:
    parts = mine.composition.parts_g
    if parts is None or _BALANCE_G[0] <= parts <= _BALANCE_G[1]:
        return ()
    ask = (
        f"water, protein, fat, carbohydrate, fibre, ash and alcohol come to {parts:.1f} g per "
        "100 g. Which of them is not per 100 g, or does the carbohydrate hold the fibre?"
    )
    option = Option("the carbohydrate holds the fibre", "Carbohydrate basis: by difference")
    last = max((s.where for s in said.values()), key=lambda w: int(w.split()[-1]))
    return (Problem("parts-do-not-add-up", f"after {last}", "", ask, (option,)),)


def _ingredient(sheet: _Sheet, kind: str) -> Ingredient:
    name = sheet.texts["name"]
    basis = sheet.texts.get("carbohydrate basis", "").casefold()
    by_difference = "difference" in basis or "fibre in" in basis
    composition = Composition(
        carbohydrate_basis="by_difference" if by_difference else "available",
        energy_basis="declared",
        **{field: figure.value for field, figure in sheet.said.items()},
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
