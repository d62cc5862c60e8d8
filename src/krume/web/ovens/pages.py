"""Tins measured against nominal, the oven with its offset, and the dial to set."""

import math
from collections.abc import Mapping
from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import ConflictError, KrumeError, as_text
from krume.usecases import (
    OvenNow,
    OvensNow,
    oven_now,
    oven_settings,
    ovens_now,
    save_oven,
    tin_words,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page
from krume.web.tables.kinds import Field, TableKind
from krume.web.tables.pages import Beside, table_routes

_SEE_OTHER = 303
_UNPROCESSABLE = 422
_HOTTEST_C = 1000.0

FIELDS = (
    Field("name", "Name", "what you call it"),
    Field("dial_c", "Dial at the readings", "what it was set to", unit="°C"),
    Field("mean_c", "Mean of the readings", "of the thermometer in it, after the first half hour",
          unit="°C"),
    Field("readings", "How many readings", "six or more"),
    Field("spread_c", "Spread", "half of what they wander: 4", unit="K"),
    Field("offset_c", "Offset, true less dial",
          "worked out from dial and mean where both are typed; an oven that reads low is below 0",
          unit="K"),
    Field("fan", "Has a fan", "", ("yes", "no")),
    Field("bakes_with_fan", "You bake with it", "", ("yes", "no")),
    Field("shelves", "Shelves"),
    Field("tins_per_load", "Tins a load"),
    Field("load_min", "Loading takes", unit="min"),
    Field("recover_min", "Heat comes back in", unit="min"),
)  # fmt: skip


def _tin_cells(typed: Mapping[str, str]) -> dict[str, str]:
    """The water goes into the tin's own text."""
    cells = {name: value for name, value in typed.items() if name != "water_g"}
    return {**cells, "tin": tin_words(cells.get("tin", "").strip(), typed.get("water_g", ""))}


TINS = TableKind(
    place="tins.csv",
    address="/ovens/tins",
    home="/ovens#tins",
    section="ovens",
    title="Tins",
    word="tin",
    required=("tin", "count"),
    fields=(
        Field("tin", "Tin", "inside: round 20 x 7 cm; dark sheet 13x9 in, 1 in high; tube 20 x 10 "
              "cm, hole 6 cm", is_required=True,
              codes=("tin-not-read", "tin-shape", "tin-mass", "tin-two-sizes", "tin-rim-narrow")),
        Field("count", "How many", "1", is_required=True, codes=("tin-count-unread",)),
        Field("status", "Known how", "measured where you measured it yourself",
              ("declared", "measured", "assumed", "invented")),
    ),
    extra=(
        Field("water_g", "Filled with water it weighs",
              "tin on the scale, tare, fill to the rim: 2186", unit="g"),
    ),
    cells=_tin_cells,
    offers_words=True,
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class OvensPage:
    """Tins and the oven; `form` is the dial that was asked for."""

    now: OvensNow
    form: Form


@dataclass(frozen=True, slots=True)
class OvenPage:
    """The oven as a form; `theirs` is what another kept in the meantime."""

    fields: tuple[Field, ...]
    form: Form
    said: str
    theirs: tuple[Beside, ...]


def ovens(request: Request) -> Response:
    """Tins first, then the oven."""
    typed = request.query_params.get("want", "").strip()
    want, wrong = _wanted(typed)
    form = Form({"want": typed})
    form = form.with_wrong("want", wrong) if wrong else form
    now = ovens_now(asked_of(request), want_c=want)
    status = _UNPROCESSABLE if wrong else 200
    return page(
        request, "ovens/ovens.html", OvensPage(now, form), title="Tins and ovens",
        section="ovens", status=status,
    )  # fmt: skip


def _wanted(typed: str) -> tuple[float | None, str]:
    """A temperature that was asked for, or what is wrong with it."""
    if not typed:
        return None, ""
    try:
        value = float(typed.replace("°", "").replace("C", "").replace(",", "."))
    except ValueError:
        value = math.nan
    if not 0 < value < _HOTTEST_C:
        return None, f"'{typed}' is no temperature. Type degrees Celsius, such as 170."
    return value, ""


def tins(_: Request) -> Response:
    """The tins stand on the first page."""
    return RedirectResponse(TINS.home, status_code=_SEE_OTHER)


def oven(request: Request) -> Response:
    """The oven in its form."""
    now = oven_now(asked_of(request))
    return _oven_page(request, Form(_typed(now)), now.refusal)


def _typed(now: OvenNow) -> dict[str, str]:
    found = {each.name: _word(now.settings.get(each.name)) for each in FIELDS}
    return {**found, "seen": "" if now.seen is None else str(now.seen)}


def _word(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return as_text(value, 3)
    return value if isinstance(value, str) else ""


async def save(request: Request) -> Response:
    """Keep the oven."""
    return await run_in_threadpool(_save, request, await read_form(request))


def _save(request: Request, form: Form) -> Response:
    asked = asked_of(request)
    settings, wrong = oven_settings(form.values)
    if wrong:
        for name, said in wrong.items():
            form = form.with_wrong(name, said)
        return _oven_page(request, form, status=_UNPROCESSABLE)
    try:
        save_oven(settings, asked, seen=form.whole("seen"))
    except ConflictError as error:
        return _both(request, form, error)
    except KrumeError as error:
        return _oven_page(request, form, error.message, status=error.http_status)
    return RedirectResponse("/ovens#oven", status_code=_SEE_OTHER)


def _both(request: Request, form: Form, error: ConflictError) -> Response:
    """What another kept beside what was typed."""
    now = _typed(oven_now(asked_of(request)))
    both = Form({**form.values, "seen": now["seen"]})
    theirs = tuple(
        Beside(each.label, now[each.name], form.get(each.name))
        for each in FIELDS
        if now[each.name] != form.get(each.name)
    )
    return _oven_page(request, both, error.message, theirs, error.http_status)


def _oven_page(
    request: Request,
    form: Form,
    said: str = "",
    theirs: tuple[Beside, ...] = (),
    status: int = 200,
) -> Response:
    fields = tuple(each.with_choice(form.get(each.name)) for each in FIELDS)
    context = OvenPage(fields, form, said, theirs)
    return page(
        request, "ovens/oven.html", context, title="The oven", section="ovens", status=status
    )


ROUTES = (
    Route("/ovens", ovens, methods=["GET"]),
    Route("/ovens/oven", oven, methods=["GET"]),
    Route("/ovens/oven", save, methods=["POST"]),
    Route("/ovens/tins", tins, methods=["GET"]),
    *table_routes(TINS, is_listed=False),
)
