"""The bench as its page draws it: one panel at a time, and what the script starts from."""

import json
from dataclasses import dataclass
from uuid import uuid4

from krume.base import as_text
from krume.usecases import Bench, BenchSlip, BenchWay, KeptStep, Spot, ground_at_bench
from krume.web.bench.bar import Bar, Part, bar_of
from krume.web.frame.figures import grouped

_SAME_G = 0.05


@dataclass(frozen=True, slots=True)
class Before:
    """The row weighed before: as planned, and what it really was."""

    take: str
    planned: str
    got: str
    is_same: bool


@dataclass(frozen=True, slots=True)
class Out:
    """One way out of a slip, as its button says it."""

    kind: str
    title: str
    shift: str
    adds: tuple[tuple[str, str], ...]
    why: str
    outside: str
    kept: str


@dataclass(frozen=True, slots=True)
class SlipPart:
    """A slip: its sentence, what lies in the bowl, the ways out."""

    text: str
    unit: str
    bar: Bar | None
    held: tuple[tuple[str, str], ...]
    back: str
    outs: tuple[Out, ...]


@dataclass(frozen=True, slots=True)
class BenchPage:
    """The one panel that is shown, and everything in it.

    Panels: `tare`, `add`, `number` (an egg, an unknown, or a display that says something else),
    `slip`, `done`. `undo` is the id of the step that can be taken back.
    """

    name: str
    title: str
    address: str
    key: str
    client_id: str
    version: int
    panel: str
    progress: str
    position: int
    kind: str
    label: str
    again: bool
    display: str
    size: str
    take: str
    add: str
    mark: str
    about: str
    bar: Bar | None
    before: Before | None
    undo: str
    undo_kind: str
    chosen: str
    jar: str
    slip: SlipPart | None
    total: str
    total_size: str
    is_begun: bool
    asks: tuple[str, ...]
    state: str
    typed: str = ""
    wrong: str = ""


def shown(bench: Bench, address: str, *, other: bool = False, typed: str = "",
          wrong: str = "") -> BenchPage:  # fmt: skip
    """The page of a weighing; `other` opens the number box of the row."""
    found = bench.found
    at = found.now
    spot = None if at is None else found.spots[at]
    return BenchPage(
        name=bench.plan.name,
        title=bench.plan.title,
        address=address,
        key=bench.key or uuid4().hex,
        client_id=uuid4().hex,
        version=bench.plan.revision,
        panel=_panel(bench, spot, other=other or bool(wrong)),
        progress=_progress(bench, spot),
        position=-1 if at is None else at,
        kind="" if spot is None else spot.row.kind,
        label="" if spot is None else spot.row.label,
        again=bool(
            spot and at is not None and (spot.row.take.find(" again:") > 0 or at in found.base_g)
        ),
        display=_display(bench, at),
        size=size_of(_display(bench, at)),
        take="" if spot is None else spot.row.take,
        add="" if at is None else grams_of(found.add_g(at)),
        mark="" if spot is None else spot.row.mark,
        about="" if spot is None or spot.target_g is None else grams_of(found.add_g(at or 0)),
        bar=None if spot is None else bar_of(_parts(bench, spot)),
        before=_before(found.before, bench),
        undo="" if found.last is None else found.last.client_id,
        undo_kind="" if found.last is None else found.last.kind,
        chosen="" if found.chosen is None else json.loads(found.chosen.said)["say"],
        jar=_jar(bench, spot),
        slip=None if bench.slip is None else slip_part(bench, bench.slip),
        total=(total := _total(bench)),
        total_size=size_of(total),
        is_begun=bench.is_begun,
        asks=bench.plan.asks,
        state=json.dumps(state_of(bench), ensure_ascii=False, separators=(",", ":")),
        typed=typed,
        wrong=wrong,
    )


def _is_again(bench: Bench, at: int | None) -> bool:
    """Whether the bowl stands on the scale already, or comes back to it."""
    if at is None:
        return False
    return " again:" in bench.plan.rows[at].take or at in bench.found.base_g


def _panel(bench: Bench, spot: Spot | None, *, other: bool) -> str:
    if bench.slip is not None:
        return "slip"
    if spot is None:
        return "done"
    if spot.row.kind == "tare":
        return "tare"
    return "number" if other or spot.row.kind != "add" else "add"


def _progress(bench: Bench, spot: Spot | None) -> str:
    """The bowl, and which of its rows it is."""
    if bench.slip is not None:
        spot = bench.found.spots[bench.slip.position]
    if spot is None:
        return "all in"
    if spot.row.kind == "tare":
        return spot.row.label
    mine = [s for s in bench.found.spots if s.row.bowl == spot.row.bowl and s.row.kind != "tare"]
    return f"{spot.row.label}, {mine.index(spot) + 1} of {len(mine)}"


def _display(bench: Bench, at: int | None) -> str:
    if at is None or bench.found.spots[at].row.kind == "tare":
        return "0"
    value = bench.found.display_g(at)
    return "" if value is None else grams_of(value, bench.found.spots[at].row.step_g)


