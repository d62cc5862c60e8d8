"""Cards to print in tests: the studio's formulas, weighed out."""

from dataclasses import replace
from typing import Any

from krume.design import Formula, weigh_out
from krume.publish import BenchCard, Hold, Imprint, bench_card
from tests.design.studio import item

NOTE = "balanced on paper, not baked"
IMPRINT = Imprint("2027-06-10", "0.1.0", "3fa9c1d2e4b5", "draft 1", notes=(NOTE,))
HOLD = Hold("hazelnut lot L-008 may contain wheat.", "a valid test of the hazelnuts that go in.")


def card(formula: Formula, **more: Any) -> BenchCard:
    """The card of a formula on the fine scale."""
    return bench_card(formula, weigh_out(formula), IMPRINT, **more)


def named(formula: Formula, name: str) -> Formula:
    """The formula under another name, with that name in a line of it too."""
    return replace(formula, name=name, lines=(*formula.lines, replace(item(7, "salt"), name=name)))


def long_formula(count: int) -> Formula:
    """A formula of many lines without steps."""
    names = ("white rice flour", "butter", "caster sugar", "whole milk", "dark chocolate")
    lines = tuple(item(10 + number, names[number % len(names)]) for number in range(count))
    return Formula("Long", lines)
