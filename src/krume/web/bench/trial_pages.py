"""The trial a bake ends as, all of them in a list, and each with what was weighed for it."""

import json
from dataclasses import dataclass, replace
from itertools import groupby
from uuid import uuid4

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import ConflictError, as_text
from krume.usecases import (
    BenchClocks,
    KeptTrial,
    TrialRow,
    bench_of,
    clocks_at_bench,
    drafted,
    edit_trial,
    end_as_trial,
    trial_counts,
    trial_limits,
    trial_numbers,
    trial_row,
    trial_rows,
    trial_sheet,
    weighing_of,
)
from krume.web.bench.addresses import address_of, to
from krume.web.bench.beside import small_state
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page


@dataclass(frozen=True, slots=True)
class EndPage:
    """The boxes of a bake that ends now."""

    name: str
    title: str
    address: str
    key: str
    trial: str
    form: Form
    is_open: bool
    limits: str
    state: str


@dataclass(frozen=True, slots=True)
class TrialsPage:
    """Trials by formula, and those of the book's own table."""

    formula: str
    bench: str
    rows: tuple[TrialRow, ...]
    groups: tuple[tuple[str, tuple[TrialRow, ...]], ...]
    heads: tuple[str, ...]
    sheet: tuple[dict[str, str], ...]


@dataclass(frozen=True, slots=True)
class Weighed:
    """A row of a weighing as planned and as it was."""

    bowl: str
    take: str
    planned_g: float | None
    got_g: float | None
    is_weighed: bool


@dataclass(frozen=True, slots=True)
class TrialPage:
    """One trial: its weighing, its clocks, its measures in boxes."""

    title: str
    row: TrialRow
    weighed: tuple[Weighed, ...]
    clocks: tuple[str, ...]
    form: Form
    is_open: bool
    conflict: str
    oven: str


def end(request: Request) -> Response:
    """The boxes, with what the clocks and the cup know already."""
    name, asked = request.path_params["name"], asked_of(request)
    return _end(request, Form({**drafted(name, asked), "trial": uuid4().hex}))


def _end(request: Request, form: Form, *, status: int = 200) -> Response:
    bench = bench_of(request.path_params["name"], asked_of(request))
    context = EndPage(
        name=bench.plan.name,
        title=bench.plan.title,
        address=address_of(bench.plan.name),
        key=form.get("key") or bench.key or uuid4().hex,
        trial=form.get("trial") or uuid4().hex,
        form=form,
        is_open=False,
        limits=json.dumps(trial_limits(), ensure_ascii=False, separators=(",", ":")),
        state=small_state(bench, asked_of(request)),
    )
    title = f"Write down {context.title}"
    return page(request, "bench/end.html", context, title=title, status=status)


async def keep(request: Request) -> Response:
    """Keep the trial; its weighing is done with it."""
    form = await read_form(request)
    return await run_in_threadpool(_keep, request, form)


def _keep(request: Request, form: Form) -> Response:
    _, wrong = trial_numbers(form.values)
    if wrong:
        return _end(request, replace(form, wrong=wrong), status=422)
    kept = end_as_trial(
        request.path_params["name"], form.get("key"), asked_of(request),
        key=form.get("trial") or uuid4().hex, typed=form.values,
    )  # fmt: skip
    return to(f"/trials/{kept.key}")


def trials(request: Request) -> Response:
    """All trials, or those of one formula."""
    formula = request.query_params.get("formula", "").strip()
    rows = trial_rows(asked_of(request), formula=formula)
    ordered = sorted(rows, key=lambda row: row.formula)
    groups = tuple((n, tuple(x)) for n, x in groupby(ordered, key=lambda row: row.formula))
    sheet = trial_sheet(asked_of(request), formula=formula)
    heads = tuple(sheet[0]) if sheet else ()
    context = TrialsPage(formula, address_of(formula), rows, groups, heads, sheet)
    return page(request, "bench/trials.html", context, title="Trials", section="trials")


def trial(request: Request) -> Response:
    """One trial."""
    row = trial_row(request.path_params["key"], asked_of(request))
    return _trial(request, row, _form(row.trial))


def _trial(
    request: Request, row: TrialRow, form: Form, *, conflict: str = "", status: int = 200
) -> Response:
    asked, kept = asked_of(request), row.trial
    weighing = kept.weighing if row.has_plan else None
    clocks = None if weighing is None else clocks_at_bench("", asked, key=weighing)
    weighed = () if weighing is None else _weighed(request, weighing)
    title = row.formula if clocks is None else clocks.bench.plan.title
    context = TrialPage(
        title, row, weighed, _clocks(clocks), form, is_open=True, conflict=conflict,
        oven=trial_counts(kept.key, asked),
    )  # fmt: skip
    return page(
        request, "bench/trial.html", context, title=f"{title}, {kept.at}", section="trials",
        status=status,
    )  # fmt: skip


def _weighed(request: Request, key: str) -> tuple[Weighed, ...]:
    bench = weighing_of(key, asked_of(request))
    said = {s.position for s in bench.steps if not s.is_undone and s.kind in ("in", "got")}
    return tuple(
        Weighed(s.row.label, s.row.take, s.row.add_g, s.got_g, s.row.position in said)
        for s in bench.found.spots
        if s.row.kind != "tare"
    )


def _clocks(found: BenchClocks | None) -> tuple[str, ...]:
    if found is None:
        return ()
    return tuple(
        f"{each.kind} {as_text(each.minutes, 0)} min"
        + ("" if each.stopped_at else ", still running")
        + (f" ({each.reason})" if each.reason else "")
        for each in found.clocks
    )


def _form(kept: KeptTrial) -> Form:
    numbers = {
        "centre": kept.centre_mm, "core": kept.core_c, "edge": kept.edge_mm,
        "minutes": kept.minutes, "baked": kept.baked_g, "sg": kept.sg,
    }  # fmt: skip
    typed = {name: "" if value is None else as_text(value, 3) for name, value in numbers.items()}
    return Form({**typed, "word": kept.word, "note": kept.note})


async def save(request: Request) -> Response:
    """A new version of a trial; where another was kept meanwhile, both are shown."""
    form = await read_form(request)
    return await run_in_threadpool(_save, request, form)


def _save(request: Request, form: Form) -> Response:
    key, asked = request.path_params["key"], asked_of(request)
    _, wrong = trial_numbers(form.values)
    if wrong:
        return _trial(request, trial_row(key, asked), replace(form, wrong=wrong), status=422)
    try:
        edit_trial(key, asked, typed=form.values, seen=form.whole("seen") or 0)
    except ConflictError as error:
        row = trial_row(key, asked)
        words = f"{error.message} Kept: {_plain(row.trial)}. Yours stands in the boxes."
        return _trial(request, row, form, conflict=words, status=409)
    return to(f"/trials/{key}")


def _plain(kept: KeptTrial) -> str:
    """A trial in one line, for the one who looks at both."""
    said = [f"{name} {value}" for name, value in _form(kept).values.items() if value]
    return ", ".join(said) or "nothing measured"


ROUTES = (
    Route("/bench/{name}/end", end, methods=["GET"]),
    Route("/bench/{name}/end", keep, methods=["POST"]),
    Route("/trials", trials, methods=["GET"]),
    Route("/trials/{key}", trial, methods=["GET"]),
    Route("/trials/{key}", save, methods=["POST"]),
)
