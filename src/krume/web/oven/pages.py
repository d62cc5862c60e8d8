"""The oven view at the counter: what to touch next, one line of time, one tap in and out."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from uuid import uuid4

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import InputError, KrumeError, as_text
from krume.usecases import (
    Asked,
    Load,
    OvenChoice,
    OvenChoices,
    OvenView,
    choice_for_oven,
    others_if_in,
    oven_choices,
    oven_view,
    probe_load,
    put_back,
    put_in,
    take_out,
    time_load,
    tins_at_hand,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page

_SEE_OTHER = 303
_COUNTS = (1, 2, 3, 4)
_AT = "/oven"
_WORDS = {
    "check": ("min", "to the first check", "of load {}"),
    "latest": ("min", "to the latest out", "check now: load {}"),
    "over": ("min", "past the latest out", "look now: load {}"),
    "core": ("min", "about, to the core", "of load {}"),
    "probe": ("min", "past the core awaited", "probe again: load {}"),
    "since": ("min", "since the door", "no minutes known of load {}"),
}


@dataclass(frozen=True, slots=True)
class OvenPage:
    """The oven now; `probed` is the load whose box is open.

    `choices` are the formulas to tap while one more load goes in, `chosen` the one that was tapped
    with its number of tins; `looked` says what it would do, where that was asked.
    """

    view: OvenView
    number: str
    unit: str
    head: str
    what: str
    corner: str
    first: Load | None
    probed: Load | None
    choices: OvenChoices | None
    search: str
    chosen: OvenChoice | None
    tins: int
    counts: tuple[int, ...]
    looked: tuple[str, ...]
    known_tins: tuple[str, ...]
    form: Form
    client_id: str


def oven(request: Request) -> Response:
    """The oven as it is now."""
    return _page(request, Form())


def _page(request: Request, form: Form, status: int = 200) -> Response:
    asked = asked_of(request)
    view = oven_view(asked)
    kind = view.next.kind
    unit, head, what = _WORDS.get(kind, ("", "", ""))
    put = _put_of(request, form, asked)
    asked_for = request.query_params.get("probe") or form.get("id")
    probed = next((load for load in view.inside if load.client_id == asked_for), None)
    context = OvenPage(
        view=view,
        number=str(view.next.minutes) if view.next.load else "",
        unit=unit,
        head=head,
        what=what.format(_named(view.next.load)),
        corner=_corner(view.next.load),
        first=view.next.load,
        probed=None if "formula" in form.values else probed,
        choices=put.choices,
        search=put.search,
        chosen=put.chosen,
        tins=put.tins,
        counts=_COUNTS,
        looked=put.looked,
        known_tins=tins_at_hand(asked) if put.chosen else (),
        form=put.form,
        client_id=form.get("new") or str(uuid4()),
    )
    return page(request, "oven/oven.html", context, title="Oven", section="", status=status)


@dataclass(frozen=True, slots=True)
class _Put:
    """How far a load is on its way in: nothing, the formulas to tap, or the one that was."""

    form: Form
    choices: OvenChoices | None = None
    search: str = ""
    chosen: OvenChoice | None = None
    tins: int = 1
    looked: tuple[str, ...] = ()


def _put_of(request: Request, form: Form, asked: Asked) -> _Put:
    query = request.query_params
    if "formula" in form.values:
        # It was sent and could not go in: what was typed stays.
        chosen = OvenChoice(form.get("formula"), "", "")
        return _Put(form, chosen=chosen, tins=form.whole("tins") or 1)
    if "put" not in query:
        return _Put(form)
    if not query.get("formula"):
        search = query.get("search", "")
        return _Put(form, oven_choices(asked, search=search), search)
    tin, text = query.get("tin", ""), query.get("tins", "1")
    tins = int(text) if text in {str(count) for count in _COUNTS} else 1
    try:
        chosen = choice_for_oven(query["formula"], asked)
        looked = others_if_in(chosen.formula, tin, tins, asked) if query["put"] == "look" else ()
    except KrumeError as error:
        return _Put(form.with_wrong("formula", error.message), oven_choices(asked))
    return _Put(replace(form, values={"tin": tin}), None, "", chosen, tins, looked)


def _named(load: Load | None) -> str:
    """A load by its number, and what it is."""
    if load is None or not load.formula:
        return "" if load is None else str(load.number)
    return f"{load.number}, {load.formula if load.tins == 1 else f'{load.tins} × {load.formula}'}"


def _corner(load: Load | None) -> str:
    """What the dial says for what the oven is."""
    if load is None or load.oven_c is None:
        return ""
    inside = f"oven {as_text(load.oven_c, 0)} °C"
    return inside if load.dial_c is None else f"dial {as_text(load.dial_c, 0)}, {inside}"


Said = Callable[[Form, Asked], None]


def _said(do: Said) -> Callable[[Request], object]:
    """A tap: done, then the oven again; what cannot be done is said beside its field."""

    async def tapped(request: Request) -> Response:
        return await run_in_threadpool(_done, request, await read_form(request), do)

    return tapped


def _done(request: Request, form: Form, do: Said) -> Response:
    try:
        do(form, asked_of(request))
    except KrumeError as error:
        field = error.field or "formula"
        return _page(request, form.with_wrong(field, error.message), error.http_status)
    return RedirectResponse(_AT, status_code=_SEE_OTHER)


def _in(form: Form, asked: Asked) -> None:
    new, tins = form.get("new") or str(uuid4()), form.whole("tins") or 1
    put_in(new, form.get("formula"), form.get("tin"), asked, tins=tins)


def _probe(form: Form, asked: Asked) -> None:
    text = form.get("core").strip().replace(",", ".")
    try:
        core_c = float(text)
    except ValueError:
        message = f"“{text}” is no core. Type what the probe says, for example 88."
        raise InputError(message, field="core", got=text, want="degrees Celsius") from None
    probe_load(form.get("id"), core_c, asked)


def _out(form: Form, asked: Asked) -> None:
    take_out(form.get("id"), asked)


def _back(form: Form, asked: Asked) -> None:
    put_back(form.get("id"), asked)


def _time(form: Form, asked: Asked) -> None:
    time_load(form.get("id"), asked)


ROUTES = (
    Route(_AT, oven, methods=["GET"]),
    Route(f"{_AT}/in", _said(_in), methods=["POST"]),
    Route(f"{_AT}/out", _said(_out), methods=["POST"]),
    Route(f"{_AT}/back", _said(_back), methods=["POST"]),
    Route(f"{_AT}/probe", _said(_probe), methods=["POST"]),
    Route(f"{_AT}/minutes", _said(_time), methods=["POST"]),
)
