"""Which sources stand behind an answer, each key once, in the order of use."""

from collections.abc import Iterable

from krume.base import Notice
from krume.design import Formula


def source_keys(*groups: Iterable[str]) -> tuple[str, ...]:
    """Keys of several groups, each once; a blank names nothing."""
    return tuple(dict.fromkeys(key for group in groups for key in group if key))


def line_sources(formula: Formula) -> tuple[str, ...]:
    """Sources of the masses of a formula's lines."""
    return source_keys(line.source for line in formula.lines)


def practice_notice(statuses: Iterable[str]) -> tuple[Notice, ...]:
    """Notice that a judgement rests on habit and not on a printed source."""
    soft = [s for s in ("common practice", "from memory", "assumed") if s in set(statuses)]
    if not soft:
        return ()
    words = " and ".join(soft)
    text = f"Some of these figures are {words}: they say unusual, never wrong."
    return (Notice("common-practice", text),)
