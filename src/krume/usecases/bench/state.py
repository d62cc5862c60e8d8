"""Where a weighing stands: every step that was said, folded over the rows as planned.

The page folds the same steps by the same rules when the network is gone; a test holds both to
one another.
"""

import json
import math
from collections.abc import Iterable
from dataclasses import dataclass, field

from krume.store import KeptStep
from krume.usecases.bench.plan import BenchRow

NOISE_G = 1e-6
_SILENT = ("undo", "cup")


@dataclass(slots=True)
class Spot:
    """A row as it stands: what it must come to, what of it is in, whether it is done with."""

    row: BenchRow
    target_g: float | None
    got_g: float | None = None
    is_done: bool = False
    is_closed: bool = False

    @property
    def held_g(self) -> float:
        """What of it is in the bowl."""
        return self.got_g or 0.0

    @property
    def over_g(self) -> float:
        """How far it is past its target, where that is a slip; else 0."""
        if self.got_g is None or self.target_g is None:
            return 0.0
        over = self.got_g - self.target_g
        return over if over > self.row.tolerance_g + NOISE_G else 0.0

    @property
    def short_g(self) -> float:
        """How much of it there is no more of."""
        if not self.is_closed or self.target_g is None:
            return 0.0
        short = self.target_g - self.held_g
        return short if short > self.row.tolerance_g + NOISE_G else 0.0


@dataclass(frozen=True, slots=True)
class Standing:
    """A weighing as it stands.

    `now` is the position of the row to work on, None when all is in; `slip` the row that went
    wrong, until a way is chosen. `last` is the step that can be taken back, `chosen` the last
    choice while nothing was weighed after it. `base_g` is what lay in a bowl when it was set to
    0 again, by the position of its tare.
    """

    spots: tuple[Spot, ...]
    now: int | None
    slip: int | None
    last: KeptStep | None
    before: KeptStep | None
    chosen: KeptStep | None
    base_g: dict[int, float] = field(default_factory=dict)

    def running_g(self, position: int) -> float:
        """What the display shows before anything more of a row goes in."""
        group = self.spots[position].row.group
        held = (s.held_g for s in self.spots if s.row.group == group and s.row.kind != "tare")
        return _clean(math.fsum(held) - self.base_g.get(group, 0.0))

    def display_g(self, position: int) -> float | None:
        """What the display must show when a row is in; None where its grams are not known."""
        add = self.add_g(position)
        return None if add is None else _clean(self.running_g(position) + add)

    def add_g(self, position: int) -> float | None:
        """What of a row is still to add."""
        spot = self.spots[position]
        return None if spot.target_g is None else _clean(max(0.0, spot.target_g - spot.held_g))

    def got_g(self, position: int, display_g: float) -> float:
        """What of a row is in when the display shows so much."""
        spot = self.spots[position]
        return _clean(display_g - self.running_g(position) + spot.held_g)


def standing(rows: Iterable[BenchRow], steps: Iterable[KeptStep]) -> Standing:
    """Fold all steps over the rows; a step that was taken back counts as never said."""
    spots = tuple(Spot(row, row.add_g) for row in rows)
    base: dict[int, float] = {}
    there = tuple(steps)
    gone = {step.client_id for step in there if step.is_undone}
    alive = [
        step
        for step in there
        if step.kind not in _SILENT and not step.is_undone and step.of not in gone
    ]
    for step in alive:
        _take(spots, base, step)
    weighed = [step for step in alive if step.kind not in ("tare", "choose")]
    last = alive[-1] if alive else None
    return Standing(
        spots=spots,
        now=next((s.row.position for s in spots if not s.is_done), None),
        slip=next((s.row.position for s in spots if s.over_g or s.short_g), None),
        last=last,
        before=weighed[-1] if weighed else None,
        chosen=last if last is not None and last.kind == "choose" else None,
        base_g=base,
    )


def _take(spots: tuple[Spot, ...], base: dict[int, float], step: KeptStep) -> None:
    if step.position is None or not 0 <= step.position < len(spots):
        return
    spot = spots[step.position]
    if step.kind == "choose":
        _choose(spots, base, spot.row.group, targets_in(step))
    elif step.kind == "no-more":
        spot.is_closed = spot.is_done = True
    elif step.kind == "tare":
        spot.is_done = True
    else:
        spot.got_g = step.got_g
        least = (spot.target_g or 0.0) - spot.row.tolerance_g - NOISE_G
        spot.is_done = step.kind == "in" or spot.row.kind != "add" or spot.held_g >= least


def targets_in(step: KeptStep) -> dict[int, float]:
    """The grams each row comes to by the way that was chosen."""
    said = json.loads(step.said or "{}")
    return {int(at): float(mass) for at, mass in said.get("targets", {}).items()}


def _choose(
    spots: tuple[Spot, ...], base: dict[int, float], group: int, targets: dict[int, float]
) -> None:
    """Every row gets its new target; a bowl that needs more goes on the scale again."""
    again = set()
    for at, target in sorted(targets.items()):
        spot = spots[at]
        new = spot.held_g if spot.is_closed else max(target, spot.held_g)
        is_more = spot.target_g is not None and new > spot.target_g + NOISE_G
        if spot.got_g is not None and is_more and new > spot.held_g + spot.row.tolerance_g:
            spot.is_done = False
            again.add(spot.row.group)
        if spot.got_g is None and new <= NOISE_G:
            spot.is_done = True
        spot.target_g = new
    if again - {group} and any(not s.is_done for s in spots if s.row.group == group):
        again.add(group)
    for each in again if again - {group} else ():
        spots[each].is_done = False
        base[each] = math.fsum(s.held_g for s in spots if s.row.group == each)


def _clean(value: float) -> float:
    return round(value, 6)
