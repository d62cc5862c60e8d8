"""A plain text of a name, `Key: value` lines and a body, as torte plans and orders are typed."""

import re
from dataclasses import dataclass

from krume.base import Option, Problem

_MOST_LINES = 500
_MOST_SIGNS = 1000
_TURNING = re.compile("[\u202a-\u202e\u2066-\u2069]")
"""Signs without a shape that turn the letters of a line round."""
_KEY_LINE = re.compile(r"^([^\W\d_][\w \-]{0,24}?)\s*:\s*(.*)$")


@dataclass(frozen=True, slots=True)
class PlainLine:
    """One line of the text: its number, its words, and what it was taken for.

    `kind` is name, key, line or blank; of a key line `key` is the word before the colon, in small
    letters, and `value` what follows.
    """

    number: int
    text: str
    kind: str
    key: str = ""
    value: str = ""

    @property
    def where(self) -> str:
        """Place of the line, as problems name it."""
        return f"line {self.number}"


@dataclass(frozen=True, slots=True)
class PlainText:
    """All lines of a text, with its name and what could not be taken in."""

    name: str | None
    lines: tuple[PlainLine, ...]
    problems: tuple[Problem, ...] = ()

    def key_lines(self) -> tuple[PlainLine, ...]:
        """The `Key: value` lines."""
        return tuple(line for line in self.lines if line.kind == "key")

    def body_lines(self) -> tuple[PlainLine, ...]:
        """The lines that are neither name nor key."""
        return tuple(line for line in self.lines if line.kind == "line")


def plain_text(text: str, *, what: str, example: str) -> PlainText:
    """Split a text into name, key lines and body; `what` and `example` are for its questions."""
    numbered = [(n, t.strip()) for n, t in enumerate(text.lstrip("\ufeff").splitlines(), start=1)]
    lines: list[PlainLine] = []
    name: str | None = None
    for number, words in numbered[:_MOST_LINES]:
        line = _line(number, words[:_MOST_SIGNS], has_name=name is not None)
        if line.kind == "name":
            name = _TURNING.sub("", line.text)
        lines.append(line)
    problems = _limits(numbered)
    if not any(line.kind == "line" for line in lines):
        problems = (*problems, _nothing(name, what, example))
    return PlainText(name, tuple(lines), problems)


def _line(number: int, words: str, *, has_name: bool) -> PlainLine:
    if not words:
        return PlainLine(number, words, "blank")
    if match := _KEY_LINE.match(words):
        return PlainLine(number, words, "key", match[1].casefold(), match[2].strip())
    return PlainLine(number, words, "line" if has_name else "name")


def _limits(numbered: list[tuple[int, str]]) -> tuple[Problem, ...]:
    problems = [
        Problem(
            "line-too-long",
            f"line {number}",
            words[:60] + " …",
            f"This line has {len(words)} signs; {_MOST_SIGNS} is the most. Type it shorter.",
        )
        for number, words in numbered[:_MOST_LINES]
        if len(words) > _MOST_SIGNS
    ]
    if len(numbered) > _MOST_LINES:
        ask = f"The text has {len(numbered)} lines; {_MOST_LINES} is the most. Leave out the rest."
        problems.append(Problem("too-long", f"line {_MOST_LINES + 1}", "", ask))
    return tuple(problems)


def _nothing(name: str | None, what: str, example: str) -> Problem:
    where = "after line 1" if name else "line 1"
    ask = f"No {what} was found. Type one a line, such as: {example}"
    return Problem("empty", where, name or "", ask)


def unread(line: PlainLine, *, code: str, ask: str) -> Problem:
    """Question about a line that was not understood; keeping it as a note answers it."""
    keep = Option("Keep it as a note", f"Note: {line.text}")
    return Problem(code, line.where, line.text, ask, (keep,))
