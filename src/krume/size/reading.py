"""Reading a tin: `[material] shape size unit`, and the ways people write it besides."""

import re
from collections.abc import Callable
from dataclasses import replace

from krume.base import INCH_CM, Read, as_text
from krume.size.asking import Asking
from krume.size.limits import value
from krume.size.measures import Measures, Number, has_water, measures, plain
from krume.size.shape_naming import has_formula, is_one_size, shape_by_sides, unused_words
from krume.size.shaping import build_tin
from krume.size.sizes import sizes
from krume.size.tin import Tin
from krume.size.words import (
    FLUTED,
    MATERIAL_WORDS,
    SHAPE_WORDS,
)
from krume.size.writing import tin_text

_LONGEST_TEXT = 400
_PRIORITY = ("ring-mould", "tube", "tray", "springform", "loaf", "square", "ring", "sheet", "round")
_GREASED = {"ungreased": False, "ungefettet": False, "greased": True, "gefettet": True}
_NO_NUMBER = frozenset({"nan", "inf", "infinity", "minus"})
_BRACKET = re.compile(r"\(([^()]*\d[^()]*)\)")
_SIZE = r"(\d[\d.,]*(?:\s*x\s*\d[\d.,]*)*)"
_METRIC = rf"{_SIZE}[ -]?(cm|mm)"
_INCHES = rf"{_SIZE}[ -]?(inches|inch|in|zoll|\")"
_METRIC_FIRST = re.compile(rf"{_METRIC}\s*/\s*{_INCHES}")
_INCH_FIRST = re.compile(rf"{_INCHES}\s*/\s*{_METRIC}")


def read_tin(text: str, *, where: str = "tin", prefix: str = "") -> Read[Tin | None]:
    """Read one tin; never raises on text. The value is None while a question is open.

    `where` and `prefix` say where the text stands (`line 2`, `Tin: `), so that every option is a
    line to type there.

    >>> read_tin("glass loaf 21.5x11.5x7 cm").value.material
    'glass'
    >>> [o.line for o in read_tin("8in pan").problems[0].options]
    ['round 8 in', 'square 8 in']
    """
    return _read_text(text, Asking(text, where, prefix), question_of=_question_of)


def _question_of(line: str) -> str:
    """Code of the first question a line leads to; empty when it reads as a tin."""
    found = _read_text(line, Asking(line, ""))
    return found.problems[0].code if found.problems else ""


def _read_text(
    text: str, asking: Asking, *, question_of: Callable[[str], str] | None = None
) -> Read[Tin | None]:
    if len(text) > _LONGEST_TEXT or not text.strip():
        return _no_tin(asking)
    outer, inner = _two_unit_systems(text)
    if inner is None:
        return asking.answer(_read(text, asking), question_of=question_of)
    return _read_both(outer, inner, asking, question_of)


def _no_tin(asking: Asking) -> Read[Tin | None]:
    long = len(asking.text) > _LONGEST_TEXT
    asking.ask(
        "tin-not-read",
        f"A tin is one short line, at most {_LONGEST_TEXT} signs. Type shape and inside size."
        if long
        else "No tin is typed here. Type shape and inside size, for example 'round 20 x 5 cm'.",
        "round 20 x 5 cm",
        "sheet 13 x 9 x 1 in",
    )
    return asking.answer(None)


def _read(text: str, asking: Asking) -> Tin | None:
    found = measures(text)
    if any(word in _NO_NUMBER for word in found.words):
        found.unreadable.append(next(word for word in found.words if word in _NO_NUMBER))
    shape = _shape(found)
    if shape == "tray":
        shape = _take_cups(found)
    elif "cups" in found.labelled:
        found.capacity += found.labelled.pop("cups")
    asking.lead, asking.tail = _kept(found, shape)
    lengths = sizes(found, shape, asking)
    if lengths is None or not _mass_is_water(found, shape, asking):
        return None
    if not has_formula(lengths, found, asking) or not is_one_size(lengths, found, shape, asking):
        return None
    shape = shape or shape_by_sides(lengths, found, asking)
    if shape is None:
        return None
    tin = build_tin(shape, lengths, asking, _empty(shape, found, asking))
    return None if tin is None else _noted(tin, found, asking)


