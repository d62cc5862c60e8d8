"""A formula's text with another blend in it: the blend's lines changed, all others as they were."""

import re
from collections.abc import Sequence

from krume.base import Notice, as_text
from krume.design import Formula, Line, balance, band, read
from krume.pantry import find
from krume.usecases.blend.flours import Flour
from krume.usecases.blend.match import Match
from krume.usecases.blend.result import BlendFinding, BlendLine, BlendSmall
from krume.usecases.blend.setting import SLACK

_LINES = re.compile(r"(?<=\n)|(?<=\r)(?!\n)")
_MEASURED = re.compile(r"\bmeasured\b", re.IGNORECASE)
_JUDGED = (("starch", "starch"), ("sweet_rice", "sweet rice"))
_DIGITS = 6


def child_text(match: Match, parts: Sequence[BlendLine], flours: dict[str, Flour]) -> str:
    """The formula with the new grams: lines kept in place, new flours below them."""
    text = match.read.source.text
    lines = _LINES.split(text) if text else []
    end = "\r\n" if "\r\n" in text else "\n"
    changed, left = _changes(match, parts)
    last = max(line.number for part in match.parts for line in part.lines)
    out: list[str] = []
    for number, line in enumerate(lines, start=1):
        kept = _named(line, number, match, parts) if number not in changed else changed[number]
        if kept is not None:
            out.append(kept if kept is line or kept.endswith(("\n", "\r")) else kept + end)
        if number == last:
            out += [f"{_amount(part, flours)}{end}" for part in left]
    return "".join(out)


def _changes(
    match: Match, parts: Sequence[BlendLine]
) -> tuple[dict[int, str | None], list[BlendLine]]:
    """Lines of the formula's own flours: other grams, or out; and the flours that are new."""
    new = {part.ingredient: part for part in parts}
    changed: dict[int, str | None] = {}
    for old in match.parts:
        first, *rest = old.lines
        changed |= dict.fromkeys((line.number for line in rest), None)
        part = new.pop(old.flour.key, None)
        if part is None:
            changed[first.number] = None
        elif abs(part.mass_g - old.mass_g) > SLACK or rest:
            changed[first.number] = _line(first, part.mass_g)
    return changed, list(new.values())


def _line(line: Line, mass_g: float) -> str:
    note = f", {line.note}" if line.note else ""
    return f"{as_text(mass_g, _DIGITS)} g {line.name}{note}"


def _amount(part: BlendLine, flours: dict[str, Flour]) -> str:
    return f"{as_text(part.mass_g, _DIGITS)} g {name_that_reads_back(flours[part.ingredient])}"


def name_that_reads_back(flour: Flour) -> str:
    """Words for a flour that mean its own row of the pantry, the person's own first."""
    said = (flour.name, flour.row.label_name, flour.row.name)
    return next((words for words in said if find(words).key == flour.key), flour.name)


def _named(line: str, number: int, match: Match, parts: Sequence[BlendLine]) -> str:
    """The first line says that it is another blend; a measured bake is only a plan for it."""
    kinds = {each.number: each.kind for each in match.read.formula.source_lines}
    bare = line.rstrip("\r\n")
    if kinds.get(number) == "name" and bare.strip():
        return bare.rstrip() + what_changed(match, parts) + line[len(bare) :]
    if kinds.get(number) == "key" and bare.lstrip().casefold().startswith("baked"):
        return _MEASURED.sub("plan", line)
    return line


def what_changed(match: Match, parts: Sequence[BlendLine]) -> str:
    """How the blend differs, to stand behind the formula's name."""
    used = {part.ingredient for part in parts}
    gone = [part.flour.name for part in match.parts if part.flour.key not in used]
    *first, last = gone or ("",)
    named = f"{', '.join(first)} and {last}" if first else last
    return f", without {named}" if gone else ", another blend"


def bare_text(parts: Sequence[BlendLine], flours: dict[str, Flour]) -> str:
    """A blend that is for no formula yet, as a text of its own."""
    names = ", ".join(part.name for part in parts)
    lines = [_amount(part, flours) for part in parts]
    return "\n".join([f"Blend of {names}", "", *lines, ""])


def read_child(text: str, eggs_region: str | None) -> Formula:
    """The new text, read like any other."""
    return read(text, eggs_region=eggs_region).value


_COUNTS = ("two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_COUNTED = re.compile(rf"\b({'|'.join(_COUNTS)}|\d+) flours\b", re.IGNORECASE)


def count_notices(child: Formula, parts: Sequence[BlendLine]) -> tuple[Notice, ...]:
    """A step that counts the flours, where there are now more or fewer."""
    said = [(n, m) for n, s in enumerate(child.steps, 1) if (m := _COUNTED.search(s))]
    return tuple(
        Notice("step-counts-flours", f"step {n} says “{m[0]}”; now it is {len(parts)}.")
        for n, m in said
        if _count(m[1]) != len(parts)
    )


def _count(word: str) -> int:
    return int(word) if word.isdigit() else 2 + _COUNTS.index(word.casefold())


def step_notices(match: Match, parts: Sequence[BlendLine], child: Formula) -> tuple[Notice, ...]:
    """Steps that still speak of a flour that is gone."""
    used = {part.ingredient for part in parts}
    gone = [part.flour.name for part in match.parts if part.flour.key not in used]
    notices = []
    for name in gone:
        word = name.split()[0].casefold()
        steps = [n for n, s in enumerate(child.steps, 1) if word in s.casefold().split()]
        if steps:
            where = " and ".join(f"step {n}" for n in steps)
            text = f"{where} still speaks of {name}: read the steps once."
            notices.append(Notice("step-names-gone-flour", text))
    return tuple(notices)


def small_of(child: Formula) -> BlendSmall | None:
    """What one egg takes of the blend; None where the formula has no eggs that are known."""
    per_egg = balance(child).per_egg
    if per_egg is None or not isinstance(per_egg.flour_g, float | int) or not per_egg.flour_g:
        return None
    grams = as_text(per_egg.flour_g, 1)
    text = f"bake one small one first: one egg of {as_text(per_egg.egg_g, 1)} g takes {grams} g"
    return BlendSmall(per_egg.egg_g, per_egg.flour_g, f"{text} of it.")


def findings_of(child: Formula) -> tuple[BlendFinding, ...]:
    """Shares of the blend outside the usual range of the family, each with the limit to type."""
    figures = balance(child)
    if figures.family is None:
        return ()
    found = []
    for each in figures.findings:
        word = dict(_JUDGED).get(each.quantity)
        usual = None if word is None else band(figures.family, each.quantity)
        if word is None or usual is None or not isinstance(each.value, float | int):
            continue
        limit = f"{word} {as_text(usual.low)}..{as_text(usual.high)}"
        text = f"{usual.label} is {as_text(each.value, 1)} % of the blend; usual is "
        text += f"{as_text(usual.low)} to {as_text(usual.high)} for {figures.family_label}."
        found.append(
            BlendFinding(each.code, each.value, usual.low, usual.high, each.status, text, limit)
        )
    return tuple(found)
