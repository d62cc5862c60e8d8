"""Three-way: a child and its parent, both perhaps changed since: what follows, what is asked."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from krume.design.formula import Line
from krume.design.varying.variation import VariedLine

_DUST_G = 1e-6
_Key = tuple[str, str, str, int]


@dataclass(frozen=True, slots=True)
class Decision:
    """A line that the person edited and the parent changed: both ways are open.

    Each is None where the line is not there that way; `number` is the line of the child's text.
    """

    number: int
    made: Line | None
    yours: Line | None
    parents: Line | None


@dataclass(frozen=True, slots=True)
class Followed:
    """A child brought after its parent: lines before and after, and what must be decided."""

    lines: tuple[VariedLine, ...]
    decisions: tuple[Decision, ...]

    @property
    def follows(self) -> bool:
        """Whether any line is changed."""
        return any(line.is_changed for line in self.lines)


def follow(made: Sequence[Line], now: Sequence[Line], child: Sequence[Line]) -> Followed:
    r"""Bring a child after its parent.

    `made` are the lines the child was made with, `now` those it would be made with today, `child`
    those it has. What the person left alone follows; what only the person changed is kept.

    >>> from krume.design.reader import read
    >>> def lines(text):
    ...     return read(f"A\n\n{text}\n").value.lines
    >>> made, now, child = "90 g sugar\n9 g oil", "80 g sugar\n9 g oil", "90 g sugar\n7 g oil"
    >>> found = follow(lines(made), lines(now), lines(child))
    >>> [line.after_g for line in found.lines], found.decisions
    ([80.0, 7.0], ())
    """
    old, new, own = _keyed(made), _keyed(now), _keyed(child)
    lines: list[VariedLine] = []
    decisions: list[Decision] = []
    for key in dict.fromkeys((*own, *new)):
        was, will, is_now = old.get(key), new.get(key), own.get(key)
        if _same(was, will) or _same(is_now, will):
            lines += [VariedLine(is_now, is_now)] if is_now else []
        elif _same(is_now, was):
            after = replace(will, number=0) if will is not None and is_now is None else will
            lines.append(VariedLine(is_now, after, "follows its parent"))
        else:
            number = is_now.number if is_now else (was.number if was else 0)
            decisions.append(Decision(number, was, is_now, will))
            lines += [VariedLine(is_now, is_now)] if is_now else []
    return Followed(tuple(lines), tuple(decisions))


def _keyed(lines: Sequence[Line]) -> dict[_Key, Line]:
    found: dict[_Key, Line] = {}
    for line in lines:
        what = (line.section or "", line.part or "", line.ingredient or line.name.casefold())
        again = sum(key[:3] == what for key in found)
        found[(*what, again)] = line
    return found


def _same(one: Line | None, other: Line | None) -> bool:
    if one is None or other is None:
        return one is other
    if one.mass_g is None or other.mass_g is None:
        return one.mass_g is other.mass_g and one.read == other.read
    return abs(one.mass_g - other.mass_g) < _DUST_G
