"""The oven view at the counter: what to touch next, one line of time, one tap in and out."""

from collections.abc import Callable
from dataclasses import dataclass
from uuid import uuid4

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import InputError, KrumeError, as_text
from krume.usecases import (
    Asked,
    Load,
    OvenView,
    oven_view,
    probe_load,
    put_back,
    put_in,
    take_out,
    time_load,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page

_SEE_OTHER = 303
_AT = "/oven"
_WORDS = {
    "check": ("min", "to the first check", "of load {}"),
    "latest": ("min", "to the latest out", "check load {} now"),
    "over": ("min", "past the latest out", "of load {}: look now"),
    "core": ("min", "about, to the core", "of load {}"),
    "probe": ("min", "past the core awaited", "probe load {} again"),
    "since": ("min", "since the door", "load {}, no minutes known"),
}


@dataclass(frozen=True, slots=True)
class OvenPage:
    """The oven now; `probed` is the load whose box is open, `putting` the form of a load."""

    view: OvenView
    number: str
    unit: str
    head: str
    what: str
    corner: str
    first: Load | None
    probed: Load | None
    putting: bool
    form: Form
    client_id: str


def oven(request: Request) -> Response:
    """The oven as it is now."""
    return _page(request, Form())


def _page(request: Request, form: Form, status: int = 200) -> Response:
    view = oven_view(asked_of(request))
    asked_for = request.query_params.get("probe") or form.get("id")
    probed = next((load for load in view.inside if load.client_id == asked_for), None)
    kind = view.next.kind
    unit, head, what = _WORDS.get(kind, ("", "", ""))
    number = view.next.load.number if view.next.load else 0
    context = OvenPage(
        view=view,
        number=str(view.next.minutes) if view.next.load else "",
        unit=unit,
        head=head,
        what=what.format(number),
        corner=_corner(view.next.load),
        first=view.next.load,
        probed=None if "formula" in form.values else probed,
        putting="put" in request.query_params or "formula" in form.values,
        form=form,
        client_id=form.get("new") or str(uuid4()),
    )
    return page(request, "oven/oven.html", context, title="Oven", section="", status=status)


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
    put_in(form.get("new") or str(uuid4()), form.get("formula"), form.get("tin"), asked)


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
