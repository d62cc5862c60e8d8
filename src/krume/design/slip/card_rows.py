"""The weighing order of a corrected cake: what is in already, what is to add, what the jar gets."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import count

from krume.base import as_text
from krume.design.slip.bowl import bowls_of
from krume.design.slip.rescue import Rescue
from krume.design.slip.state import NOISE_G
from krume.design.slip.way import Way
from krume.design.weighing import Row, Weighing, addends

ALREADY = "is in already"
TAKE_OUT = "take out"
_APART = ("second", "fresh")
"""Ways whose own card is weighed from empty bowls."""


def corrected_rows(weighing: Weighing, found: Rescue, way: Way) -> Weighing:
    """The weighing order of a way's cake with the bowls as they stand now.

    What lies in a bowl stands first, with what the display shows now; then what is still to add;
    then what comes out for the jar. The displays still add up to this cake.
    """
    if way.kind in _APART:
        return weighing
    held = _held(found)
    rows = [row for group in _groups(weighing.rows) for row in _group(group, held, way, found)]
    numbers = count(1)
    numbered = tuple(r if r.kind == "tare" else replace(r, number=next(numbers)) for r in rows)
    parts = addends(numbered)
    return replace(weighing, rows=numbered, parts_g=parts, total_g=round(math.fsum(parts), 6))


def _held(found: Rescue) -> dict[tuple[int, str], float]:
    """What of each line lies in each bowl.

    Eggs lie in both bowls in the shares of the plan. What two bowls share of any other line is in
    a cup of its own or in one of them: nobody said, so its rows stay whole.
    """
    slip, every = found.slip, bowls_of(found.slip).all
    homes = [item.line for bowl in every for item in bowl.items]
    held: dict[tuple[int, str], float] = {}
    for bowl in every:
        for item in bowl.items:
            plan = slip.plan_g(item.line)
            is_egg = item.role == "egg" and bool(plan)
            if is_egg or homes.count(item.line) == 1:
                share = slip.held_g(item.line) * item.plan_g / (plan or 1.0)
                held[item.line, bowl.key] = share if is_egg else item.held_g
    return held


def _groups(rows: Sequence[Row]) -> list[list[Row]]:
    """Rows from one tare to the next."""
    groups: list[list[Row]] = []
    for row in rows:
        if row.kind == "tare" or not groups:
            groups.append([])
        groups[-1].append(row)
    return groups


def _group(
    group: list[Row], held: dict[tuple[int, str], float], way: Way, found: Rescue
) -> Iterator[Row]:
    """One bowl's rows; as they are where nothing of them is weighed and nothing goes to a jar."""
    known = [row for row in group if row.line is not None and row.add_g is not None]
    there = {n: held.get((row.line or 0, row.bowl), 0.0) for n, row in enumerate(known)}
    ends = {n: _end_g(row, there[n], way, found) for n, row in enumerate(known)}
    if not any(mass > NOISE_G for mass in there.values()):
        yield from group
        return
    now = math.fsum(there.values())
    yield _standing(group[0], now)
    yield _already(known, there, now)
    running = now
    for n, row in enumerate(known):
        more = ends[n] - there[n]
        if more > NOISE_G:
            running += more
            yield replace(row, add_g=round(more, 6), display_g=_shown(row, running))
    yield from (row for row in group if row.line is None and row.kind != "tare")
    yield from (row for row in group if row.line is not None and row.add_g is None)
    cake = math.fsum(row.add_g or 0.0 for row in known)
    if running - cake > NOISE_G:
        is_jar = way.jar is not None and _is_in_bowl(known[0], way, found)
        yield _out(known[0], running - cake, cake, is_jar=is_jar)


def _end_g(row: Row, there_g: float, way: Way, found: Rescue) -> float:
    """What lies there at the end, a jar's part included."""
    cake = row.add_g or 0.0
    mine = next((line for line in way.lines if line.line == row.line), None)
    in_jar = way.jar is not None and mine is not None and _is_in_bowl(row, way, found)
    return max(there_g, cake, mine.mass_g if in_jar and mine is not None else 0.0)


def _is_in_bowl(row: Row, way: Way, found: Rescue) -> bool:
    bowl = found.bowl
    if way.is_of_blend:
        return bowl is not None and row.bowl == bowl.key
    plan = None if row.line is None else found.slip.plan_g(row.line)
    return plan is not None and row.kind == "add" and row.bowl in ("dry", "nut")


def _shown(row: Row, running_g: float) -> float | None:
    return round(running_g, 6) if row.kind == "add" else None


def _standing(tare: Row, now_g: float) -> Row:
    """The bowl that stands there with something in it: its scale is not set to 0 any more."""
    name = tare.take.partition(":")[0].removesuffix(" again")
    said = f"{name}: leave the scale as it is, the display shows {as_text(now_g, 2)}"
    return replace(tare, take=said, mark="")


def _already(known: list[Row], there: dict[int, float], now_g: float) -> Row:
    names = [
        f"{row.take} {as_text(there[n], 2)} g" for n, row in enumerate(known) if there[n] > NOISE_G
    ]
    first = known[0]
    kind = "egg" if first.kind == "egg" else "add"
    return replace(
        first,
        kind=kind,
        take=", ".join(names),
        add_g=round(now_g, 6),
        display_g=round(now_g, 6) if kind == "add" else None,
        line=None,
        mark=ALREADY,
    )


def _out(row: Row, out_g: float, cake_g: float, *, is_jar: bool) -> Row:
    return replace(
        row,
        kind="add",
        take="Mix it well, then take out into the labelled jar" if is_jar else "Spoon back out",
        add_g=round(-out_g, 6),
        display_g=round(cake_g, 6),
        line=None,
        mark=TAKE_OUT,
    )
