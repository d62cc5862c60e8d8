"""The ways out of a slip at the bench, and what each row comes to by the one that is chosen."""

import json
import math
from dataclasses import dataclass

from krume.base import as_text
from krume.design import (
    GROWING,
    Formula,
    Rescue,
    Slip,
    Way,
    at_masses,
    egg_words,
    rescue,
)
from krume.store import KeptStep
from krume.usecases.bench.plan import BenchPlan
from krume.usecases.bench.state import NOISE_G, Spot, Standing

_OFF_CARD = ("scale", "scale-exact", "down", "follow")


@dataclass(frozen=True, slots=True)
class BenchWay:
    """One way as the bench shows it: the grams still to add, and one sentence.

    `kept` is what a choice of it keeps, as JSON.
    """

    kind: str
    title: str
    shift_pct: float
    adds: tuple[tuple[str, float], ...]
    why: str
    outside: str
    in_band: bool
    kept: str


@dataclass(frozen=True, slots=True)
class BenchSlip:
    """A slip at the bench: whose it is, how much, and the ways out, best first."""

    position: int
    name: str
    over_g: float
    short_g: float
    in_points: bool
    back_g: float | None
    ways: tuple[BenchWay, ...]


def rescue_at(plan: BenchPlan, found: Standing, steps: tuple[KeptStep, ...]) -> Rescue:
    """Every way out of what lies in the bowls now."""
    formula = card_now(plan.formula, steps)
    weighed: list[float | None] = [None] * len(formula.lines)
    for spot in found.spots:
        if spot.row.line is not None and spot.got_g is not None:
            weighed[spot.row.line] = (weighed[spot.row.line] or 0.0) + spot.got_g
    closed = {s.row.line for s in found.spots if s.is_closed and s.row.line is not None}
    for line in closed:
        weighed[line] = weighed[line] or 0.0
    return rescue(Slip(formula, tuple(weighed), closed=frozenset(closed), step_g=plan.step_g))


def card_now(formula: Formula, steps: tuple[KeptStep, ...]) -> Formula:
    """The formula, or what a way that changed the cake's size made of it."""
    gone = {step.client_id for step in steps if step.is_undone}
    for step in reversed(steps):
        if step.kind == "choose" and not step.is_undone and step.of not in gone:
            card = json.loads(step.said or "{}").get("card")
            if card:
                return at_masses(formula, card)
    return formula


def bench_slip(found: Standing, ways: Rescue) -> BenchSlip | None:
    """The slip with its ways, at most three; None where nothing went wrong."""
    if found.slip is None:
        return None
    spot = found.spots[found.slip]
    line = spot.row.line
    in_points = ways.bowl is not None and line in ways.bowl.lines
    back = spot.over_g if line in ways.alone and spot.over_g else None
    shown = tuple(_shown(found, ways, way) for way in ways.options)
    return BenchSlip(
        spot.row.position, spot.row.name, spot.over_g, spot.short_g, in_points, back, shown
    )


def _shown(there: Standing, found: Rescue, way: Way) -> BenchWay:
    lines = found.slip.lines
    new = [] if way.in_band else [f for f in way.findings if f not in found.plan.findings]
    return BenchWay(
        kind=way.kind,
        title=_title(way),
        shift_pct=way.worst_shift_pct,
        adds=tuple((lines[each.line].name, each.add_g) for each in way.adding),
        why=_why(found, way),
        outside=" ".join(each.text.partition(". ")[0].rstrip(".") + "." for each in new),
        in_band=way.in_band,
        kept=_kept(found, way, there),
    )


def _title(way: Way) -> str:
    """A way in as few words as a glance takes in."""
    short = {
        "jar": "Same blend, more of it",
        "leave": "Leave it as it is",
        "hold": f"Hold the total at {as_text(way.total_g, 1)}",
        "hold-in-band": "Same total, in every usual range",
        "scale": f"All of it larger, ×{as_text(way.factor, 4)}",
        "scale-exact": f"All of it larger, ×{as_text(way.factor, 4)}",
    }
    return short.get(way.kind, way.title)


