"""The label of a formula, a torte or an order: its words first, then its paper."""

from dataclasses import dataclass
from urllib.parse import quote, urlencode

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError
from krume.usecases import (
    LabelOf,
    LabelResult,
    LayoutName,
    label_bytes,
    label_of,
    layout_names,
    text_now,
)
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page
from krume.web.labels.asking import FIELDS, MARKETS, Typed, typed_in
from krume.web.orders.serving import sheet_headers

_KINDS = {"formula": "formulas", "torte": "tortes", "order": "orders"}
_FORMATS = (("pdf", "PDF"), ("html", "page"), ("txt", "text"), ("json", "JSON"))


@dataclass(frozen=True, slots=True)
class LabelFileLink:
    """One form of a label: its word and its address."""

    word: str
    address: str


@dataclass(frozen=True, slots=True)
class LabelShown:
    """One label with the addresses of its forms, none while it is held.

    `without_panel` is the address that leaves the panel out, empty where that opens nothing.
    """

    label: LabelOf
    files: tuple[LabelFileLink, ...]
    without_panel: str = ""


@dataclass(frozen=True, slots=True)
class LabelContext:
    """The labels of one text, and the form for what they carry."""

    title: str
    back: str
    back_word: str
    address: str
    result: LabelResult
    shown: tuple[LabelShown, ...]
    form: Form
    layouts: tuple[LayoutName, ...]
    markets: tuple[str, ...]
    asks: tuple[str, ...]


def of_torte(request: Request) -> Response:
    """The label of a torte."""
    return _label(request, "torte")


def of_formula(request: Request) -> Response:
    """The label of a formula."""
    return _label(request, "formula")


def of_order(request: Request) -> Response:
    """The labels of an order's things."""
    return _label(request, "order")


def _label(request: Request, kind: str, refused: InputError | None = None) -> Response:
    """The page; what could not be printed stands beside its field."""
    asked, folder = asked_of(request), _KINDS[kind]
    now = text_now(kind, request.path_params["name"], asked)
    layouts = layout_names()
    typed = typed_in(request, tuple(each.key for each in layouts))
    form = typed.form
    if refused is not None and refused.field is not None:
        form = form.with_wrong(refused.field, refused.message)
    answer = label_of(f"{folder}/{now.name}.txt", typed.wish, asked)
    back = f"/{folder}/{quote(now.name, safe='')}"
    context = LabelContext(
        title=now.title or now.name,
        back=back,
        back_word=f"the {kind}",
        address=f"{back}/label",
        result=answer.result,
        shown=tuple(_shown(f"{back}/label", each, typed) for each in answer.result.labels),
        form=form,
        layouts=layouts,
        markets=MARKETS,
        asks=tuple(dict.fromkeys(problem.ask for problem in answer.problems)),
    )
    status = 422 if form.wrong else 200
    title = f"Label of {context.title}"
    return page(request, "labels/label.html", context, title=title, section=folder, status=status)


def _shown(address: str, label: LabelOf, typed: Typed) -> LabelShown:
    closed = {item.closes for item in label.open_items if item.closes in ("label", "panel")}
    opens = closed == {"panel"} and typed.wish.with_panel and bool(label.maker)
    said = urlencode({**dict(_pairs(typed)), "panel": "no"})
    return LabelShown(
        label, _files(address, label, _said(typed)), f"{address}?{said}" if opens else ""
    )


def _pairs(typed: Typed) -> list[tuple[str, str]]:
    return [(name, typed.form.get(name)) for name in FIELDS if typed.form.get(name)]


def _said(typed: Typed) -> str:
    return urlencode(_pairs(typed))


def _files(address: str, label: LabelOf, said: str) -> tuple[LabelFileLink, ...]:
    if label.blocked_by:
        return ()
    end = f"?{said}" if said else ""
    name = quote(label.name, safe="")
    return tuple(LabelFileLink(word, f"{address}/{name}.{key}{end}") for key, word in _FORMATS)


def file_of_torte(request: Request) -> Response:
    """The label of a torte in one of its forms."""
    return _file(request, "torte")


def file_of_formula(request: Request) -> Response:
    """The label of a formula in one of its forms."""
    return _file(request, "formula")


def file_of_order(request: Request) -> Response:
    """The label of one thing of an order in one of its forms."""
    return _file(request, "order")


def _file(request: Request, kind: str) -> Response:
    asked, folder = asked_of(request), _KINDS[kind]
    now = text_now(kind, request.path_params["name"], asked)
    layouts = tuple(each.key for each in layout_names())
    typed = typed_in(request, layouts)
    of, _, format_ = request.path_params["file"].rpartition(".")
    if typed.form.wrong:
        return _label(request, kind)
    try:
        found = label_bytes(
            f"{folder}/{now.name}.txt", of, format_, typed.wish, asked,
            layout=typed.layout, more=typed.more,
        )  # fmt: skip
    except InputError as error:
        if error.field not in FIELDS:
            raise
        return _label(request, kind, error)
    return Response(found.data, headers=sheet_headers(found))


ROUTES = (
    Route("/tortes/{name}/label", of_torte, methods=["GET"]),
    Route("/formulas/{name}/label", of_formula, methods=["GET"]),
    Route("/orders/{name}/label", of_order, methods=["GET"]),
    Route("/tortes/{name}/label/{file}", file_of_torte, methods=["GET"]),
    Route("/formulas/{name}/label/{file}", file_of_formula, methods=["GET"]),
    Route("/orders/{name}/label/{file}", file_of_order, methods=["GET"]),
)
