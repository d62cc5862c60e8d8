"""Whites, yolks and eggs the steps count, held against the lines."""

import re
from collections.abc import Iterator

from krume.base import Interval, Problem, as_text
from krume.design.formula import Formula, Line
from krume.design.reader.asking import Asking
from krume.design.reader.classifying import Kind
from krume.design.reader.mentions import Count, egg_counts
from krume.design.reader.placing import placed
from krume.design.reader.steps import Steps

_MORE_EGGS = "more than the eggs give"


def egg_counts_agree(formula: Formula, steps: Steps) -> Iterator[Problem]:
    """`whisk the five whites` where the lines have four eggs, and the like."""
    has = _eggs(formula.lines)
    if not has:
        return
    named: dict[str, list[tuple[Kind, Count]]] = {}
    for group in steps.kinds:
        for kind in group:
            for count in egg_counts(kind.source) if _MORE_EGGS not in kind.source else ():
                named.setdefault(count.part, []).append((kind, count))
    for part, counts in named.items():
        yield from _wrong_counts(part, counts, has.get(part, 0.0), formula)


def _wrong_counts(
    part: str, counts: list[tuple[Kind, Count]], there: float, formula: Formula
) -> Iterator[Problem]:
    if not there:
        return
    for kind, count in counts:
        if count.how_many > there or (count.is_definite and count.how_many != there):
            yield _ask_count(kind, count.how_many, part, there, (count.start, count.end))
            return
    kind, last = counts[-1]
    total = sum(count.how_many for _, count in counts)
    if part != "whole" and total < there and _all_else_is_counted(part, counts, formula):
        yield _ask_count(
            kind, last.how_many, part, last.how_many + there - total, (last.start, last.end)
        )


def _all_else_is_counted(part: str, counts: list[tuple[Kind, Count]], formula: Formula) -> bool:
    """Whether no step takes whites or yolks without counting them, and both parts are spoken of."""
    other = "white" if part == "yolk" else "yolk"
    text = " ".join(formula.steps).casefold()
    spoken = len(re.findall(rf"\b{part}s?\b", text))
    return spoken == len(counts) and other in text


def _eggs(lines: tuple[Line, ...]) -> dict[str, float]:
    """How many whites, yolks and whole eggs the lines give, where all are counted."""
    eggs = [x for x in lines if (x.ingredient or "").startswith("egg")]
    if not eggs or any(x.unit != "each" or x.amount is None for x in eggs):
        return {}
    counts = {
        part: sum(_most(x.amount) for x in eggs if x.part == part)
        for part in (None, "white", "yolk")
    }
    return {
        "white": counts[None] + counts["white"],
        "yolk": counts[None] + counts["yolk"],
        "whole": counts[None],
    }


def _most(amount: float | Interval | None) -> float:
    return amount.high if isinstance(amount, Interval) else amount or 0.0


def _ask_count(kind: Kind, count: float, part: str, there: float, at: tuple[int, int]) -> Problem:
    name = {"white": "whites", "yolk": "yolks", "whole": "eggs"}[part]
    said = kind.source[at[0] : at[1]]
    asking = Asking(kind.source)
    end = at[1]
    behind = re.match(r"\s+(?:egg\s+)?\S+", kind.source[end:])
    after = end + (behind.end() if behind else 0)
    apart = as_text(abs(count - there))
    options = [(f"{as_text(there)} {name}", asking.edit(at[0], end, as_text(there)))]
    if count > there:
        options.append(
            (
                f"{as_text(count)} {name}: {apart} more",
                asking.edit(after, after, f" ({apart} {_MORE_EGGS})"),
            )
        )
    asking.ask(
        "egg-count-conflict",
        f"The step says {said} {name}; the lines have {as_text(there)}. Which is right?",
        *options,
    )
    return placed(asking.problems[0], kind)
