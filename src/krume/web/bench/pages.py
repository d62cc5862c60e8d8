"""The bench's own page: one row at a time, said by forms or by the script, kept once."""

import json
from dataclasses import dataclass
from pathlib import Path
from uuid import uuid4

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import FileResponse, JSONResponse, Response
from starlette.routing import Route

from krume.base import ConflictError, InputError, KrumeError
from krume.usecases import (
    Bench,
    BenchSaid,
    ClockSaid,
    CupSaid,
    EndSaid,
    bench_of,
    hear_at_bench,
    say_at_bench,
    set_aside,
)
from krume.web.bench.addresses import address_of, to
from krume.web.bench.beside import said_beside, whole_state
from krume.web.bench.clock_pages import ROUTES as CLOCK
from krume.web.bench.cup_pages import ROUTES as CUP
from krume.web.bench.showing import shown
from krume.web.bench.trial_pages import ROUTES as TRIALS
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page

_MOST_SAID = 500
_WORKER = Path(__file__).parent.parent / "static" / "bench-worker.js"


def bench(request: Request) -> Response:
    """The weighing where it stands."""
    other = "else" in request.query_params
    return _page(request, bench_of(request.path_params["name"], asked_of(request)), other=other)


def _page(
    request: Request, found: Bench, *, other: bool = False, typed: str = "", wrong: str = "",
    status: int = 200,
) -> Response:  # fmt: skip
    context = shown(found, address_of(found.plan.name), other=other, typed=typed, wrong=wrong)
    title = f"Weigh {found.plan.title}"
    return page(request, "bench/bench.html", context, title=title, status=status)


async def say(request: Request) -> Response:
    """One step by a form."""
    form = await read_form(request)
    return await run_in_threadpool(_say, request, form)


def _say(request: Request, form: Form) -> Response:
    name, asked = request.path_params["name"], asked_of(request)
    try:
        said = BenchSaid(
            client_id=form.get("id") or uuid4().hex,
            kind=form.get("kind"),
            position=form.whole("position"),
            display_g=_grams(form.get("shows")) if form.get("kind") == "got" else None,
            way=form.get("way"),
            of=form.get("of"),
            version=form.whole("version"),
        )
        say_at_bench(name, form.get("key"), (said,), asked)
    except (InputError, ConflictError) as error:
        found = bench_of(name, asked)
        return _page(
            request, found, typed=form.get("shows"), wrong=error.message, status=error.http_status
        )
    return to(address_of(name))


def _grams(text: str) -> float:
    plain = text.strip().replace(",", ".").removesuffix("g").strip()
    try:
        return float(plain)
    except ValueError:
        message = "Type what the display shows, a number such as 96 or 96.5."
        raise InputError(message, field="shows", got=text) from None


async def said(request: Request) -> Response:
    """Steps the script said, in their order; each is kept once, and the state comes back."""
    try:
        sent = json.loads(await request.body())
        key, many = _sent(sent)
    except (ValueError, KeyError, TypeError, AttributeError, OverflowError, RecursionError):
        return JSONResponse({"wrong": "That was not understood. Nothing was kept."}, 422)
    return await run_in_threadpool(_answer, request, key, many)


Said = BenchSaid | CupSaid | ClockSaid | EndSaid


def _sent(sent: object) -> tuple[str, tuple[Said, ...]]:
    if not isinstance(sent, dict) or not isinstance(sent["said"], list):
        raise TypeError
    many = sent["said"][:_MOST_SAID]
    return str(sent["key"]), tuple(_one(each) for each in many)


def _one(each: object) -> Said:
    if not isinstance(each, dict):
        raise TypeError
    beside = said_beside(each)
    if beside is not None:
        return beside
    position, display, version = (each.get(n) for n in ("position", "display_g", "version"))
    return BenchSaid(
        client_id=str(each["id"]),
        kind=str(each["kind"]),
        position=position if isinstance(position, int) else None,
        display_g=float(display) if isinstance(display, int | float) else None,
        way=str(each.get("way") or ""),
        of=str(each.get("of") or ""),
        version=version if isinstance(version, int) else None,
    )


def _answer(request: Request, key: str, many: tuple[Said, ...]) -> Response:
    asked = asked_of(request)
    try:
        found = hear_at_bench(request.path_params["name"], key, many, asked)
    except KrumeError as error:
        return JSONResponse({"wrong": error.message, "field": error.field}, error.http_status)
    return JSONResponse(whole_state(found, asked))


def state(request: Request) -> Response:
    """The weighing as it stands, for a page that is open already."""
    asked = asked_of(request)
    return JSONResponse(whole_state(bench_of(request.path_params["name"], asked), asked))


async def aside(request: Request) -> Response:
    """Set a weighing aside and begin anew."""
    await read_form(request)
    await run_in_threadpool(set_aside, request.path_params["name"], asked_of(request))
    return to(address_of(request.path_params["name"]))


@dataclass(frozen=True, slots=True)
class AwayPage:
    """A bench that was never opened on this device, while the network is gone."""

    title: str


def away(request: Request) -> Response:
    """What still works, for a page that cannot be had."""
    title = "Not on this phone"
    return page(request, "bench/away.html", AwayPage(title), title=title)


def worker(_: Request) -> Response:
    """The script that answers for the bench without the network: it must stand above its pages."""
    return FileResponse(_WORKER, media_type="text/javascript")


ROUTES = (
    Route("/bench-worker.js", worker, methods=["GET"]),
    Route("/offline", away, methods=["GET"]),
    Route("/bench/{name}", bench, methods=["GET"]),
    Route("/bench/{name}/say", say, methods=["POST"]),
    Route("/bench/{name}/said", said, methods=["POST"]),
    Route("/bench/{name}/state", state, methods=["GET"]),
    Route("/bench/{name}/aside", aside, methods=["POST"]),
    *CLOCK,
    *CUP,
    *TRIALS,
)