def _why(found: Rescue, way: Way) -> str:
    """The way in one sentence."""
    total = as_text(way.total_g, 1)
    if way.kind == "jar" and way.jar is not None:
        use = as_text(way.total_g - way.jar.mass_g, 1)
        return f"{total} g in all: use {use}, put {as_text(way.jar.mass_g, 1)} g in a jar."
    if way.kind in ("hold", "hold-in-band"):
        return f"The blend stays {total} g."
    if way.kind in GROWING:
        egg = f"Eggs: {egg_words(way.eggs)}." if way.eggs.mass_g else ""
        return egg or f"All of it ×{as_text(way.factor, 4)}."
    if way.kind == "leave" and way.lines and way.lines[0].share_pct is not None:
        return f"Comes to {total} g." + (_all_else(way) if way.in_band else "")
    return "All else as planned." if found.slip.over else "Weigh the rest as planned."


def _all_else(way: Way) -> str:
    if way.unknown:
        return f" All else stays; not known: {', '.join(word.lower() for word in way.unknown)}."
    return " All else stays, in band."


def choice_of(
    plan: BenchPlan, found: Standing, steps: tuple[KeptStep, ...], kind: str
) -> KeptStep | None:
    """The step that keeps a choice: each row's grams, and the way back; None for no such way."""
    if found.slip is None:
        return None
    ways = rescue_at(plan, found, steps)
    way = next((w for w in ways.ways if w.kind == kind), None)
    if way is None:
        return None
    spot = found.spots[found.slip]
    return KeptStep(
        client_id="",
        kind="choose",
        position=found.slip,
        line=spot.row.line,
        said=_kept(ways, way, found),
        of=_wrong(found.slip, steps),
    )


def _kept(ways: Rescue, way: Way, found: Standing) -> str:
    """What a choice keeps: each row's grams, its words, and the card where its size changed."""
    targets = targets_of(ways, way, found.spots)
    said: dict[str, object] = {
        "kind": way.kind,
        "title": way.title,
        "say": _said(way),
        "targets": {str(at): mass for at, mass in targets.items()},
        "jar_g": None if way.jar is None else way.jar.mass_g,
    }
    if way.kind in _OFF_CARD:
        said["card"] = way.card_g
    return json.dumps(said, ensure_ascii=False)


def _wrong(position: int, steps: tuple[KeptStep, ...]) -> str:
    """The step by which a row went wrong: with it, the choice is taken back too."""
    mine = (s for s in reversed(steps) if s.position == position and not s.is_undone)
    return next((s.client_id for s in mine if s.kind in ("got", "in", "no-more")), "")


def _said(way: Way) -> str:
    if way.jar is not None and way.kind == "jar":
        return f"Card corrected. Put {as_text(way.jar.mass_g, 1)} g in a jar."
    return f"Card corrected: {way.title[:1].lower()}{way.title[1:]}."


def targets_of(found: Rescue, way: Way, spots: tuple[Spot, ...]) -> dict[int, float]:
    """What each row comes to by a way, jars included."""
    of_bowl = bool(way.lines) and way.lines[0].share_pct is not None
    bowl = found.bowl.key if of_bowl and found.bowl is not None else None
    inside = {each.line: each.mass_g for each in way.lines}
    targets: dict[int, float] = {}
    for line, card in enumerate(way.card_g):
        rows = [s for s in spots if s.row.line == line and s.row.add_g is not None]
        within = [s for s in rows if of_bowl and s.row.bowl == bowl and line in inside]
        beside = [s for s in rows if s not in within]
        targets |= _in_measure(within, inside.get(line, 0.0))
        end = card or 0.0
        if not of_bowl:
            end = inside.get(line, end)
        if within:
            plan = math.fsum(s.row.add_g or 0.0 for s in within)
            end -= plan if way.kind == "jar" else inside[line]
        targets |= (_in_measure if way.kind in GROWING else _of_rest)(beside, max(0.0, end))
    return targets


def _in_measure(spots: list[Spot], end_g: float) -> dict[int, float]:
    """An end shared out over rows as they were planned."""
    plan = math.fsum(s.row.add_g or 0.0 for s in spots)
    if not plan:
        return {}
    return {s.row.position: round(end_g * (s.row.add_g or 0.0) / plan, 6) for s in spots}


def _of_rest(spots: list[Spot], end_g: float) -> dict[int, float]:
    """What is done stays as it is; the rest of the end goes to the rows still open."""
    still = [s for s in spots if not s.is_done]
    done = {s.row.position: s.held_g for s in spots if s.is_done}
    rest = max(0.0, end_g - math.fsum(done.values()))
    if still:
        return done | _in_measure(still, rest)
    if rest > NOISE_G and spots:
        done[spots[-1].row.position] += rest
    return done