def grams_of(value: float | None, step_g: float = 0.1) -> str:
    """Grams as the scale shows them; one that a scale does not weigh well keeps its digits.

    >>> grams_of(136.5), grams_of(96.0), grams_of(0.25, 0.01), grams_of(96.4, 1.0)
    ('136.5', '96', '0.25', '96')
    """
    if value is None:
        return "not known"
    digits = 0 if step_g >= 1 else 1 if step_g >= 0.1 or value >= 1 else 2
    return grouped(value, digits)


def size_of(display: str) -> str:
    """How wide a number is, for the size of its type."""
    sizes = ((2, ""), (3, "three"), (5, "five"))
    return next((name for most, name in sizes if len(display) <= most), "seven")


def _parts(bench: Bench, spot: Spot) -> tuple[Part, ...]:
    same = (s for s in bench.found.spots if s.row.group == spot.row.group and s.row.kind != "tare")
    return tuple(Part(s.held_g, s.target_g or 0.0, s is spot) for s in same)


def _before(step: KeptStep | None, bench: Bench) -> Before | None:
    if step is None or step.position is None:
        return None
    spot = bench.found.spots[step.position]
    planned, got = spot.row.add_g, step.got_g
    near = spot.row.tolerance_g if spot.row.kind == "egg" else _SAME_G
    same = planned is not None and got is not None and abs(got - planned) < near
    shown_g = "not weighed" if got is None else grams_of(got)
    return Before(spot.row.take, "" if planned is None else grams_of(planned), shown_g, same)


def _total(bench: Bench) -> str:
    """What goes into the cake: all that was weighed, without what a slip put into a jar."""
    steps = (s for s in reversed(bench.steps) if s.kind == "choose" and not s.is_undone)
    jars = (json.loads(step.said).get("jar_g") for step in steps)
    kept = next((jar_g for jar_g in jars if jar_g), 0.0)
    return grouped(sum(s.held_g for s in bench.found.spots) - kept, 1)


def _jar(bench: Bench, spot: Spot | None) -> str:
    """What goes into a jar, said when its bowl is full."""
    for step in reversed(bench.steps):
        if step.kind != "choose" or step.is_undone or step.position is None:
            continue
        said = json.loads(step.said)
        group = bench.found.spots[step.position].row.group
        rows = [s for s in bench.found.spots if s.row.group == group and s.row.kind != "tare"]
        is_next = spot is None or (
            spot.row.kind == "tare" and spot.row.position == rows[-1].row.position + 1
        )
        if said.get("jar_g") and is_next and all(s.is_done for s in rows):
            return f"Sift it twice, then put {as_text(said['jar_g'], 1)} g of it in a labelled jar."
    return ""


def slip_part(bench: Bench, slip: BenchSlip) -> SlipPart:
    """A slip in its sentence, with the ways out as buttons."""
    spot = bench.found.spots[slip.position]
    name = f"{slip.name[:1].upper()}{slip.name[1:]}"
    wrong = "over" if slip.over_g else "short, and there is no more"
    off = grams_of(slip.over_g or slip.short_g)
    held = tuple(
        (s.row.name, grams_of(s.got_g))
        for s in bench.found.spots
        if s.row.bowl == spot.row.bowl and s.got_g is not None
    )
    back = "" if slip.back_g is None else grams_of(slip.back_g)
    outs = tuple(_out(way) for way in slip.ways)
    unit = "points" if slip.in_points else "%"
    return SlipPart(
        f"{name} is {off} g {wrong}.", unit, bar_of(_parts(bench, spot)), held, back, outs
    )


def _out(way: BenchWay) -> Out:
    return Out(
        kind=way.kind,
        title=way.title,
        shift=as_text(way.shift_pct, 1),
        adds=tuple((name, f"+{grams_of(mass)}") for name, mass in way.adds),
        why=way.why,
        outside=way.outside,
        kept=way.kept,
    )


def state_of(bench: Bench) -> dict[str, object]:
    """What the script starts from: rows, steps, and the ground of the closed forms."""
    return {
        "key": bench.key,
        "state": bench.state,
        "now": bench.now_utc,
        "version": bench.plan.revision,
        "rows": [
            {"position": r.position, "kind": r.kind, "bowl": r.bowl, "label": r.label,
             "take": r.take, "name": r.name, "group": r.group, "line": r.line, "add_g": r.add_g,
             "step_g": r.step_g, "tolerance_g": r.tolerance_g, "mark": r.mark}
            for r in bench.plan.rows
        ],
        "steps": [_said(step) for step in bench.steps],
        "slip": None if bench.slip is None else _slip_json(bench, bench.slip),
        "ground": ground_at_bench(bench),
    }  # fmt: skip


def _slip_json(bench: Bench, slip: BenchSlip) -> dict[str, object]:
    part = slip_part(bench, slip)
    return {
        "position": slip.position,
        "unit": part.unit,
        "back": part.back,
        "outs": [
            {"kind": o.kind, "title": o.title, "shift": o.shift, "adds": o.adds, "why": o.why,
             "outside": o.outside, "kept": json.loads(o.kept)}
            for o in part.outs
        ],
    }  # fmt: skip


def _said(step: KeptStep) -> dict[str, object]:
    return {
        "id": step.client_id,
        "kind": step.kind,
        "position": step.position,
        "got_g": step.got_g,
        "display_g": step.display_g,
        "of": step.of,
        "undone": step.is_undone,
        "said": json.loads(step.said) if step.said else None,
    }
