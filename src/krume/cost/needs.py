"""How much of which formula is paid for: of a formula alone, of a torte, of all of an order."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from krume.base import Interval
from krume.build import Torte
from krume.cost.component import Need
from krume.design import Formula, Line, balance


@dataclass(frozen=True, slots=True)
class Part:
    """A formula that a torte names: the name it goes by, and the egg size eggs in grams have."""

    name: str
    formula: Formula
    usual_egg: str | None = None
    open_lines: frozenset[int] = frozenset()

    @property
    def title(self) -> str:
        """The formula's own name, in one line."""
        return " ".join((self.formula.name or self.name).split())

    @property
    def lines(self) -> tuple[Line, ...]:
        """What is bought for one batch of it."""
        return self.formula.lines


def is_baked(formula: Formula) -> bool:
    """Whether a formula says that it is baked: a tin, an oven, or what it weighs baked."""
    return formula.tin is not None or formula.oven is not None or formula.baked is not None


def formula_need(part: Part, *, count: int = 1) -> Need:
    """So many whole batches of a formula that is sold as it is; nothing of it is over."""
    total = balance(part.formula).total_g
    batch_g = total.best if isinstance(total, Interval) else total
    return Need(
        name=part.name,
        title=part.title,
        kind="cake" if is_baked(part.formula) else "cream",
        lines=part.lines,
        batches=float(count),
        needed_g=count * batch_g if batch_g else None,
        batch_g=batch_g or None,
        usual_egg=part.usual_egg,
        open_lines=part.open_lines,
    )


def torte_needs(torte: Torte, parts: Mapping[str, Part], *, count: int = 1) -> tuple[Need, ...]:
    """What so many of a torte need; `parts` are its formulas by the plan's own words."""
    return tuple(
        Need(
            name=parts[batch.name].name,
            title=parts[batch.name].title,
            kind=batch.kind,
            lines=parts[batch.name].lines,
            batches=_times(batch.batches, count),
            needed_g=_times(batch.needed_g, count),
            batch_g=batch.batch_g,
            usual_egg=parts[batch.name].usual_egg,
            open_lines=parts[batch.name].open_lines,
        )
        for batch in torte.batches
        if batch.name in parts
    )


def together(needs: Iterable[Need]) -> tuple[Need, ...]:
    """Needs of the same formula as one: creams for several tortes are made together."""
    found: dict[tuple[str, str], Need] = {}
    for need in needs:
        key = (need.name, need.kind)
        found[key] = _joined(found[key], need) if key in found else need
    return tuple(found.values())


def _joined(one: Need, two: Need) -> Need:
    return replace(
        one,
        batches=_sum(one.batches, two.batches),
        needed_g=_sum(one.needed_g, two.needed_g),
    )


def _sum(one: float | None, two: float | None) -> float | None:
    return None if one is None or two is None else one + two


def _times(value: float | None, count: int) -> float | None:
    return None if value is None else value * count
