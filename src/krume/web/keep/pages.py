"""How long a torte, a formula or an order keeps: reasons, freezing, the road, other places."""

from dataclasses import dataclass
from urllib.parse import quote

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError, NotFoundError
from krume.usecases import (
    Asked,
    Difference,
    KeepResult,
    KeepWish,
    TextNow,
    differences_of,
    keep_shown,
    text_now,
    typed_number,
)
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page

_NUMBERS = {
    "freezer": "freezer_c", "fridge": "fridge_c", "road": "road_min", "outside": "outside_c",
    "packs": "packs_g",
}  # fmt: skip
_TEXTS = ("ready", "heat")
_BOXES = ("card", "bag", "foam", "none")
_FOLDERS = {"torte": "tortes", "order": "orders", "formula": "formulas"}


@dataclass(frozen=True, slots=True)
class KeepContext:
    """One thing's keeping; `cold_days` are its fewest and most days, None where not known."""

    name: str
    title: str
    back: str
    back_word: str
    address: str
    form: Form
    boxes: tuple[str, ...]
    kept: KeepResult
    cold_days: tuple[float, float] | None
    differences: tuple[Difference, ...]
    asks: tuple[str, ...]
    notices: tuple[str, ...]


def keep(request: Request) -> Response:
    """How long it keeps; freezing, road and heating only where something of them is typed."""
    asked = asked_of(request)
    kind, now = _text(request.path_params["name"], asked)
    place, name = f"{_FOLDERS[kind]}/{now.name}.txt", now.name
    form = Form({key: text.strip() for key, text in request.query_params.items() if text.strip()})
    bare = keep_shown(place, KeepWish(), asked)
    form, wish = _wish(form)
    answer = bare
    if wish != KeepWish() and not form.wrong:
        try:
            answer = keep_shown(place, wish, asked)
        except (InputError, NotFoundError) as error:
            form = form.with_wrong(_field_of(error.field), error.message)
    quoted, hours = quote(name, safe=""), answer.result.cold_hours
    context = KeepContext(
        name=name,
        title=answer.result.name or name,
        back=f"/{_FOLDERS[kind]}/{quoted}",
        back_word=f"the {kind}",
        address=f"/keep/{quoted}",
        form=form,
        boxes=_BOXES,
        kept=answer.result,
        cold_days=None if hours is None else (hours.low / 24, hours.high / 24),
        differences=differences_of(place, asked),
        asks=tuple(dict.fromkeys(problem.ask for problem in answer.problems)),
        notices=tuple(dict.fromkeys(notice.text for notice in answer.notices)),
    )
    return page(
        request, "keep/keep.html", context, title=f"Keeping of {context.title}",
        section=_FOLDERS[kind], status=422 if form.wrong else 200,
    )  # fmt: skip


def _text(name: str, asked: Asked) -> tuple[str, TextNow]:
    """The text of a name, a torte before an order before a formula, or NotFoundError."""
    for kind in _FOLDERS:
        try:
            return kind, text_now(kind, name, asked)
        except NotFoundError:
            continue
    raise NotFoundError(f"The book has no torte, order or formula called {name}.", got=name)


def _field_of(field: str) -> str:
    own = {own: name for name, own in _NUMBERS.items()} | {"minutes": "road", "start_c": "fridge"}
    found = own.get(field, field)
    return found if found in (*_NUMBERS, *_TEXTS, "box") else "road"


def _wish(form: Form) -> tuple[Form, KeepWish]:
    numbers: dict[str, float | None] = {}
    for name, field in _NUMBERS.items():
        text = form.get(name)
        numbers[field] = typed_number(text) if text else None
        if text and numbers[field] is None:
            form = form.with_wrong(name, f"“{text}” is no number. Type one such as 30")
    box = form.get("box") if form.get("box") in _BOXES else "card"
    has_road = numbers["road_min"] is not None or numbers["outside_c"] is not None
    wish = KeepWish(
        fridge_c=numbers["fridge_c"],
        freeze="freeze" in form.values,
        freezer_c=numbers["freezer_c"],
        ready=form.get("ready"),
        road_min=numbers["road_min"],
        outside_c=numbers["outside_c"],
        box=box if has_road else "card",
        packs_g=(numbers["packs_g"] or 0.0) if has_road else 0.0,
        heat=form.get("heat"),
    )
    return form, wish


ROUTES = (Route("/keep/{name}", keep, methods=["GET"]),)
