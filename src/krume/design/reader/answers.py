"""Answers are edits: `line 4=5 eggs, EU M` puts that line in place of line 4."""

import re
from collections.abc import Sequence

from krume.base import InputError

_ANSWER = re.compile(
    r"^\s*(?P<where>(?:(?P<after>after)\s+)?line\s+(?P<number>\d{1,7}))\s*=(?P<line>.*)$",
    re.IGNORECASE | re.DOTALL,
)
_LINES = re.compile(r"(\r\n|\n|\r)")


def apply_answers(text: str, answers: Sequence[str]) -> str:
    r"""The text with each answer's line put in; answers are given in the text's own line numbers.

    >>> apply_answers("Sponge\n5 eggs\n", ["line 2=5 eggs, EU M"])
    'Sponge\n5 eggs, EU M\n'
    """
    parts = _LINES.split(text)
    lines, ends = parts[0::2], [*parts[1::2], ""]
    added: dict[int, list[str]] = {}
    changed: dict[int, str] = {}
    for answer in answers:
        number, is_after, line = _read(answer, len(lines))
        if is_after:
            added.setdefault(number, []).append(line)
        elif number in changed and changed[number] != line:
            raise _refused(answer, f"line {number} is answered twice", "one answer a line")
        else:
            changed[number] = line
    return _joined(lines, ends, changed, added)


def _read(answer: str, count: int) -> tuple[int, bool, str]:
    match = _ANSWER.match(answer)
    if match is None:
        raise _refused(answer, "it names no line", "line 4=5 eggs, EU M")
    number, is_after = int(match["number"]), match["after"] is not None
    if not (0 if is_after else 1) <= number <= count:
        raise _refused(answer, f"the text has {count} lines", f"line 1 to line {count}")
    line = match["line"]
    if "\n" in line or "\r" in line:
        raise _refused(answer, "an answer is one line", "line 4=5 eggs, EU M")
    return number, is_after, line


def _refused(answer: str, why: str, want: str) -> InputError:
    shown = answer.strip()[:80]
    message = f"the answer '{shown}' cannot be used: {why}. Type it as: {want}"
    return InputError(message, field="answer", got=shown, want=want)


def _joined(
    lines: list[str], ends: list[str], changed: dict[int, str], added: dict[int, list[str]]
) -> str:
    usual = next((end for end in ends if end), "\n")
    out = ["".join(f"{line}{usual}" for line in added.get(0, ()))]
    for number, (line, end) in enumerate(zip(lines, ends, strict=True), start=1):
        out.append(changed.get(number, line))
        more = added.get(number, ())
        out.append(end if not more or end else usual)
        out.extend(f"{extra}{end or usual}" for extra in more[:-1])
        if more:
            out.append(f"{more[-1]}{end}")
    return "".join(out)
