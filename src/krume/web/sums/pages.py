"""The quick sums: all of them, and each as a small form with its result and sources."""

from dataclasses import dataclass, replace

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError, Interval, KrumeError, NotFoundError
from krume.usecases import Answer, Json, SumRow, answer_sum, list_sums
from krume.web.frame.figures import amount, unit_of
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page

_READ_AS = {
    "c": "°C", "k": "K", "pct": "%", "pa": "Pa", "kg_m3": "kg/m³", "w_mk": "W/(m K)",
    "w_m2k": "W/(m² K)", "j_kgk": "J/(kg K)",
}  # fmt: skip
"""Units of inputs as a person reads them."""


@dataclass(frozen=True, slots=True)
class SumsPage:
    """All quick sums."""

    sums: tuple[SumRow, ...]


@dataclass(frozen=True, slots=True)
class Value:
    """One value of a result as it is read: what it is, how much, in which unit."""

    name: str
    meaning: str
    text: str
    unit: str


@dataclass(frozen=True, slots=True)
class SumPage:
    """One quick sum: its form as typed, and what it came to."""

    row: SumRow
    form: Form
    values: tuple[Value, ...]
    notices: tuple[str, ...]
    sources: tuple[str, ...]
    refusal: str


def sums(request: Request) -> Response:
    """All quick sums."""
    found = list_sums().result
    return page(request, "sums/list.html", SumsPage(found.sums), title="Sums", section="sums")


def one_sum(request: Request) -> Response:
    """One quick sum; asked with its inputs it answers."""
    row = _row(request.path_params["name"])
    form = Form({name: value for name, value in request.query_params.items() if value.strip()})
    context = _answered(request, row, form) if form.values else _bare(row, form)
    status = 422 if context.refusal else 200
    context = replace(context, row=_readable(context.row))
    title = row.name.replace("-", " ")
    return page(request, "sums/sum.html", context, title=title, section="sums", status=status)


def _row(name: str) -> SumRow:
    found = next((row for row in list_sums().result.sums if row.name == name), None)
    if found is None:
        raise NotFoundError(f"No sum is called {name}.", field="NAME", got=name)
    return found


def _readable(row: SumRow) -> SumRow:
    """A sum whose inputs name their units as they are written by hand."""
    inputs = tuple(replace(i, unit=_READ_AS.get(i.unit or "", i.unit)) for i in row.inputs)
    return replace(row, inputs=inputs)


def _bare(row: SumRow, form: Form) -> SumPage:
    return SumPage(row, form, (), (), (), "")


def _answered(request: Request, row: SumRow, form: Form) -> SumPage:
    known = {each.name for each in row.inputs}
    words = [f"{name}={value}" for name, value in form.values.items() if name in known]
    try:
        answer = answer_sum(row.name, words, asked_of(request))
    except InputError as error:
        return SumPage(row, _marked(form, error, known), (), (), (), error.message)
    return SumPage(
        row, form, _values(row, answer), tuple(n.text for n in answer.notices),
        answer.sources, "",
    )  # fmt: skip


def _marked(form: Form, error: KrumeError, known: set[str]) -> Form:
    """The sentence beside the field it is about."""
    name = error.field if error.field in known else error.where
    return form.with_wrong(name, error.message) if name in known else form


def _values(row: SumRow, answer: Answer[dict[str, Json]]) -> tuple[Value, ...]:
    meanings = {output.name: output.meaning for output in row.outputs}
    return tuple(
        Value(name, meaning, _text(answer.result.get(name)), unit_of(name))
        for name, meaning in meanings.items()
    )


def _text(value: object) -> str:
    if isinstance(value, Interval):
        return amount(value, 2)
    if isinstance(value, dict) and value.keys() == {"low", "best", "high"}:
        return amount(Interval(value["low"], value["best"], value["high"]), 2)
    if isinstance(value, bool):
        return "yes" if value else "no"
    if value is None or isinstance(value, int | float):
        return amount(value, 4 if isinstance(value, float) and abs(value) < 1 else 2)
    if isinstance(value, list | tuple):
        return ", ".join(_text(each) for each in value) or "none"
    return str(value)


ROUTES = (Route("/sums", sums), Route("/sums/{name}", one_sum))