def _kept(found: Measures, shape: str | None) -> tuple[str, str]:
    """What every option keeps of the text: count and material in front, greased or not behind."""
    count = "" if shape == "tray" or found.count in (None, 1) else f"{found.count} x "
    material = _material(found)
    greased = next((_GREASED[word] for word in found.words if word in _GREASED), None)
    tail = "" if greased is None else ", greased" if greased else ", not greased"
    return count + ("" if material == "aluminium" else f"{material} "), tail


def _shape(found: Measures) -> str | None:
    named = {SHAPE_WORDS[word] for word in found.words if word in SHAPE_WORDS}
    return next((shape for shape in _PRIORITY if shape in named), None)


def _take_cups(found: Measures) -> str:
    """Take the number of cups off; a tray whose cups would be wider than any cup is a sheet."""
    holes = found.labelled.get("hole", [])
    if holes and holes[0].unit is None and 60 >= holes[0].value == int(holes[0].value) > 0:
        found.labelled["cups"] = found.labelled.pop("hole")
    if "cups" in found.labelled:
        found.count = int(found.labelled["cups"][0].value)
        return "tray"
    chain = found.chains[0] if found.chains else None
    if chain is None:
        return "tray"
    first = chain.numbers[0]
    second = chain.numbers[1] if len(chain.numbers) > 1 else None
    size = INCH_CM if any(n.unit and n.unit.name == "in" for n in chain.numbers) else 1.0
    if second is not None and (second.value * size > value("cup-widest") or first.unit is not None):
        return "sheet"
    if second is None and not (first.german_er or first.unit is None):
        return "tray"
    if first.value == int(first.value) and 0 < first.value <= 60:
        found.count = int(first.value)
        chain.numbers, chain.joints = chain.numbers[1:], chain.joints[1:]
        found.chains = [c for c in found.chains if c.numbers]
    return "tray"


def _mass_is_water(found: Measures, shape: str | None, asking: Asking) -> bool:
    """`2 lb loaf tin` names what goes in, not what the tin measures."""
    masses = [n for n in found.capacity if n.unit is not None and n.unit.kind == "mass"]
    if not masses or has_water(found):
        return True
    number, name = masses[0], shape or "round"
    typed = f"{as_text(number.value)} {number.unit.name if number.unit else ''}"
    lines = [f"{name} {_grams(number)} g water"] if found.lengths() else []
    asking.ask(
        "tin-mass",
        f"'{typed}' is a mass. Say that it is water ('{typed} water'), or type the inside size.",
        *lines,
        *(_LOAVES if name == "loaf" else ("round 20 x 5 cm",)),
    )
    return False


_LOAVES = ("loaf 23 x 13 x 7 cm", "loaf 19 x 9 x 6 cm")


def _grams(number: Number) -> str:
    size = number.unit.size if number.unit is not None and number.unit.size is not None else 1.0
    return as_text(number.value * size, 1)


def _empty(shape: str, found: Measures, asking: Asking) -> Tin:
    """The tin's words: material, greased or not, how many, and the water it holds."""
    material = _material(found)
    greased = next((_GREASED[word] for word in found.words if word in _GREASED), None)
    return Tin(
        read=asking.text.strip(), shape=shape, material=material, greased=greased,
        count=found.count or 1, water_ml=_water_ml(found, asking),
    )  # fmt: skip


def _material(found: Measures) -> str:
    materials = [MATERIAL_WORDS[word] for word in found.words if word in MATERIAL_WORDS]
    if "dark" in materials:
        return "dark"
    return materials[-1] if materials else "aluminium"


def _water_ml(found: Measures, asking: Asking) -> float | None:
    if not found.capacity:
        return None
    number = found.capacity[0]
    size = number.unit.size if number.unit is not None and number.unit.size is not None else 1.0
    amount = number.value * size
    if number.unit is not None and number.unit.kind == "mass":
        amount /= value("water-density-20")
        asking.note(
            "tin-water",
            f"{as_text(number.value * size, 1)} g of water at 20 C fill {as_text(amount, 1)} ml "
            "(0.9982 g/ml).",
        )
    elif number.unit is not None and number.unit.name == "cup":
        asking.note("tin-water", f"US cups: {as_text(amount, 0)} ml.")
    return round(amount, 1)


