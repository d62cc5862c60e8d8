"""A slip as a page: a box of grams for each line, then the ways out, least change first."""

from dataclasses import dataclass, replace
from urllib.parse import quote, urlencode

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError, as_text
from krume.usecases import (
    Asked,
    SheetBytes,
    SlipDeclined,
    SlipHeld,
    SlipResult,
    SlipRow,
    SlipWish,
    TextNow,
    rescue_slip,
    slip_rows,
    slip_sheet,
    text_now,
)
from krume.web.frame.asking import Ask, address, asked_with_answers, asks_of, said_in
from krume.web.frame.figures import amount
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page
from krume.web.orders.serving import sheet_headers
from krume.web.slip.bowl import Segment, bar
from krume.web.slip.ways import ShownWay, shown

_MEDIA = {
    "pdf": "application/pdf",
    "html": "text/html; charset=utf-8",
    "txt": "text/plain; charset=utf-8",
    "json": "application/json",
}
_NOT_HERE = {
    "jar": "No jar",
    "hold": "The total cannot be held",
    "second": "No second cake",
    "scale": "No larger cake with whole eggs",
    "scale-exact": "No larger cake",
    "down": "No smaller cake",
    "fresh": "No fresh whites",
}


@dataclass(frozen=True, slots=True)
class Box:
    """The box of one line: what it is called, how much is planned, whether more may be added."""

    row: SlipRow
    planned: str
    is_closed: bool


@dataclass(frozen=True, slots=True)
class Bowl:
    """The boxes of the lines that go into one bowl."""

    label: str
    boxes: tuple[Box, ...]


@dataclass(frozen=True, slots=True)
class SlipPage:
    """What was said of the bowls, and the ways out; `result` is None before anything is said."""

    now: TextNow
    form: Form
    bowls: tuple[Bowl, ...]
    asks: tuple[Ask, ...]
    result: SlipResult | None
    heads: tuple[str, ...]
    bar: tuple[Segment, ...]
    ways: tuple[ShownWay, ...]
    more: int
    more_address: str
    said: str
    declined: tuple[str, ...]
    notices: tuple[str, ...]


def slip(request: Request) -> Response:
    """One formula, what is in its bowls, and the ways out once something is said."""
    name = request.path_params["name"]
    now = text_now("formula", name, asked_of(request))
    place = f"formulas/{now.name}.txt"
    rows = slip_rows(place, asked_of(request))
    form = Form({k: v for k, v in request.query_params.items() if v.strip()})
    context = _answered(request, _bare(request, now, form, rows), place, rows)
    title = f"A slip in {now.title or name}"
    status = 422 if context.form.wrong else 200
    return page(request, "slip/slip.html", context, title=title, section="formulas", status=status)


def _bare(request: Request, now: TextNow, form: Form, rows: tuple[SlipRow, ...]) -> SlipPage:
    closed = set(request.query_params.getlist("closed"))
    bowls: dict[str, list[Box]] = {}
    for row in rows:
        box = Box(row, amount(row.planned_g, 2), row.said in closed)
        bowls.setdefault(row.bowl or "Not weighed in a bowl", []).append(box)
    told = tuple(Bowl(label, tuple(boxes)) for label, boxes in bowls.items())
    return SlipPage(now, form, told, (), None, (), (), (), 0, "", "", (), ())


def _answered(request: Request, bare: SlipPage, place: str, rows: tuple[SlipRow, ...]) -> SlipPage:
    """The page with its ways, or with what is asked, or with what is wrong beside its box."""
    boxes = [row for row in rows if bare.form.get(row.field)]
    closed = tuple(request.query_params.getlist("closed"))
    if not (boxes or closed or bare.form.get("spoilt")):
        return bare
    try:
        return _with_ways(request, bare, _wish(request, bare.form, boxes), place)
    except InputError as error:
        return replace(bare, form=bare.form.with_wrong(_field(error, boxes), error.message))


def _wish(request: Request, form: Form, boxes: list[SlipRow]) -> SlipWish:
    spoilt = form.get("spoilt").strip()
    return SlipWish(
        weighed=tuple(f"{row.said}={form.get(row.field).strip()}" for row in boxes),
        no_more=tuple(request.query_params.getlist("closed")),
        spoilt=spoilt if not spoilt.isdigit() else f"whites of {spoilt} eggs",
        total=form.get("total") == "on",
    )


def _field(error: InputError, boxes: list[SlipRow]) -> str:
    """The box a refusal is about."""
    if error.field != "weighed":
        return error.field or "weighed"
    number = error.where.rpartition(" ")[2]
    at = int(number) - 1 if number.isdigit() else 0
    return boxes[at].field if at < len(boxes) else "weighed"


def _with_ways(request: Request, bare: SlipPage, wish: SlipWish, place: str) -> SlipPage:
    wish = wish if wish.spoilt else replace(wish, spoilt=None)
    asked: Asked = asked_with_answers(request)
    answer = rescue_slip(place, wish, asked)
    result = answer.result
    every = bare.form.get("all") == "on"
    ways = result.ways if every else result.options
    return replace(
        bare,
        asks=asks_of(request, answer.problems),
        result=result,
        heads=tuple(_head(held) for held in result.in_bowl if held.over_g),
        bar=bar(result),
        ways=tuple(shown(way) for way in ways),
        more=0 if every else len(result.more),
        more_address=address(request.url.path, (*said_in(request), ("all", "on"))),
        said=urlencode(said_in(request)),
        declined=tuple(_declined(each) for each in result.declined) if every else (),
        notices=tuple(dict.fromkeys(notice.text for notice in answer.notices)),
    )


def _head(held: SlipHeld) -> str:
    over = held.over_g or 0.0
    side = "over" if over > 0 else "under"
    name = f"{held.name[:1].upper()}{held.name[1:]}"
    verb = "are" if held.name.endswith("s") else "is"
    return f"{name} {verb} {as_text(abs(over), 2)} g {side}"


def _declined(each: SlipDeclined) -> str:
    return f"{_NOT_HERE.get(each.kind, each.kind)}: {each.why}."


def sheet(request: Request) -> Response:
    """A corrected sheet of one way, made as it is asked for; nothing of it is kept."""
    name, asked = request.path_params["name"], asked_with_answers(request)
    place = f"formulas/{text_now('formula', name, asked).name}.txt"
    form = Form({k: v for k, v in request.query_params.items() if v.strip()})
    boxes = [row for row in slip_rows(place, asked) if form.get(row.field)]
    wish = _wish(request, form, boxes)
    wish = wish if wish.spoilt else replace(wish, spoilt=None)
    way, file = form.get("way"), form.get("sheet")
    answer = slip_sheet(place, wish, asked, way=way, sheet=file)
    if answer.problems:
        raise InputError(f"No card yet: {answer.problems[0].ask}", field=name)
    media = _MEDIA[file.rpartition(".")[2]]
    found = SheetBytes(answer.result, media, is_as_written=True)
    named = {"Content-Disposition": f'inline; filename="{quote(name, safe="")}-{file}"'}
    return Response(found.data, headers={**sheet_headers(found), **named})


ROUTES = (
    Route("/slip/{name}", slip, methods=["GET"]),
    Route("/slip/{name}/card", sheet, methods=["GET"]),
)
