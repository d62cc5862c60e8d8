"""A blend as a page: for a formula, or by what 100 g should hold."""

from dataclasses import dataclass, replace

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError
from krume.usecases import (
    Answer,
    BlendHand,
    BlendResult,
    BlendWish,
    TextRow,
    choose_blend,
    flours_at_hand,
    text_now,
    texts_of,
)
from krume.web.blend.shown import (
    GramRow,
    HeldRow,
    NearRow,
    RecordRow,
    gram_rows,
    held_rows,
    near_rows,
    nearness,
    record_rows,
    short,
    swap_rows,
)
from krume.web.blend.wishing import answered_in, ticked, wished
from krume.web.frame.asking import Ask, address, asked_with_answers, asks_of, said_in
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page

_LISTED = ("ask", "flour", "more")
_FOR = ("flour", "more", "want", "limits", "without", "total", "step", "ask")


@dataclass(frozen=True, slots=True)
class Found:
    """A blend that was found, as it is shown."""

    result: BlendResult
    grams: tuple[GramRow, ...]
    held: tuple[HeldRow, ...]
    nearness: str
    records: tuple[RecordRow, ...]
    open_grams: str
    open_address: str
    swaps: tuple[NearRow, ...]
    others: tuple[NearRow, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BlendPage:
    """The form of a blend and its answer; `name` is None where it is for no formula yet."""

    name: str | None
    title: str
    address: str
    form: Form
    hand: tuple[BlendHand, ...]
    ticked: frozenset[str]
    formulas: tuple[TextRow, ...]
    asks: tuple[Ask, ...]
    is_possible: bool
    found: Found | None
    notices: tuple[str, ...]


def bare_blend(request: Request) -> Response:
    """A blend for no formula yet."""
    return _shown(request, None, "A blend")


def blend(request: Request) -> Response:
    """The blend of a formula, of the flours at hand."""
    now = text_now("formula", request.path_params["name"], asked_of(request))
    return _shown(request, now.name, now.title or now.name)


def _shown(request: Request, name: str | None, title: str) -> Response:
    context = _page(request, name, title)
    heading = title if name is None else f"The blend of {title}"
    status = 422 if context.form.wrong else 200
    return page(
        request, "blend/blend.html", context, title=heading, section="formulas", status=status
    )


def _page(request: Request, name: str | None, title: str) -> BlendPage:
    place = None if name is None else f"formulas/{name}.txt"
    hand = flours_at_hand(place, asked_of(request))
    chosen = request.query_params.getlist("flour")
    is_sent = any(key in request.query_params for key in _FOR)
    fields = {k: v.replace("\r\n", "\n") for k, v in request.query_params.items() if v.strip()}
    bare = BlendPage(
        name=name,
        title=title,
        address=request.url.path,
        form=Form(fields),
        hand=hand,
        ticked=ticked(hand, chosen, is_sent=any(each in fields for each in _LISTED)),
        formulas=texts_of("formula", asked_of(request)) if name is None else (),
        asks=(),
        is_possible=True,
        found=None,
        notices=(),
    )
    if not is_sent or (name is None and not bare.form.get("want")):
        return bare
    return _answered(request, bare, place, chosen)


def _answered(request: Request, bare: BlendPage, place: str | None, chosen: list[str]) -> BlendPage:
    """The page with its blend, with what is asked, or with what is wrong beside its field."""
    read = wished(bare.form, chosen, place)
    if read.form.wrong:
        return replace(bare, form=read.form)
    try:
        answer = choose_blend(read.wish, asked_with_answers(request))
    except InputError as error:
        return replace(bare, form=read.form.with_wrong(error.field or "more", error.message))
    wish = read.wish
    names = tuple(name for name in (wish.flours or "").split(", ") if name)
    puts = answered_in(names, wish.limits, wish.without)
    return replace(
        bare,
        asks=asks_of(request, answer.problems, puts),
        is_possible=answer.is_possible,
        found=_found(request, answer, wish),
        notices=tuple(dict.fromkeys(notice.text for notice in answer.notices)),
    )


def _found(request: Request, answer: Answer[BlendResult], wish: BlendWish) -> Found | None:
    result = answer.result
    if not result.parts:
        return None
    opened = result.open_blend
    out = (*wish.without, *(opened.without if opened is not None else ()))
    kept = tuple(pair for pair in said_in(request) if pair[0] != "without")
    pairs = (*kept, ("without", ", ".join(dict.fromkeys(out))))
    return Found(
        result=result,
        grams=gram_rows(result),
        held=held_rows(result),
        nearness=nearness(result),
        records=record_rows(result),
        open_grams="" if opened is None else short(opened.parts),
        open_address="" if opened is None else address(request.url.path, pairs),
        swaps=swap_rows(result),
        others=near_rows(result),
        sources=answer.sources,
    )


ROUTES = (
    Route("/blend", bare_blend, methods=["GET"]),
    Route("/blend/{name}", blend, methods=["GET"]),
)
