"""The text of a child: the parent's own words, with the changed lines, steps and head in place."""

import re
from collections.abc import Sequence

from krume.base import as_text
from krume.design.formula import Formula, Line
from krume.design.varying.lineage import Lineage
from krume.design.varying.matching import role_of
from krume.design.varying.variation import VariedLine
from krume.design.varying.without import step_without

_NUMBER_DIGITS = 2
_BAKE = re.compile(r"^\s*(?:bake|backen)\b", re.IGNORECASE)
_BAKED_G = re.compile(r"\b\d+(?:[.,]\d+)?\s*k?g\b")
_MEASURED = re.compile(r"\b(?:measured|gemessen)\b", re.IGNORECASE)
HEAD_KEYS = frozenset(
    ("parent", "parent lines", "parent was", "own lines", "swap", "less", "with added",
     "made up with", "own blend", "sized")
)  # fmt: skip
_LATE = {
    "fat": "Stir a spoon of batter into the {name}, then fold it in last.",
    "water": "Stir in the {name} with the other liquids.",
}


def child_text(
    parent: Formula, lines: Sequence[VariedLine], *, name: str | None, lineage: Lineage
) -> str:
    r"""The text of a variation; what the parent's text says otherwise is kept word for word.

    >>> from krume.design.reader import read
    >>> sponge = read("Sponge\n\n40 g walnuts\n9 g sugar\n\nGrind the walnuts.\n").value
    >>> new = read("x\n\n40 g pecans\n").value.lines[0]
    >>> lines = (VariedLine(sponge.lines[0], new), VariedLine(sponge.lines[1], sponge.lines[1]))
    >>> print(child_text(sponge, lines, name="Kid", lineage=Lineage("Sponge")), end="")
    Kid
    Parent: Sponge
    <BLANKLINE>
    40 g pecans
    9 g sugar
    <BLANKLINE>
    Grind the pecans.
    """
    texts = {line.number: line.text for line in parent.source_lines}
    named = next((x.number for x in parent.source_lines if x.kind == "name"), 0)
    _set_lines(texts, parent, lines)
    _set_steps(texts, parent, lines)
    _set_baked(texts, parent, lines)
    _drop_head(texts, parent)
    if named and name is not None:
        texts[named] = name
    head = lineage.key_lines()
    texts[named] = "\n".join(([texts[named]] if named else [name or "Variation"]) + list(head))
    return "\n".join(texts[number] for number in sorted(texts)).rstrip("\n") + "\n"


def _drop_head(texts: dict[int, str], parent: Formula) -> None:
    """Take out what an older head says of a parent of its own."""
    for line in parent.source_lines:
        if (
            line.kind in ("key", "note")
            and line.text.partition(":")[0].strip().casefold() in HEAD_KEYS
        ):
            texts.pop(line.number, None)


def _set_lines(texts: dict[int, str], parent: Formula, lines: Sequence[VariedLine]) -> None:
    last = max((line.number for line in parent.lines), default=0)
    for each in lines:
        after = None if each.line is None else line_text(each.line)
        place = each.before.number if each.before is not None else 0
        if each.before is None:
            place = each.line.number if each.line is not None and each.line.number else last
            texts[place] = f"{texts[place]}\n{after}" if place in texts else after or ""
        elif after is None:
            texts.pop(place, None)
        elif each.is_changed:
            texts[place] = after


def _set_baked(texts: dict[int, str], parent: Formula, lines: Sequence[VariedLine]) -> None:
    """The plan of the bake with as much loss as the parent's; a shell's mass is its tin's."""
    baked = parent.baked
    before = sum(each.before_g or 0.0 for each in lines)
    after = sum(each.after_g or 0.0 for each in lines)
    if baked is None or baked.mass_g is None or baked.thickness_mm is not None or before == after:
        return
    for line in parent.source_lines:
        if line.text == baked.read and line.number in texts and before > 0:
            mass = f"{as_text(baked.mass_g * after / before, 0)} g"
            told = _BAKED_G.sub(mass, line.text, count=1)
            texts[line.number] = _MEASURED.sub("plan", told)


def line_text(line: Line) -> str:
    """A line as it is typed; one that was read keeps its own words."""
    return line.read.strip()


