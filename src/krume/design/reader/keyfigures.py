"""Figures of key lines that can be none: below nothing, no number, or far from what can be."""

import re
from functools import lru_cache

from krume.base import Interval, Read, as_text, unit_named
from krume.design.formula import BakedLine
from krume.design.reader.asking import Asking, left_out
from krume.design.reader.keylines import CORE, baked_of, core_of, minutes_said
from krume.design.reader.ovenclauses import clause_before
from krume.design.reader.settings import limit

_NUMBER = r"\d+(?:[.,]\d+)?"
_NO_NUMBER = re.compile(r"\b(?:nan|inf(?:inity)?)\b", re.IGNORECASE)
_MINUS = re.compile(r"(?:^\s*[-−–]\s?|(?<=[\s,;(])[-−–])(?=[\d.,])")
_NOTHING = re.compile(r"(?<![\d.,])0+(?:[.,]0+)?(?![\d.,])\s*(?:mm|cm|in|inch|g|kg|oz|lb)\b")
_UNKNOWN = re.compile(
    r"^\W*(?:(?:is\s+)?(?:unknown|not\s+(?:known|measured)|unbekannt)\W*)?$", re.I
)
_FIGURE = re.compile(
    rf"(?P<low>{_NUMBER})(?:\s*(?:-|–|to|bis)\s*(?P<high>{_NUMBER}))?\s*(?P<behind>[^\s(,;]*)"
)
_PER = re.compile(
    rf"\s*(?P<mass>g|gr|grams?|kg)\s*(?:/|per|pro|in|auf|je)\s*(?P<of>{_NUMBER})?\s*"
    r"(?P<volume>ml|cm3?|ccm|cc|cl|dl|dm3?|l|lit(?:er|re)s?|m3?)(?!\w)",
    re.IGNORECASE,
)
# A raised 3 is cleaned away before a line is read: g/cm can only be g/cm³.
_CUBES_ML = {
    "cm3": 1.0, "cm": 1.0, "ccm": 1.0, "cc": 1.0, "dm3": 1e3, "dm": 1e3, "m3": 1e6, "m": 1e6,
}  # fmt: skip
_THOUSAND = 1000.0
_COOLS = re.compile(
    r"\b(?:cool\w*|cold|chill\w*|freez\w*|frozen|fridge|falls?|drops?|down|(?:ab|aus|ge)*kühl\w*)\b",
    re.IGNORECASE,
)
_ENDS = re.compile(r"\s*(?:[.,;:)]|$)")


@lru_cache(maxsize=4096)
def density_said(source: str, value: str) -> Read[float | None]:
    """Density of a `Density:` line [g/ml]; one that no batter has is asked about.

    >>> density_said("Density: 480 g/l", "480 g/l").value
    0.48
    >>> [p.code for p in density_said("Density: 480 g/ml", "480 g/ml").problems]
    ['density-unclear']
    """
    if _UNKNOWN.match(value):
        return Read(None)
    asking, figure = Asking(source), _FIGURE.search(value)
    if figure is None or _NO_NUMBER.search(value):
        _ask_density(value, (), asking)
        return Read(None, tuple(asking.problems))
    low, high = (_float(figure[end] or figure["low"]) for end in ("low", "high"))
    factor = _g_ml(value, figure)
    found = (low + high) / 2 * (factor or 1.0)
    if factor is None or _has_minus(value) or not _is_density(found):
        _ask_density(value, (found, found / _THOUSAND), asking)
        return Read(None, tuple(asking.problems))
    found = round(found, 6)
    if high != low:
        text = f"two figures of a density: their middle is taken, {as_text(found, 3)} g/ml"
        asking.note("density-middle", text)
    return Read(found, (), tuple(asking.notices))


def _float(text: str) -> float:
    return float(text.replace(",", "."))


def _is_density(g_ml: float) -> bool:
    return limit("density-least") <= g_ml <= limit("density-most")


def _g_ml(value: str, figure: re.Match[str]) -> float | None:
    """What one of the unit behind a figure is in g/ml; a bare figure is in g/ml."""
    unit = _PER.match(value, figure.end("high") if figure["high"] else figure.end("low"))
    if unit is not None:
        mass_g = _THOUSAND if unit["mass"].casefold() == "kg" else 1.0
        word = unit["volume"].casefold()
        named = unit_named(word)
        volume_ml = _CUBES_ML.get(word) or (named.size if named else None)
        of = _float(unit["of"] or "1")
        return None if not volume_ml or not of else mass_g / volume_ml / of
    behind = figure["behind"]
    is_unit = behind.startswith(("/", "%")) or "/" in behind or unit_named(behind) is not None
    return None if behind and is_unit else 1.0


