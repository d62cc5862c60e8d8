"""The clocks at the bench: minutes since the last whisk stroke, minutes in the oven."""

from dataclasses import dataclass
from uuid import uuid4

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError, Interval, as_text, heat_text
from krume.usecases import (
    REASONS,
    Asked,
    Awaited,
    BenchClock,
    BenchClocks,
    clocks_at_bench,
    start_at_bench,
    stop_at_bench,
)
from krume.web.bench.addresses import address_of, to
from krume.web.bench.beside import small_state
from krume.web.bench.showing import size_of
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page


@dataclass(frozen=True, slots=True)
class Limit:
    """What is said from a minute on: other words, another shape, another ground."""

    minutes: float
    glyph: str
    stage: str
    text: str
    is_now: bool


@dataclass(frozen=True, slots=True)
class Run:
    """A clock as it runs, or as it would: its sentence, minutes so far, and what its limits say."""

    kind: str
    say: str
    minutes: str
    size: str
    stage: str
    limits: tuple[Limit, ...]


@dataclass(frozen=True, slots=True)
class ClockPage:
    """The one panel that is shown, and those its script may come to without the network.

    Panels: the kind of the clock that runs, `idle`, or `choosing` why a foam may begin beside an
    occupied oven.
    """

    name: str
    title: str
    address: str
    key: str
    client_id: str
    panel: str
    corner: str
    beside: str
    runs: tuple[Run, ...]
    kind: str
    begin: str
    busy: str
    reasons: tuple[str, ...]
    take: str
    after: str
    state: str


def clock(request: Request) -> Response:
    """The clock as it runs."""
    found = clocks_at_bench(request.path_params["name"], asked_of(request))
    return _page(request, found, choosing="anyway" in request.query_params)


def _page(request: Request, found: BenchClocks, *, choosing: bool, status: int = 200) -> Response:
    context = _context(found, asked_of(request), choosing=choosing)
    return page(request, "bench/clock.html", context, title=f"Clock, {context.title}",
                status=status)  # fmt: skip


def _context(found: BenchClocks, asked: Asked, *, choosing: bool) -> ClockPage:
    plan = found.bench.plan
    running = found.running("oven") or found.running("foam") or found.running("batter")
    kind = "foam" if found.whites_min else "batter" if found.batter_min else "oven"
    kinds = dict.fromkeys((kind, *(() if running is None else (running.kind,)), "oven"))
    choosing = choosing and found.busy is not None and running is None
    begins = {"foam": "Whisk is out", "batter": "Whisk is out", "oven": "In the oven"}
    return ClockPage(
        name=plan.name,
        title=plan.title,
        address=address_of(plan.name),
        key=found.bench.key or uuid4().hex,
        client_id=uuid4().hex,
        panel=running.kind if running else "choosing" if choosing else "idle",
        corner="in the oven" if running and running.kind == "oven" else "the clock",
        beside=_beside(found, running),
        runs=tuple(_run(found, each, running) for each in kinds),
        kind=kind,
        begin=begins[kind],
        busy=_busy(found.busy) if running is None and kind != "oven" else "",
        reasons=REASONS,
        take="Begin at the last whisk stroke." if kind != "oven" else "Begin when its door shuts.",
        after=_where(found),
        state=small_state(found.bench, asked),
    )


def _run(found: BenchClocks, kind: str, running: BenchClock | None) -> Run:
    """A kind of clock; one that does not run has no minutes and says nothing yet."""
    is_on = running is not None and running.kind == kind
    minutes = running.minutes if running is not None and is_on else 0.0
    limits = _limits(found, kind, minutes if is_on else None)
    now = next((x for x in limits if x.is_now), None)
    shown = str(int(minutes))
    return Run(
        kind=kind,
        say="Minutes in the oven" if kind == "oven" else "Minutes since the last whisk stroke",
        minutes=shown,
        size=size_of(f"{shown}m"),  # its unit is wider than the gram
        stage="" if now is None else now.stage,
        limits=limits,
    )


