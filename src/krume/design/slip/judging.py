"""What a way does to the cake: shares, figures against their bands, the worst shift."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from krume.design.balance import Balance, balance
from krume.design.bands import Band, bands
from krume.design.findings import Finding
from krume.design.formula import Formula
from krume.design.ratios import Value, best_of
from krume.design.slip.bowl import Bowl, role_of
from krume.design.slip.eggs import egg_lines, egg_mass_g
from krume.design.slip.state import Slip
from krume.design.slip.way import Shift

_SAME = 5e-4
"""Figures closer than this print alike."""
_SLACK = 1e-6
"""Noise of sums; figures are judged of exact grams, so no step of a scale is in them."""


@dataclass(frozen=True, slots=True)
class Judge:
    """The planned formula's balance, against which every way is held."""

    slip: Slip
    plan: Balance
    limits: tuple[Band, ...]

    def after(self, card_g: Sequence[float | None]) -> Balance:
        """Balance of the formula at other masses."""
        return balance(at_masses(self.slip.formula, card_g))

    def shifts(self, after: Balance) -> tuple[Shift, ...]:
        """Figures that moved and have a usual range."""
        found = []
        for limit in self.limits:
            old, new = figure_of(self.plan, limit.quantity), figure_of(after, limit.quantity)
            if not _is_same(old, new):
                ends = (limit.low, limit.high, limit.unit)
                found.append(Shift(limit.quantity, limit.label, old, new, *ends))
        return tuple(found)

    def is_in_band(self, after: Balance) -> bool:
        """Whether no figure is further outside its usual range than the plan has it.

        So much nut that the cake is judged as a nut sponge is judged by the nut sponge's ranges.
        """
        return not self.new_findings(after)

    def unknown(self, after: Balance) -> tuple[str, ...]:
        """Figures with a usual range that nobody knows: nothing may be said of them."""
        return tuple(
            limit.label for limit in self.limits if figure_of(after, limit.quantity) is None
        )

    def new_findings(self, after: Balance) -> tuple[Finding, ...]:
        """Findings the plan does not have, or has less."""
        planned = {each.code: _outside_by(each) for each in self.plan.findings}
        return tuple(
            each
            for each in after.findings
            if each.code not in planned or _outside_by(each) > planned[each.code] + _SLACK
        )


def judge_of(slip: Slip) -> Judge:
    """The judge of a slip: its plan balanced once."""
    plan = balance(slip.formula)
    return Judge(slip, plan, () if plan.family is None else bands(plan.family))


def at_masses(formula: Formula, masses_g: Sequence[float | None]) -> Formula:
    """A formula with other masses; eggs are counted anew."""
    each = {egg.line: egg.each_g for egg in egg_lines(formula)}
    return replace(
        formula,
        lines=tuple(
            line
            if mass is None or mass == line.mass_g
            else replace(
                line,
                mass_g=mass,
                mass_interval_g=None,
                amount=mass / each[n] if n in each else mass,
                unit=line.unit if n in each else "g",
            )
            for n, (line, mass) in enumerate(zip(formula.lines, masses_g, strict=True))
        ),
    )


def figure_of(found: Balance, quantity: str) -> Value:
    """A figure of a balance by its band's key."""
    if quantity == "sugar_per_egg":
        return found.sugar_per_egg
    return found.percent.get(quantity, found.figures.get(quantity))


def _is_same(old: Value, new: Value) -> bool:
    first, second = best_of(old), best_of(new)
    if first is None or second is None:
        return first is second
    return abs(first - second) < _SAME


def _outside_by(found: Finding) -> float:
    value = best_of(found.value)
    return 0.0 if value is None else max(found.low - value, value - found.high)


def shares_pct(bowl: Bowl, masses_g: tuple[float, ...]) -> tuple[float, ...]:
    """Each item in percent of the flours and starches of its bowl."""
    basis = bowl.basis_g(masses_g)
    return tuple(100 * mass / basis if basis else 0.0 for mass in masses_g)


def worst_shift_pct(
    slip: Slip,
    bowl: Bowl | None,
    bowl_g: tuple[float, ...] | None,
    card_g: Sequence[float | None],
) -> float:
    """The worst shift of a way, of exact grams.

    Points of the blend for the lines of a blend's bowl; for all others percent of the line's ratio
    to egg, or to the whole where there is no egg.
    """
    points: list[float] = []
    in_bowl: frozenset[int] = frozenset()
    if bowl is not None:
        plan = tuple(item.plan_g for item in bowl.items)
        after = plan if bowl_g is None else bowl_g
        pairs = zip(shares_pct(bowl, after), shares_pct(bowl, plan), strict=True)
        points = [abs(now - was) for now, was in pairs]
        in_bowl = bowl.lines
    return max([0.0, *points, *_ratios(slip, card_g, beside=in_bowl)])


def _ratios(slip: Slip, card_g: Sequence[float | None], *, beside: frozenset[int]) -> list[float]:
    plan_g = tuple(line.mass_g for line in slip.lines)
    before = egg_mass_g(slip.formula, plan_g) or sum(g or 0.0 for g in plan_g)
    has_eggs = egg_mass_g(slip.formula, plan_g) > 0
    after = egg_mass_g(slip.formula, card_g) if has_eggs else sum(g or 0.0 for g in card_g)
    if not after or not before:
        return []
    one_egg = len([line for line in slip.lines if role_of(line) == "egg"]) == 1
    return [
        abs((card_g[n] or 0.0) / plan * before / after - 1) * 100
        for n, plan in enumerate(plan_g)
        if plan and n not in beside and not (one_egg and role_of(slip.lines[n]) == "egg")
    ]
