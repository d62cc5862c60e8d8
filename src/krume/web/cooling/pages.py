"""Custard of a torte or a formula: depths by the fridge that is typed, and what a log must show."""

from dataclasses import dataclass
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import OutOfRangeError, read_number
from krume.usecases import Asked, CustardShown, custard_shown, text_now
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page

_FIELDS = {"fridge_c": "fridge", "room_c": "room"}


@dataclass(frozen=True, slots=True)
class CoolingContext:
    """One text's custards; `shown` is None while a typed temperature cannot be used."""

    title: str
    back: str
    back_word: str
    address: str
    form: Form
    shown: CustardShown | None


def of_torte(request: Request) -> Response:
    """Custards of a torte."""
    return _cooling(request, "torte", "tortes")


def of_formula(request: Request) -> Response:
    """A custard, or a formula that is none."""
    return _cooling(request, "formula", "formulas")


def _cooling(request: Request, kind: str, folder: str) -> Response:
    asked = asked_of(request)
    now = text_now(kind, request.path_params["name"], asked)
    form = Form({key: text.strip() for key, text in request.query_params.items()})
    form, shown = _shown(form, f"{folder}/{now.name}.txt", asked)
    name = quote(now.name, safe="")
    context = CoolingContext(
        title=now.title or now.name,
        back=f"/{folder}/{name}",
        back_word=f"the {kind}",
        address=f"/{folder}/{name}/cooling",
        form=form,
        shown=shown,
    )
    status = 422 if form.wrong else 200
    title = f"Cooling of {context.title}"
    return page(
        request, "cooling/cooling.html", context, title=title, section=folder, status=status
    )


def _shown(form: Form, place: str, asked: Asked) -> tuple[Form, CustardShown | None]:
    typed: dict[str, float | None] = {}
    for field, name in _FIELDS.items():
        text = form.get(name)
        found = read_number(text.removesuffix("C").removesuffix("°").strip()) if text else None
        typed[field] = None if found is None else found.value
        if text and found is None:
            form = form.with_wrong(name, f"“{text}” is no temperature. Type degrees Celsius: 3")
    if form.wrong:
        return form, None
    try:
        return form, custard_shown(place, asked, fridge_c=typed["fridge_c"], room_c=typed["room_c"])
    except OutOfRangeError as error:
        if error.field not in _FIELDS:
            raise
        return form.with_wrong(_FIELDS[error.field], error.message), None


ROUTES = (
    Route("/tortes/{name}/cooling", of_torte, methods=["GET"]),
    Route("/formulas/{name}/cooling", of_formula, methods=["GET"]),
)
