"""The tins a text names, held against each other."""

import re
from collections.abc import Iterator

from krume.base import Notice, Option, Problem
from krume.design.reader.asking import Asking
from krume.design.reader.classifying import Kind
from krume.design.reader.heads import Head
from krume.design.reader.placing import first_part, placed
from krume.design.reader.steps import Steps
from krume.design.reader.tinsaid import THIS_ONE, TinSaid, same_tin


def tins_agree(head: Head, steps: Steps, kinds: list[Kind]) -> Iterator[Problem | Notice]:
    """Ask where a text names two tins; what one tin lacks is asked only where nothing else is."""
    here = first_part(kinds, [kind for kind, _ in steps.tins_said if kind.kind == "step"])
    said = tuple(one for one in steps.tins_said if one[0].kind != "step" or one[0].number in here)
    decided = [one for one in said if one[1].decided]
    if not said or decided:
        for kind, one in decided[:1]:
            yield Notice(
                "tin-decided",
                f"'{one.text}' holds; other tins in the text are left aside",
                f"line {kind.number}",
            )
        return
    if head.tin_line is not None:
        yield from _against_key(head, said)
        return
    first_kind, first = said[0]
    other = next(((k, s) for k, s in said[1:] if not _one_tin(first, s)), None)
    if other is not None:
        yield _ask_tins(first.text, f"line {first_kind.number}", *other)
        return
    for problem in first.problems if first.tin is None else ():
        options = tuple(
            Option(
                o.label, first_kind.source[: first.start] + o.line + first_kind.source[first.end :]
            )
            for o in problem.options
        )
        yield Problem(problem.code, f"line {first_kind.number}", first.text, problem.ask, options)
    for notice in first.notices:
        yield Notice(notice.code, notice.text, f"line {first_kind.number}")


def _one_tin(one: TinSaid, other: TinSaid) -> bool:
    if one.tin is not None and other.tin is not None:
        return same_tin(one.tin, other.tin)
    return _figures(one.text) == _figures(other.text)


def _figures(text: str) -> list[str]:
    return re.findall(r"\d+(?:[.,]\d+)?", text)


def _against_key(head: Head, said: tuple[tuple[Kind, TinSaid], ...]) -> Iterator[Problem]:
    if not head.tins:
        return
    for kind, one in said:
        if (
            one.tin is not None
            and kind.kind == "step"
            and not any(same_tin(tin, one.tin) for tin in head.tins)
        ):
            yield _ask_tins(head.tins[0].read, f"line {head.tin_line}", kind, one)
            return


def _ask_tins(first: str, where: str, kind: Kind, other: TinSaid) -> Problem:
    asking = Asking(kind.source)
    asking.ask(
        "tin-conflict",
        f"Two tins: {first} ({where}) and {other.text} (line {kind.number}). Which one is baked "
        f"in?",
        (first, asking.edit(other.start, other.end, first)),
        (other.text, asking.edit(other.end, other.end, f" {THIS_ONE}")),
    )
    return placed(asking.problems[0], kind)