def _ask_density(value: str, found: tuple[float, ...], asking: Asking) -> None:
    least, most = as_text(limit("density-least"), 1), as_text(limit("density-most"), 1)
    likely = [f"{as_text(each, 3)} g/ml" for each in found if _is_density(each)]
    asking.ask(
        "density-unclear",
        f"'{value}' is no density of a batter: it lies between {least} and {most} g/ml. Type the "
        "grams of 1 ml, such as 0.48 g/ml: weigh a level cup of batter.",
        *((text, _with(asking.source, value, text)) for text in likely),
        ("not known: leave it out", left_out(asking.source)),
    )


def _with(source: str, value: str, text: str) -> str:
    at = source.rfind(value)
    tail = value[value.find("(") :] if "(" in value else ""
    head = source[:at] if at >= 0 else "Density: "
    return f"{head}{text} {tail}".rstrip()


def _has_minus(value: str) -> bool:
    """Whether a figure stands below nothing; a dash between two figures is none."""
    return any(
        not value[: match.start()].rstrip()[-1:].isdigit() for match in _MINUS.finditer(value)
    )


def _is_no_figure(value: str) -> bool:
    return _has_minus(value) or _NO_NUMBER.search(value) is not None


@lru_cache(maxsize=4096)
def baked_said(source: str, value: str) -> Read[BakedLine]:
    """The plan of a `Baked:` line; a height or a mass that no cake has is asked about.

    >>> [p.code for p in baked_said("Baked: -50 mm high", "-50 mm high").problems]
    ['baked-unclear']
    """
    found = baked_of(source, value)
    too_high = max(found.height_mm or 0.0, found.thickness_mm or 0.0) > limit("baked-highest")
    if not (_is_no_figure(value) or _NOTHING.search(value) or too_high):
        return Read(found)
    asking = Asking(source)
    asking.ask(
        "baked-unclear",
        f"'{value}' can be no baked cake. Type its height and what it weighs cold, such as: "
        "50 mm high, 480 g.",
        ("not known: leave it out", left_out(source)),
    )
    return Read(BakedLine(source), tuple(asking.problems))


@lru_cache(maxsize=4096)
def core_said(source: str, value: str) -> Read[float | None]:
    """Core of a `Core:` line [degC]; one that no cake reaches is asked about.

    >>> core_said("Core: 200 F", "200 F").value, core_said("Core: -95 C", "-95 C").value
    (93.3, None)
    """
    found = None if _is_no_figure(value) else core_of(f"core {value}")
    if _UNKNOWN.match(value) or _is_core(found):
        return Read(found)
    asking = Asking(source)
    _ask_core(value, asking, ("not known: leave it out", left_out(source)))
    return Read(None, tuple(asking.problems))


def _is_core(core_c: float | None) -> bool:
    return core_c is not None and limit("core-coldest") <= core_c <= limit("core-hottest")


def _ask_core(read: str, asking: Asking, option: tuple[str, str]) -> None:
    least, most = as_text(limit("core-coldest")), as_text(limit("core-hottest"))
    asking.ask(
        "core-unclear",
        f"'{read}' is no core of a cake: it lies between {least} and {most} °C. Type it with its "
        "unit, such as 95 C or 203 F.",
        option,
    )


def step_core(source: str, asking: Asking) -> float | None:
    """Core a step bakes to [degC]; one that no cake is done at is asked about.

    Of a cake that cools, and of apples whose cores are counted, nothing is said.

    >>> step_core("Bake to a core of 95 C.", Asking("")), step_core("Cool to a core of 30 C.",
    ...     Asking(""))
    (95.0, None)
    """
    said = (
        m for m in CORE.finditer(source) if not _COOLS.search(clause_before(source, m.start(1)))
    )
    match = next(said, None)
    if match is None:
        return None
    found = None if _has_minus(match[0]) else core_of(match[0])
    if _is_core(found):
        return found
    if match[2] or "°" in match[0] or _ENDS.match(source, match.end()):
        cooled = asking.edit(match.start(), match.start(), "cooled ")
        _ask_core(match[0].strip(), asking, ("it is of the cooling", cooled))
    return None


@lru_cache(maxsize=4096)
def minutes_read(source: str, value: str) -> Read[Interval | None]:
    """Minutes of a `Baking time:` line; below nothing is asked about.

    >>> [p.code for p in minutes_read("Baking time: -30 min", "-30 min").problems]
    ['minutes-unclear']
    """
    if not _is_no_figure(value):
        return Read(minutes_said(value))
    asking = Asking(source)
    asking.ask(
        "minutes-unclear",
        f"'{value}' is no time in the oven. Type its minutes, such as 34 to 40 min.",
        ("not known: leave it out", left_out(source)),
    )
    return Read(None, tuple(asking.problems))