def _noted(tin: Tin, found: Measures, asking: Asking) -> Tin:
    _note_depth(tin, asking)
    if any(word in FLUTED for word in found.words) and tin.water_ml is None:
        asking.note(
            "tin-fluted",
            "A fluted tin holds less than its outer width says: fill it with water, weigh the "
            f"water and type '{tin.shape} 2000 g water' with your number.",
        )
    unused = unused_words(found)
    if unused:
        asking.note("tin-words", "Not used: " + ", ".join(dict.fromkeys(unused[:5])) + ".")
    return tin


def _note_depth(tin: Tin, asking: Asking) -> None:
    if tin.height_cm is not None or tin.water_ml is not None or tin.shape == "ring-mould":
        return
    assumed = assumed_height_cm(tin)
    asking.note(
        "tin-depth-assumed",
        f"No depth given: {as_text(assumed, 2)} cm ({as_text(assumed / INCH_CM, 2)} in) is assumed "
        "for the fill only; the area is exact. Measure the depth before a tall cake.",
    )


def assumed_height_cm(tin: Tin) -> float:
    """Depth to reckon the fill with where none was given: an assumption, never a measure."""
    flat = tin.shape == "sheet"
    return value("depth-assumed-sheet" if flat else "depth-assumed") * INCH_CM


def _two_unit_systems(text: str) -> tuple[str, str | None]:
    """`20 cm (8 in) round`, `20cm/8in`: the text with one system, and the other system's part."""
    spelled = plain(text)
    for pattern in (_METRIC_FIRST, _INCH_FIRST):
        if match := pattern.search(spelled):
            rest = f"{spelled[: match.start()]} {match[1]} {match[2]} {spelled[match.end() :]}"
            return rest, f"{match[3]} {match[4]}"
    bracket = _BRACKET.search(spelled)
    if bracket is None:
        return text, None
    outer = spelled[: bracket.start()] + " " + spelled[bracket.end() :]
    return (outer, bracket[1]) if _is_other_system(outer, bracket[1]) else (text, None)


def _is_other_system(outer: str, inner: str) -> bool:
    systems = []
    for part in (outer, inner):
        found = measures(part)
        if found.labelled and part is inner:
            return False
        systems.append({n.unit.name == "in" for n in found.lengths() if n.unit is not None})
    return len(systems[0]) == len(systems[1]) == 1 and systems[0] != systems[1]


def _read_both(
    outer: str, inner: str, asking: Asking, question_of: Callable[[str], str] | None
) -> Read[Tin | None]:
    """Read one system and hold it against the other; never average a pair that disagrees."""
    tin = _read(outer, asking)
    words = re.sub(r"[\d.,/]+|\b(cm|mm|in|inch|inches|zoll|x)\b", " ", plain(outer))
    other = _read(f"{words} {inner}", Asking("", ""))
    if tin is None or other is None:
        return asking.answer(tin, question_of=question_of)
    if not _agree(tin, other):
        asking.ask(
            "tin-two-sizes",
            f"'{asking.shown()}' names two sizes that differ. Which tin is it?",
            tin_text(tin),
            tin_text(other, unit="in" if "cm" in plain(outer) else "cm"),
            whole=True,
        )
        return asking.answer(None, question_of=question_of)
    asking.notices = [n for n in asking.notices if n.code != "tin-words"]
    asking.note("tin-two-sizes", f"Both sizes agree; read as {tin_text(tin)}.")
    return asking.answer(replace(tin, read=asking.text.strip()))


def _agree(one: Tin, other: Tin) -> bool:
    names = ("diameter_cm", "length_cm", "width_cm", "height_cm")
    pairs = [(getattr(one, name), getattr(other, name)) for name in names]
    known = [(a, b) for a, b in pairs if a is not None and b is not None]
    return all(abs(a - b) <= value("two-sizes-agree") * max(a, b) for a, b in known)
