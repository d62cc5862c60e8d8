"""Which formula takes what is left of eggs: the order's own first, then batches of the book."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from krume.plan.eggs.cracked import Loose
from krume.plan.eggs.rules import SpareUse, cold_days, rule, spare_use
from krume.plan.eggs.wanting import each_g

_DUST = 1e-6
_MOST_SUMS = 20_000


@dataclass(frozen=True, slots=True)
class Taker:
    """A formula that may take spare whites or yolks.

    `wants_g` is what goes into the order, `made_g` what the batches made take; both empty where
    the formula is not part of these orders. `batch_g` is what one batch takes, and `step_batches`
    the smallest part of a batch that is made.
    """

    formula: str
    title: str
    family: str
    wants_g: Mapping[str, float]
    made_g: Mapping[str, float]
    is_ordered: bool
    batch_g: Mapping[str, float] = field(default_factory=dict)
    step_batches: float = 1.0
    day: int = 0


@dataclass(frozen=True, slots=True)
class Taken:
    """Grams of a part that one formula takes.

    `batches` are those more that are made of it; None where the order makes them anyway.
    `more_g` is what its batches want beside it.
    """

    formula: str
    title: str
    part: str
    mass_g: float
    batches: float | None
    more_g: float
    is_ordered: bool
    use: SpareUse
    day: int


@dataclass(frozen=True, slots=True)
class UsedUp:
    """A left-over and what the order's own formulas take of it, and the rest."""

    loose: Loose
    mass_g: float
    taken_g: float

    @property
    def left_g(self) -> float:
        """Grams that the order's own formulas do not take."""
        return max(0.0, self.mass_g - self.taken_g)


def use_up(
    loose: Sequence[Loose], takers: Sequence[Taker]
) -> tuple[tuple[UsedUp, ...], tuple[Taken, ...]]:
    """What the order's own formulas take, the oldest first and only while it keeps."""
    left = [UsedUp(each, each.count * each_g(each.size, each.part), 0.0) for each in loose]
    taken = []
    for taker in sorted((t for t in takers if t.is_ordered), key=lambda t: (t.day, t.formula)):
        for part, want_g in sorted(taker.made_g.items()):
            use = spare_use(part, taker.family)
            got_g = 0.0
            for index in sorted(range(len(left)), key=lambda i: left[i].loose.day):
                if use is None or not _keeps(left[index].loose, part, taker.day):
                    continue
                piece_g = min(left[index].left_g, want_g - got_g)
                left[index] = replace(left[index], taken_g=left[index].taken_g + piece_g)
                got_g += piece_g
            if use is not None and got_g > _DUST:
                more_g = max(0.0, want_g - got_g)
                taken.append(
                    Taken(
                        taker.formula, taker.title, part, got_g, None, more_g,
                        is_ordered=True, use=use, day=taker.day,
                    )
                )  # fmt: skip
    return tuple(left), tuple(taken)


def _keeps(loose: Loose, part: str, day: int) -> bool:
    return loose.part == part and loose.day <= day <= loose.day + cold_days(part)


def offers(left: Sequence[UsedUp], takers: Sequence[Taker]) -> tuple[Taken, ...]:
    """More batches of formulas that use up the most of the rest, without one more egg.

    Where no whole step of a batch fits, the formula whose batch wants the least beside the rest
    is offered it: the batch then takes more eggs.
    """
    found: list[Taken] = []
    for part in ("white", "yolk", "whole"):
        mine = [each for each in left if each.loose.part == part]
        rest_g = sum(each.left_g for each in mine)
        day = max((each.loose.day for each in mine), default=0)
        fits = [(t, use) for t in takers if (use := _use(t, part)) is not None]
        fits = fits if _is_worth_it(mine) else []
        steps_g = [taker.batch_g[part] * taker.step_batches for taker, _ in fits]
        counts = most_used(rest_g, steps_g)
        for (taker, use), count, step_g in zip(fits, counts, steps_g, strict=True):
            if count:
                mass_g = count * step_g
                found.append(_offer(taker, part, mass_g, count * taker.step_batches, 0.0, use, day))
        if fits and not any(counts):
            (taker, use), step_g = min(
                zip(fits, steps_g, strict=True), key=lambda each: (each[1], each[0][0].formula)
            )
            more_g = step_g - rest_g
            found.append(_offer(taker, part, rest_g, taker.step_batches, more_g, use, day))
    return tuple(found)


def _is_worth_it(left: Sequence[UsedUp]) -> bool:
    """Whether at least one egg, or one part of one, is left."""
    parts = sum(each.left_g / each_g(each.loose.size, each.loose.part) for each in left)
    return parts >= rule("least-offered").value - _DUST


def _use(taker: Taker, part: str) -> SpareUse | None:
    return spare_use(part, taker.family) if taker.batch_g.get(part, 0.0) > 0 else None


def _offer(
    taker: Taker, part: str, mass_g: float, batches: float, more_g: float, use: SpareUse, day: int
) -> Taken:
    return Taken(
        taker.formula, taker.title, part, mass_g, batches, more_g,
        is_ordered=False, use=use, day=day,
    )  # fmt: skip


def most_used(rest_g: float, steps_g: Sequence[float]) -> tuple[int, ...]:
    """How often to take each step so that the most is used and nothing is short.

    max sum k_j s_j with sum k_j s_j <= rest; among equals the fewest steps, then the first formulas

    Parameters
    ----------
    rest_g : what is left [g]
    steps_g : what one step of each formula takes [g], each above 0

    Returns
    -------
    number of steps of each formula

    Valid for
    ---------
    Sums are told apart to 0.01 g.

    Source
    ------
    `mathematics`, algebra: all sums that can be reached, one formula after the other

    Examples
    --------
    >>> most_used(405.0, [120.0])
    (3,)
    >>> most_used(405.0, [120.0, 82.0])
    (2, 2)
    """
    reached: dict[int, tuple[int, ...]] = {0: ()}
    for step_g in steps_g:
        grown: dict[int, tuple[int, ...]] = {}
        for total, counts in reached.items():
            for more, count in _steps(total, rest_g, step_g):
                better = (*counts, count)
                if more not in grown or _rank(better) < _rank(grown[more]):
                    grown[more] = better
        best = sorted(grown, reverse=True)[:_MOST_SUMS]
        reached = {total: grown[total] for total in best}
    return reached[max(reached)] if steps_g else ()


def _steps(total: int, rest_g: float, step_g: float) -> Iterator[tuple[int, int]]:
    count = 0
    while total / 100 + count * step_g <= rest_g + _DUST:
        yield total + round(count * step_g * 100), count
        count += 1


def _rank(counts: tuple[int, ...]) -> tuple[int, tuple[int, ...]]:
    return sum(counts), tuple(-count for count in counts)