def _limits(found: BenchClocks, kind: str, minutes: float | None) -> tuple[Limit, ...]:
    """The family's own limits in the words of the moment; None for a clock that does not run."""
    if kind == "oven":
        own = found.bench.plan.formula.core_c
        core = "" if own is None else f"A core of {heat_text(own, found.units, 1)} says it is done."
        if own is None and found.core_low_c is not None and found.core_high_c is not None:
            low, high = found.core_low_c, found.core_high_c
            span = heat_text(Interval(low, (low + high) / 2, high), found.units, 1)
            core = f"A core of {span} says it is done."
        raw = _oven_limits(found.awaited, core or "Judge it by its spring.")
    else:
        raw = []
        whites, batter = found.whites_min, found.batter_min
        if kind == "foam" and whites is not None:
            raw.append((0.0, "bowl", "", f"Fold the whites in within {as_text(whites)} minutes."))
            raw.append((whites, "outside", "late", "The whites lose air. Fold now."))
        elif batter is not None:
            raw.append((0.0, "bowl", "", f"Into the oven within {as_text(batter)} minutes."))
        if batter is not None:
            raw.append((batter, "clash", "gone", "Past its time. Into the oven at once."))
    if minutes is None:
        return tuple(Limit(*each, is_now=False) for each in raw)
    last = max((n for n, each in enumerate(raw) if each[0] <= minutes), default=0)
    return tuple(Limit(*each, is_now=n == last) for n, each in enumerate(raw))


def _oven_limits(awaited: Awaited | None, core: str) -> list[tuple[float, str, str, str]]:
    """First check and latest out of the model, as at the oven; without them the core alone."""
    if awaited is None:
        return [(0.0, "inside", "", core)]
    check, latest = as_text(awaited.check_min, 0), as_text(awaited.latest_min, 0)
    return [
        (0.0, "inside", "", f"First check at {check} min, latest out at {latest}. {core}"),
        (awaited.check_min, "outside", "late", f"Check it now; latest out at {latest}. {core}"),
        (awaited.latest_min, "clash", "gone", f"Past the latest out. Look at it now. {core}"),
    ]


def _busy(busy: BenchClock | None) -> str:
    return "" if busy is None else f"The oven is occupied since {int(busy.minutes)} minutes."


def _beside(found: BenchClocks, running: BenchClock | None) -> str:
    """What else is to be known beside the clock that runs."""
    if running is None or running.kind == "oven":
        return ""
    said = f"Begun although the oven was occupied: {running.reason}. " if running.reason else ""
    return f"{said}{_where(found)}"


def _where(found: BenchClocks) -> str:
    """Where the load goes: the oven's own line of the formula, and its tin."""
    formula = found.bench.plan.formula
    oven = formula.oven
    heat = ""
    if oven is not None and oven.temp_c is not None:
        heat = f"Oven {heat_text(oven.temp_c, found.units)}"
    tin = "" if formula.tin is None else " ".join(formula.tin.read.split())
    return ", ".join(x for x in (heat, tin) if x) + ("." if heat or tin else "")


async def change(request: Request) -> Response:
    """Start or stop a clock."""
    form = await read_form(request)
    return await run_in_threadpool(_change, request, form)


def _change(request: Request, form: Form) -> Response:
    name, asked = request.path_params["name"], asked_of(request)
    address = address_of(name)
    if form.get("stop") or form.get("out"):
        stop_at_bench(name, asked, kind=form.get("stop") or form.get("out"))
        return to(f"{address}/end" if form.get("out") else f"{address}/clock")
    try:
        start_at_bench(
            name, form.get("key"), asked, kind=form.get("start"), client_id=form.get("id"),
            reason=form.get("reason"),
        )  # fmt: skip
    except InputError as error:
        if error.field != "reason":
            raise
        found = clocks_at_bench(name, asked)
        return _page(request, found, choosing=True, status=error.http_status)
    return to(f"{address}/clock")


ROUTES = (
    Route("/bench/{name}/clock", clock, methods=["GET"]),
    Route("/bench/{name}/clock", change, methods=["POST"]),
)
