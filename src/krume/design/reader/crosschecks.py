"""A text held against itself: steps against lines, tin against tin, oven against oven, claims."""

from krume.base import Notice, Problem
from krume.design.formula import Formula
from krume.design.reader.bakedchecks import baked_agrees
from krume.design.reader.claims import claims
from krume.design.reader.classifying import Kind
from krume.design.reader.dates import dates
from krume.design.reader.eggcounts import egg_counts_agree
from krume.design.reader.heads import Head
from krume.design.reader.ovenchecks import minutes_agree, ovens_agree
from krume.design.reader.repeats import flourless, lines_twice, percents_sum
from krume.design.reader.splits import splits
from krume.design.reader.steps import Steps
from krume.design.reader.tinchecks import tins_agree
from krume.design.reader.unread import amounts_unread


def crosschecks(
    formula: Formula, kinds: list[Kind], roles: list[str | None], head: Head, steps: Steps,
    problems: list[Problem], notices: list[Notice],
) -> None:  # fmt: skip
    """Ask about everything in which the text disagrees with itself."""
    found: list[Problem | Notice] = []
    found += lines_twice(formula.lines, roles)
    found += splits(formula, steps)
    found += egg_counts_agree(formula, steps)
    found += tins_agree(head, steps, kinds)
    found += ovens_agree(head, kinds)
    found += minutes_agree(steps, kinds)
    found += baked_agrees(formula, kinds)
    found += percents_sum(formula.lines, roles)
    found += claims(kinds, list(formula.lines))
    found += dates(kinds)
    found += flourless(formula, roles)
    found += amounts_unread(kinds)
    problems += [x for x in found if isinstance(x, Problem)]
    notices += [x for x in found if isinstance(x, Notice)]
