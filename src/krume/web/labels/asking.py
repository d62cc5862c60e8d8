"""What is typed for a label: its day, its paper, its weight, its lot; read from the address."""

import math
from dataclasses import dataclass
from datetime import date, datetime

from starlette.requests import Request

from krume.base import read_number
from krume.usecases import LabelWish, PrintWish
from krume.web.frame.forms import Form
from krume.web.labels.eaten import FIELDS as NUTRITION_FIELDS
from krume.web.labels.eaten import nutrition_wish

FIELDS = (
    *("market", "made", "labels", "net", "code", "link", "area", "maker", "panel"),
    *("list", "additives"),
    *NUTRITION_FIELDS,
)
MARKETS = ("eu", "uk", "us", "ca", "au-nz")
_NUMBERS = {"net": "grams of the cake without its box: 1194", "area": "cm² of its face: 60"}
_LISTS = {"one": False, "parts": True}
_ADDITIVES = {"names": False, "numbers": True}
_MOST = 1e6


@dataclass(frozen=True, slots=True)
class Typed:
    """What a label is asked for, and the form it was typed into."""

    form: Form
    wish: LabelWish
    more: PrintWish
    layout: str


def typed_in(request: Request, layouts: tuple[str, ...]) -> Typed:
    """The wishes of an address; what cannot be used is said beside its field and left out."""
    form = Form({name: request.query_params.get(name, "").strip() for name in FIELDS})
    form, made = _day(form)
    numbers: dict[str, float | None] = {}
    for name in _NUMBERS:
        form, numbers[name] = _number(form, name)
    layout = form.get("labels")
    if layout and layout not in layouts:
        form = form.with_wrong("labels", f"“{layout}” is no paper for labels. Choose one.")
    market = form.get("market")
    if market and market not in MARKETS:
        form = form.with_wrong("market", f"“{market}” is no market. Choose one.")
    for name, settings in (("list", _LISTS), ("additives", _ADDITIVES)):
        said = form.get(name)
        if said and said not in settings:
            form = form.with_wrong(name, f"“{said}” is none of {' or '.join(settings)}.")
    form, nutrition = nutrition_wish(form)
    return Typed(
        form=form,
        wish=LabelWish(
            market=market if market in MARKETS else None,
            made=made,
            with_panel=form.get("panel") != "no",
            maker=form.get("maker"),
            by_part=_LISTS.get(form.get("list")),
            by_number=_ADDITIVES.get(form.get("additives")),
            nutrition=nutrition,
        ),
        more=PrintWish(form.get("code"), numbers["net"], form.get("link"), numbers["area"]),
        layout=layout if layout in layouts else layouts[0],
    )


def _day(form: Form) -> tuple[Form, date | None]:
    text = form.get("made")
    if not text:
        return form, None
    try:
        return form, datetime.strptime(text, "%Y-%m-%d").date()  # noqa: DTZ007
    except ValueError:
        return form.with_wrong("made", f"“{text}” is no day. Type it as 2027-06-10."), None


def _number(form: Form, name: str) -> tuple[Form, float | None]:
    text = form.get(name)
    if not text:
        return form, None
    found = read_number(text.removesuffix("cm²").removesuffix("g").strip())
    if found is None or not 0 < found.value < _MOST or not math.isfinite(found.value):
        return form.with_wrong(name, f"“{text}” cannot be used. Type {_NUMBERS[name]}"), None
    return form, found.value
