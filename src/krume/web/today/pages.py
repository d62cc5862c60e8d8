"""The first page: what has a clock on it, what is held, what to buy; and a studio's beginning."""

from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import ConflictError, KrumeError
from krume.usecases import (
    LineChange,
    StudioSettings,
    ToBuy,
    Today,
    differences,
    keep_tins,
    load_demo,
    save_settings,
    settings_now,
    settings_text,
    settings_wished,
    tins_typed,
    today_of,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page
from krume.web.today.strip import DayStrip, day_strip

_SEE_OTHER = 303
_CONFLICT = 409
_FIELDS = (
    *("name", "address", "units", "market", "eggs_region"),
    *("scale_step_g", "oven_offset_c"),
)


@dataclass(frozen=True, slots=True)
class TodayPage:
    """Today; `urgent` stops an order for sure, `unsaid` is what the book says no stock of."""

    today: Today
    strip: DayStrip | None
    urgent: tuple[ToBuy, ...]
    unsaid: tuple[ToBuy, ...]
    form: Form


@dataclass(frozen=True, slots=True)
class SettingsPage:
    """The few settings of a studio; `theirs` is what another kept meanwhile, beside what was typed.

    `is_plain_file` where the settings lie in a folder of plain texts, which is edited there.
    """

    form: Form
    is_plain_file: bool
    theirs: tuple[LineChange, ...]


def today(request: Request) -> Response:
    """The first page."""
    asked = asked_of(request)
    found = today_of(asked)
    context = TodayPage(
        today=found,
        strip=day_strip(found.next.tasks, found.now),
        urgent=tuple(row for row in found.buy if row.is_urgent),
        unsaid=tuple(row for row in found.buy if not row.is_urgent),
        form=_form(settings_now(asked)),
    )
    return page(request, "today/today.html", context, title="Today", section="today")


def _form(now: StudioSettings) -> Form:
    values = {key: str(getattr(now, key)) for key in _FIELDS}
    return Form({**values, "seen": "" if now.seen is None else str(now.seen)})


async def demo(request: Request) -> Response:
    """The demo studio loaded into the book; what is there stays."""
    await run_in_threadpool(load_demo, asked_of(request))
    return _to("/")


def settings(request: Request) -> Response:
    """The settings in their form."""
    now = settings_now(asked_of(request))
    return _settings(request, _form(now), is_plain_file=now.is_plain_file)


async def keep(request: Request) -> Response:
    """Keep the settings that were typed; what was left empty stays as it is."""
    form = await read_form(request)
    return await run_in_threadpool(_keep, request, form)


def _keep(request: Request, form: Form) -> Response:
    asked = asked_of(request)
    wish = _wish(form)
    try:
        tins = tins_typed(form.get("tins"))
        save_settings(wish, asked)
        keep_tins(tins, asked)
    except ConflictError as error:
        return _conflict(request, form, wish, error)
    except KrumeError as error:
        field = error.field if error.field in (*_FIELDS, "tins") else "name"
        wrong = form.with_wrong(field, error.message)
        return _settings(request, wrong, status=error.http_status)
    return _to("/")


def _wish(form: Form) -> StudioSettings:
    return StudioSettings(
        name=form.get("name"),
        address=form.get("address"),
        units=form.get("units"),
        market=form.get("market"),
        eggs_region=form.get("eggs_region"),
        scale_step_g=form.get("scale_step_g"),
        oven_offset_c=form.get("oven_offset_c"),
        seen=form.whole("seen"),
    )


def _conflict(request: Request, form: Form, wish: StudioSettings, error: ConflictError) -> Response:
    """Both: what the book has now, and what it would become."""
    asked = asked_of(request)
    theirs = differences(settings_text(asked), settings_wished(wish, asked))
    now = settings_now(asked)
    both = Form({**form.values, "seen": str(now.seen)}).with_wrong("name", error.message)
    return _settings(request, both, theirs=theirs, status=_CONFLICT)


def _settings(
    request: Request,
    form: Form,
    *,
    theirs: tuple[LineChange, ...] = (),
    is_plain_file: bool = False,
    status: int = 200,
) -> Response:
    context = SettingsPage(form, is_plain_file, theirs)
    return page(
        request, "today/settings.html", context, title="Settings", section="today", status=status
    )


def _to(address: str) -> Response:
    return RedirectResponse(address, status_code=_SEE_OTHER)


ROUTES = (
    Route("/", today, methods=["GET"]),
    Route("/demo", demo, methods=["POST"]),
    Route("/settings", settings, methods=["GET"]),
    Route("/settings", keep, methods=["POST"]),
)
