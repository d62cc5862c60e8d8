"""Which family a formula belongs to: declared, else seen from its lines and steps."""

import re

from krume.design.formula import Line
from krume.design.reader.heads import Head
from krume.design.reader.settings import limit
from krume.design.reader.steps import Steps
from krume.pantry import ingredient

_ROLLED = re.compile(r"\broll(?:ed)?\b(?! out)(?! \d)|\broulade\b|\baufroll\w*|\brolle\b|swiss roll", re.IGNORECASE)
_WHISKED_WHOLE = re.compile(r"\bwhole eggs?\b|\beggs? and (?:the )?sugar\b|génoise|genoise|wasserbad|over (?:warm|hot|simmering) water", re.IGNORECASE)
_SEPARATED = re.compile(r"\bseparat|\bgetrennt|\bwhites?\b|\beischnee\b|\beiwei", re.IGNORECASE)
_TART = re.compile(r"\btart\b|\bshell\b|\bmürbeteig|\brub (?:the )?butter|\bpastry\b|\bshortcrust\b|\bblind\b", re.IGNORECASE)
_RISING = ("nut", "flour", "starch")


def family_of(
    head: Head, lines: list[Line], roles: list[str | None], steps: Steps
) -> tuple[str | None, str]:
    """Family and how it is known: declared, inferred, or unknown."""
    if head.family is not None:
        return head.family, "declared"
    masses: dict[str, float] = {}
    for line, role in zip(lines, roles, strict=True):
        if role is not None and line.mass_g is not None:
            masses[role] = masses.get(role, 0.0) + line.mass_g
    text = "\n".join((head.name or "", *(line.note or "" for line in lines), *steps.texts))
    found = _batter(masses, lines, roles, text, head) or _cream(masses, roles, lines)
    return found, "inferred" if found else "unknown"


def _parts(lines: list[Line], part: str | None) -> bool:
    return any(x.part == part and (x.ingredient or "").startswith("egg") for x in lines)


def _batter(
    masses: dict[str, float], lines: list[Line], roles: list[str | None], text: str, head: Head
) -> str | None:
    flour = masses.get("flour", 0.0) + masses.get("starch", 0.0)
    nut = masses.get("nut", 0.0)
    has_eggs = "egg" in roles
    if flour + nut <= 0 or "gel" in roles or not (has_eggs or masses.get("fat")):
        return None
    liquid = sum(masses.get(role, 0.0) for role in ("liquid", "water", "dairy"))
    if flour < liquid / 4:
        return None
    if head.tins and head.tins[0].shape == "ring" and _TART.search(text):
        return "tart"
    if has_eggs and _parts(lines, "white") and not _parts(lines, "yolk") and not _parts(lines, None):
        return "angel" if masses.get("fat", 0.0) == 0 and nut < flour else _by_fat(masses, flour, nut, lines, roles, text)
    if _is_roll(text, head) and has_eggs:
        return "roulade"
    if nut / (flour + nut) * 100 >= limit("nut-sponge-from") and has_eggs and masses.get("fat", 0.0) < 0.3 * (flour + nut):
        return "nut"
    return _by_fat(masses, flour, nut, lines, roles, text)


def _is_roll(text: str, head: Head) -> bool:
    flat = bool(head.tins) and head.tins[0].shape in ("sheet", "tray")
    return bool(_ROLLED.search(text)) and (flat or "roulade" in text.casefold() or "swiss roll" in text.casefold() or "roll " in (head.makes or "") + " ")


def _by_fat(
    masses: dict[str, float], flour: float, nut: float, lines: list[Line], roles: list[str | None], text: str
) -> str | None:
    fat, egg = masses.get("fat", 0.0), masses.get("egg", 0.0)
    oil = sum(x.mass_g or 0.0 for x in lines if (x.ingredient or "").startswith("oil"))
    liquid = sum(masses.get(role, 0.0) for role in ("liquid", "water", "dairy", "acid"))
    whole = flour + nut
    if _TART.search(text) and fat > 0.35 * whole and egg < 0.5 * whole:
        return "tart"
    has_foam = _parts(lines, "white") or _SEPARATED.search(text)
    if oil >= 0.3 * whole and liquid >= 0.3 * whole and has_foam:
        return "chiffon"
    if fat >= 0.45 * whole:
        return "butter" if egg or "egg" in roles else "tart"
    if not (egg or "egg" in roles):
        return None
    if has_foam:
        return "separated"
    return "genoise" if _WHISKED_WHOLE.search(text) or (egg and egg > 1.2 * whole) else "butter" if fat >= 0.3 * whole else None


def _cream(masses: dict[str, float], roles: list[str | None], lines: list[Line]) -> str | None:
    water = masses.get("water", 0.0) + masses.get("liquid", 0.0) + masses.get("acid", 0.0)
    dairy = masses.get("dairy", 0.0)
    if masses.get("chocolate", 0.0) > 0 and dairy > 0 and "egg" not in roles and "gel" not in roles:
        return "ganache"
    if "gel" in roles:
        return "jelly" if dairy == 0 and "egg" not in roles else "cream"
    if dairy > 0 or ("egg" in roles and masses.get("fat", 0.0) > 0 and masses.get("flour", 0.0) == 0):
        return "cream"
    if masses.get("sugar", 0.0) > 0 and water > 0 and not (set(roles) & {"flour", "starch", "nut", "egg", "fat"}):
        return "syrup"
    return None


def role_of(line: Line) -> str | None:
    """Role of a line's ingredient; None where it has no row."""
    return ingredient(line.ingredient).role if line.ingredient else None
