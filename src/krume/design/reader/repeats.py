"""Lines held against each other: one ingredient twice, percentages, no flour at all."""

import re
from collections.abc import Iterator

from krume.base import Interval, Notice, Option, Problem, as_text
from krume.design.formula import Formula, Line
from krume.design.reader.asking import Asking, grams, left_out
from krume.design.reader.settings import limit

_SECOND = "second addition"


def lines_twice(lines: tuple[Line, ...], roles: list[str | None]) -> Iterator[Problem | Notice]:
    """One ingredient on two lines of one part, without a word that tells them apart."""
    first: dict[tuple[str, str | None, str | None], Line] = {}
    for line, role in zip(lines, roles, strict=True):
        if (
            line.ingredient is None
            or line.amount is None
            or role in ("egg", "water")
            or line.basis == "ratio"
        ):
            continue
        key = (line.ingredient, line.section, line.part)
        other = first.setdefault(key, line)
        if other is line or other.number == line.number or _told_apart(other, line):
            continue
        alone = sum(x.number == line.number for x in lines) == 1
        yield _ask_twice(other, line, alone=alone)


def _told_apart(one: Line, other: Line) -> bool:
    notes = (one.note or "", other.note or "")
    if any(
        re.search(
            r"\b(?:for|für|zum|second|first|more|extra|divided|reserved|again|topping|dust\w*|sprinkl\w*|greas\w*)\b",
            n,
            re.IGNORECASE,
        )
        for n in notes
    ):
        return True
    if re.search(r"\b(?:more|extra|another|additional)\b", other.read, re.IGNORECASE):
        return True
    if _SECOND in other.read:
        return True
    return one.name.casefold() != other.name.casefold() and None not in (one.mass_g, other.mass_g)


def _ask_twice(one: Line, other: Line, *, alone: bool) -> Problem:
    both = (
        grams(one.mass_g + other.mass_g)
        if one.mass_g is not None and other.mass_g is not None
        else "both"
    )
    end = len(other.read.rstrip())
    kept = f"{other.read[:end]}, {_SECOND}"
    options = [Option(f"two additions, {both} in all", kept)]
    if alone:
        options.append(Option(f"typed twice: only line {one.number} holds", left_out(other.read)))
    return Problem(
        "line-twice",
        f"line {other.number}",
        other.read.strip()[:200],
        f"{other.name} stands in line {one.number} and in line {other.number}: added in two "
        f"additions, {both} in all, or typed twice?",
        tuple(options),
    )


def percents_sum(lines: tuple[Line, ...], roles: list[str | None]) -> Iterator[Problem]:
    """Percentages of a blend must sum to 100."""
    parts = [
        (x, r)
        for x, r in zip(lines, roles, strict=True)
        if x.unit == "%" and not isinstance(x.amount, Interval) and x.amount is not None
    ]
    if len(parts) < 2 or any(
        role not in (None, "flour", "starch", "nut", "binder") for _, role in parts
    ):
        return
    total = sum(float(x.amount) for x, _ in parts if isinstance(x.amount, float))
    last = parts[-1][0]
    if abs(total - 100) <= limit("percent-sum-agrees") or "parts of" in last.read:
        return
    own = float(last.amount) if isinstance(last.amount, float) else 0.0
    asking = Asking(last.read)
    match = re.search(r"\d+(?:[.,]\d+)?(?=\s*%)", last.read)
    options = [
        (
            f"scale to 100: these are parts of {as_text(total)}",
            f"{last.read.rstrip()}, parts of {as_text(total)}",
        )
    ]
    if match is not None and own + 100 - total > 0:
        value = as_text(own + 100 - total)
        options.append((f"{value} % {last.name}", asking.edit(*match.span(), value)))
    more = "missing" if total < 100 else "too much"
    yield Problem(
        "percent-sum", f"line {last.number}", last.read.strip()[:200],
        f"The blend sums to {as_text(total)} %: {as_text(abs(100 - total))} % {more}. Scale to "
        f"100, or which one is wrong?",
        tuple(Option(*option) for option in options),
    )  # fmt: skip


def flourless(formula: Formula, roles: list[str | None]) -> Iterator[Notice]:
    """Say that a cake without flour has no balance per 100 g flour."""
    flour = sum(
        x.mass_g or 1.0
        for x, role in zip(formula.lines, roles, strict=True)
        if role in ("flour", "starch") and x.mass_g != 0
    )
    has_cake = "egg" in roles and (
        "nut" in roles or "chocolate" in roles or any(x.mass_g == 0 for x in formula.lines)
    )
    if flour == 0 and has_cake and "gel" not in roles and "dairy" not in roles:
        yield Notice(
            "flourless", "no flour: a balance per 100 g flour is not defined, per egg is shown"
        )
