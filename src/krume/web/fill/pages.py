"""A cream for a ring: a form, and beside it litres, grams, whole cartons and what sets it."""

from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError, KrumeError, NotFoundError
from krume.usecases import Answer, FillResult, FillWish, fill_ring
from krume.web.frame.figures import amount
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page

_FIELDS = {"--ring": "ring", "--disc": "disc", "--carton": "carton", "--waste": "waste"}
_UNREAD = "Type a number, such as 5."


@dataclass(frozen=True, slots=True)
class FillRow:
    """One line of the answer as printed: what, and how much."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class FillPage:
    """The form as typed, and what it came to; `lead` is empty while nothing is known."""

    form: Form
    title: str
    lead: str
    sums: tuple[FillRow, ...]
    lines: tuple[FillRow, ...]
    cartons: tuple[str, ...]
    gels: tuple[str, ...]
    refusals: tuple[str, ...]
    notices: tuple[str, ...]


def fill(request: Request) -> Response:
    """The form; asked with a cream and a ring it answers."""
    form = Form({name: value.strip() for name, value in request.query_params.items()})
    context = _page(request, form) if form.get("cream") or form.get("ring") else _bare(form)
    status = 422 if context.refusals or context.form.wrong else 200
    title = "A cream for a ring"
    return page(request, "fill/fill.html", context, title=title, section="tortes", status=status)


def _bare(form: Form) -> FillPage:
    return FillPage(form, "", "", (), (), (), (), (), ())


def _page(request: Request, form: Form) -> FillPage:
    for name, words in (("cream", "Which cream? Its name in your book."), ("ring", "Which ring?")):
        if not form.get(name):
            form = form.with_wrong(name, words)
    carton, form = _number(form, "carton")
    waste, form = _number(form, "waste")
    if form.wrong:
        return _bare(form)
    discs = tuple(each.strip() for each in form.get("disc").split(";") if each.strip())
    wish = FillWish(form.get("ring"), discs, None, carton, waste or 0.0)
    try:
        answer = fill_ring(form.get("cream"), wish, asked_of(request))
    except (InputError, NotFoundError) as error:
        return _bare(form.with_wrong("cream", _said(error)))
    return _answered(form, answer)


def _said(error: KrumeError) -> str:
    return error.message


def _number(form: Form, name: str) -> tuple[float | None, Form]:
    words = form.get(name).replace(",", ".").removesuffix("%").removesuffix("ml").strip()
    if not words:
        return None, form
    try:
        return float(words), form
    except ValueError:
        return None, form.with_wrong(name, _UNREAD)


def _answered(form: Form, answer: Answer[FillResult]) -> FillPage:
    found = answer.result
    form = form.with_problems(answer.problems, _FIELDS)
    others = tuple(problem.ask for problem in answer.problems if problem.where not in _FIELDS)
    notices = tuple(dict.fromkeys(notice.text for notice in answer.notices))
    if found.cream_ml is None:
        return FillPage(form, found.title, "", (), (), (), (), others, notices)
    return FillPage(
        form=form,
        title=found.title,
        lead=f"{amount(found.cream_l, 2)} l, {amount(found.needed_g)} g",
        sums=_sums(found),
        lines=tuple(FillRow(line.name, f"{amount(line.mass_g)} g") for line in found.lines),
        cartons=tuple(
            f"{x.name}: {amount(x.needed_ml, 0)} ml, {x.cartons} of {amount(x.carton_ml, 0)} ml; "
            f"{amount(x.left_ml, 0)} ml left"
            for x in found.cartons
        ),
        gels=tuple(line for use in found.gels for line in use.lines),
        refusals=others,
        notices=notices,
    )


def _sums(found: FillResult) -> tuple[FillRow, ...]:
    waste = (FillRow("stays in bowl and bag", f"{amount(found.waste_g)} g"),)
    return (
        FillRow("the ring", f"{amount(found.ring_ml)} ml"),
        FillRow("discs in it", f"{amount(found.discs_ml)} ml"),
        FillRow("cream", f"{amount(found.cream_ml)} ml"),
        FillRow("weighs", f"{amount(found.density_g_ml, 3)} g/ml ({found.status})"),
        *(waste if found.waste_g else ()),
        FillRow("to make", f"{amount(found.made_g)} g, {amount(found.factor, 2)} of a batch"),
    )


ROUTES = (Route("/fill", fill, methods=["GET"]),)