def _set_steps(texts: dict[int, str], parent: Formula, lines: Sequence[VariedLine]) -> None:
    steps = [line.number for line in parent.source_lines if line.kind == "step"]
    for each in lines:
        if each.before is None or not each.is_changed:
            continue
        at = parent.lines.index(each.before)
        _set_amounts(texts, steps, parent, at, each)
        if each.line is None:
            _leave_out(texts, steps, parent, lines, each.before)
        elif each.line.ingredient != each.before.ingredient:
            _set_name(texts, steps, parent, each)
    for each in lines:
        if each.before is None and each.line is not None and not _is_named(texts, steps, each.line):
            _add_step(texts, steps, each.line)


def _set_amounts(
    texts: dict[int, str], steps: list[int], parent: Formula, at: int, each: VariedLine
) -> None:
    """Amounts that the steps name of a line, in the same shares of its new mass."""
    uses = [use for use in parent.uses if use.line == at and use.mass_g is not None]
    before, after = each.before_g, each.after_g
    if not before or after is None or before == after:
        return
    left = after
    for use in uses:
        told = use.mass_g or 0.0
        is_last = use is uses[-1] and abs(sum(u.mass_g or 0.0 for u in uses) - before) < 0.01
        new = left if is_last else round(told * after / before, 1)
        left = round(left - new, _NUMBER_DIGITS)
        old = re.compile(rf"\b{re.escape(as_text(told, 4))}(?=\s*g\b)")
        for number in steps:
            if use.words in texts.get(number, ""):
                changed = old.sub(as_text(new, _NUMBER_DIGITS), use.words)
                texts[number] = texts[number].replace(use.words, changed, 1)
                break


def _set_name(texts: dict[int, str], steps: list[int], parent: Formula, each: VariedLine) -> None:
    """The new thing's name where the steps name the old one and nothing else by that word."""
    if each.before is None:
        return
    others = {w for x in parent.lines if x is not each.before for w in _words(x.name)}
    own = [word for word in _words(each.before.name) if word not in others]
    if not own or each.line is None:
        return
    pattern = "|".join(re.escape(word) for word in own)
    whole = re.compile(rf"\b(?:(?:{pattern})(?:e?s)?\s+)*(?:{pattern})(?:e?s)?\b", re.IGNORECASE)
    new = each.line.name.removeprefix("ground ")
    for number in steps:
        if number in texts:
            texts[number] = whole.sub(lambda m: _cased(new, m[0]), texts[number])


def _leave_out(
    texts: dict[int, str],
    steps: list[int],
    parent: Formula,
    lines: Sequence[VariedLine],
    gone: Line,
) -> None:
    """No step goes on using what is no longer in the formula, under a claim that it is not."""
    still = [each.line for each in lines if each.line is not None]
    others = {w for x in (*parent.lines, *still) if x is not gone for w in _words(x.name)}
    own = [word for word in _words(gone.name) if word not in others]
    for number in steps:
        if own and number in texts:
            texts[number] = step_without(texts[number], own, sorted(others))
            if not texts[number]:
                texts.pop(number)


def _cased(new: str, old: str) -> str:
    return new[:1].upper() + new[1:] if old[:1].isupper() else new


def _words(name: str) -> list[str]:
    words = re.findall(r"[^\W\d_]{3,}", name.casefold())
    kept = [word for word in words if word not in ("ground", "fine", "cold", "soft", "toasted")]
    return [word[:-1] if word.endswith("s") and len(word) > 4 else word for word in kept]


def _is_named(texts: dict[int, str], steps: list[int], line: Line) -> bool:
    last = line.name.casefold().split()[-1]
    return any(last in texts.get(number, "").casefold() for number in steps)


def _add_step(texts: dict[int, str], steps: list[int], line: Line) -> None:
    """One step for a line that is new and that no step names, before the bake."""
    words = _LATE.get(role_of(line), "Add the {name}.").format(name=line.name)
    place = next((n for n in steps if _BAKE.match(texts.get(n, ""))), None)
    if place is not None:
        texts[place] = f"{words}\n{texts[place]}"
    elif steps:
        texts[steps[-1]] = f"{texts.get(steps[-1], '')}\n{words}".strip("\n")
