"""Amounts the steps take of a line, held against the line."""

import re
from collections.abc import Iterator

from krume.base import Interval, Notice, Problem, as_text
from krume.design.formula import Formula, Line
from krume.design.reader.asking import Asking, grams
from krume.design.reader.classifying import Kind
from krume.design.reader.mentions import Mention
from krume.design.reader.placing import placed
from krume.design.reader.settings import limit
from krume.design.reader.steps import Steps, line_words


def splits(formula: Formula, steps: Steps) -> Iterator[Problem | Notice]:
    """Amounts the steps take of one line must add up to it."""
    taken: dict[int, list[tuple[Kind, Mention, float]]] = {}
    for kind, mention, at, mass in steps.taken:
        if at is not None and mass is not None:
            taken.setdefault(at, []).append((kind, mention, mass))
        elif at is None and mention.words and mention.unit.kind == "mass":
            yield from _step_only(kind, mention)
    for at, parts in taken.items():
        yield from _split(formula, at, parts)


def _step_only(kind: Kind, mention: Mention) -> Iterator[Notice]:
    from krume.pantry import find

    words = " ".join(mention.words)
    if find(words).kind == "known":
        amount = f"{as_text(_best(mention.value))} {mention.unit.name} {words}"
        text = f"the step takes {amount}; no line has it"
        yield Notice("step-ingredient", text, f"line {kind.number}")


def _best(value: float | Interval) -> float:
    return value.best if isinstance(value, Interval) else value


def _split(
    formula: Formula, at: int, parts: list[tuple[Kind, Mention, float]]
) -> Iterator[Problem | Notice]:
    line = formula.lines[at]
    if line.mass_g is None:
        return
    same = [
        x
        for x in formula.lines
        if x.ingredient == line.ingredient and x.name == line.name and x.mass_g is not None
    ]
    whole = sum(x.mass_g or 0.0 for x in same)
    total = sum(mass for _, _, mass in parts)
    slack = max(limit("split-agrees") / 100 * line.mass_g, 0.05)
    if abs(total - line.mass_g) <= slack or abs(total - whole) <= slack:
        return
    is_vague = _is_named_bare(formula, at)
    says_rest = any(mention.is_remaining for _, mention, _ in parts)
    if len(same) > 1 and total < whole:
        return
    if total > line.mass_g + slack or says_rest or (not is_vague and len(parts) > 1):
        yield _ask_split(line, parts, total)
    elif not is_vague and _is_lone(formula, at, parts):
        yield _rest_unsaid(line, parts[0][0], total)


def _rest_unsaid(line: Line, kind: Kind, taken_g: float) -> Notice:
    rest = grams((line.mass_g or 0.0) - taken_g)
    text = (
        f"The step takes {grams(taken_g)} of the {grams(line.mass_g or 0.0)} {line.name} in line "
        f"{line.number}; where the other {rest} go is not written."
    )
    return Notice("split-rest-unsaid", text, f"line {kind.number}")


def _is_named_bare(formula: Formula, at: int) -> bool:
    """Whether a step takes of a line without saying how much: the rest, half, or just its name."""
    if any(use.line == at and use.mass_g is None for use in formula.uses):
        return True
    words = line_words(formula.lines[at])
    if not words:
        return False
    share = re.compile(
        rf"\b(?:rest|remainder|remaining|half|third|quarter|übrige\w*|restliche\w*|hälfte)\s+(?:of\s+)?(?:the\s+|des\s+|der\s+)?(?:\w+\s+)?{re.escape(words[-1])}",
        re.IGNORECASE,
    )
    return any(share.search(step) for step in formula.steps)


def _is_lone(formula: Formula, at: int, parts: list[tuple[Kind, Mention, float]]) -> bool:
    """One amount in one step, and the ingredient is named nowhere else, nor with all others."""
    is_alone = len(parts) == 1 and sum(use.line == at for use in formula.uses) == 1
    return is_alone and not any(_ALL_ELSE.search(step) for step in formula.steps)


_ALL_ELSE = re.compile(
    r"\b(?:rest|remaining|remainder|everything|ingredients?|dry|wet|mix(?:ture)?|all (?:the|else)|"
    r"zutaten|übrige\w*|restliche\w*|alles|mischung|trockene\w*)\b",
    re.IGNORECASE,
)


def _number_end(source: str, start: int) -> int:
    """Where a numeral ends that begins at a place of a line."""
    match = _NUMERAL.match(source, start)
    return start + len(match[0].rstrip()) if match is not None else start


_NUMERAL = re.compile(r"[\d.,/ ½¼¾⅓⅔]*")


def _ask_split(line: Line, parts: list[tuple[Kind, Mention, float]], total: float) -> Problem:
    kind, last, mass = parts[-1]
    mass_g = line.mass_g or 0.0
    said = " + ".join(grams(m) for _, _, m in parts)
    asking = Asking(kind.source)
    needed = mass_g - (total - mass)
    number_end = _number_end(kind.source, last.start)
    if needed > 0 and last.unit.kind == "mass":
        value = as_text(needed / (last.unit.size or 1.0), 2)
        options = [(f"{value} {last.unit.name} here", asking.edit(last.start, number_end, value))]
    else:
        options = []
    options.append(
        (
            f"here the rest of the {line.name}",
            asking.edit(last.start, last.end, f"the rest of the {line.name}"),
        )
    )
    others = [(k, m, g) for k, m, g in parts[:-1] if k is kind]
    if others and mass_g - (total - others[-1][2]) > 0:
        _, other, other_g = others[-1]
        value = as_text(mass_g - (total - other_g), 2)
        end = _number_end(kind.source, other.start)
        options.append((f"{value} g in the other place", asking.edit(other.start, end, value)))
    asking.ask(
        "split-sum",
        f"The steps take {said} = {grams(total)} {line.name}; line {line.number} has "
        f"{grams(mass_g)}: "
        f"{as_text(total, 1)} ≠ {as_text(mass_g, 1)}. Which is right? (Or type {grams(total)} "
        f"in line {line.number}.)",
        *options,
    )
    return placed(asking.problems[0], kind)
