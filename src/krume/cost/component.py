"""What one formula adds to the material: cakes whole, creams by the grams that go in."""

import math
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from krume.base import exact, to_cent
from krume.build import figure
from krume.cost.lines import Costed, LineCost, line_cost
from krume.design import Line
from krume.pantry import PriceList

_DUST = Fraction(1, 10**9)


@dataclass(frozen=True, slots=True)
class Need:
    """A formula with how much of it goes in; None is not known.

    A `cake` is paid by its whole `batches`, a `cream` by `needed_g`, the grams that go in, of a
    batch of `batch_g` (a cake's is baked and cold). `open_lines` are lines of the formula that a
    question stands on: until it is answered the formula's cost is not known.
    """

    name: str
    title: str
    kind: str
    lines: tuple[Line, ...]
    batches: float | None
    needed_g: float | None
    batch_g: float | None
    usual_egg: str | None = None
    open_lines: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Component:
    """A formula with its head, rounded to the cent; None is not known.

    `batches` is what is paid for, `over_g` what is made and not in the torte: of a cake it is paid
    (trim), of a cream it is bought beyond the head. `over_cost` is what that comes to.
    """

    need: Need
    batches: Fraction | None
    cost: Decimal | None
    over_g: float | None
    over_cost: Decimal | None
    lines: tuple[Costed, ...]

    def line_share(self, line: LineCost) -> Fraction | None:
        """What a line costs in as many batches as are paid for, not rounded."""
        if line.cost is None or self.batches is None:
            return None
        return line.cost * self.batches


def component(need: Need, prices: PriceList) -> Component:
    """Head of a formula: the sum of its lines times the batches paid for, rounded once."""
    lines = tuple(_costed(line, need, prices) for line in need.lines)
    batch = None if need.open_lines else _added(tuple(costed.line.cost for costed in lines))
    batches = _batches(need)
    over_g = _over_g(need)
    return Component(
        need=need,
        batches=batches,
        cost=None if batch is None or batches is None else to_cent(batch * batches),
        over_g=over_g,
        over_cost=_over_cost(batch, over_g, need),
        lines=lines,
    )


def _costed(line: Line, need: Need, prices: PriceList) -> Costed:
    """Cost of a line; of one that a question stands on no price is asked yet."""
    costed = line_cost(line, prices, usual_egg=need.usual_egg)
    return replace(costed, missing=None) if line.number in need.open_lines else costed


def _added(costs: tuple[Fraction | None, ...]) -> Fraction | None:
    known = [cost for cost in costs if cost is not None]
    return sum(known, Fraction(0)) if known and len(known) == len(costs) else None


def _batches(need: Need) -> Fraction | None:
    """Batches paid for: whole bakes of a cake, the share that goes in of a cream."""
    if need.kind == "cake":
        return None if need.batches is None else exact(need.batches)
    if need.needed_g is None or need.batch_g is None or need.batch_g <= 0:
        return None
    return exact(need.needed_g) / exact(need.batch_g)


def _over_g(need: Need) -> float | None:
    """Grams made and not in the torte; creams are made in steps of a batch."""
    if need.needed_g is None or need.batch_g is None or need.batch_g <= 0:
        return None
    if need.kind == "cake":
        return None if need.batches is None else need.batches * need.batch_g - need.needed_g
    step = exact(figure("batch-step").value)
    share = exact(need.needed_g) / exact(need.batch_g)
    made = max(1, math.ceil(share / step - _DUST)) * step
    return float(made) * need.batch_g - need.needed_g


def _over_cost(batch: Fraction | None, over_g: float | None, need: Need) -> Decimal | None:
    if batch is None or over_g is None or not need.batch_g:
        return None
    return to_cent(batch * exact(over_g) / exact(need.batch_g))
