"""The list of formulas, and each one: text, questions, balance, sizes, versions."""

from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.usecases import (
    Asked,
    CheckResult,
    Explanation,
    SizeOption,
    SizeResult,
    SizeWish,
    TextNow,
    TextVersion,
    check_formula,
    read_formula,
    size_formula,
    text_now,
    versions_of,
)
from krume.web.formulas.card import CARD_ROUTES
from krume.web.formulas.strips import Strip, strips
from krume.web.formulas.twin import TwinRow, twin
from krume.web.formulas.weighing import WeighTable, weigh_table
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page
from krume.web.texts.lists import list_page
from krume.web.texts.pages import TextKind, text_routes
from krume.web.texts.questions import Question, elsewhere

_KIND = TextKind("formula", "formulas")
_LIST = list_page(_KIND, "Formulas")


@dataclass(frozen=True, slots=True)
class FormulaPage:
    """One formula: its text beside what was understood, its balance, sizes and versions."""

    now: TextNow
    address: str
    check: CheckResult
    rows: tuple[TwinRow, ...]
    questions: tuple[Question, ...]
    open_count: int
    strips: tuple[Strip, ...]
    notices: tuple[str, ...]
    why: Explanation | None
    weighing: WeighTable | None
    size: "SizePart"
    versions: tuple[TextVersion, ...]


@dataclass(frozen=True, slots=True)
class SizePart:
    """The sizes of a formula for a tin that was asked for."""

    tin: str
    result: SizeResult | None
    options: tuple[SizeOption, ...]
    asks: tuple[str, ...]


def formulas(request: Request) -> Response:
    """The list, with what is searched for."""
    return _LIST(request, Form(), 200)


def formula(request: Request) -> Response:
    """One formula."""
    name = request.path_params["name"]
    now = text_now("formula", name, asked_of(request))
    context = _formula(request, now)
    return page(
        request, "formulas/formula.html", context, title=now.title or name, section="formulas"
    )


def _formula(request: Request, now: TextNow) -> FormulaPage:
    asked, place = asked_of(request), f"formulas/{now.name}.txt"
    read = read_formula(place, asked)
    why = request.query_params.get("why")
    lines = request.query_params.get("lines") == "1"
    check = check_formula(place, asked, explain=why or None, lines=lines)
    rows = twin(read.result, check.result, read.problems)
    return FormulaPage(
        now=now,
        address=_KIND.address(now.name),
        check=check.result,
        rows=rows,
        questions=elsewhere((row.number for row in rows), read.problems),
        open_count=len(read.problems),
        strips=strips(check.result),
        notices=tuple(dict.fromkeys(notice.text for notice in check.notices)),
        why=check.explain,
        weighing=weigh_table(check.result),
        size=_size(place, request.query_params.get("tin", "").strip(), asked),
        versions=versions_of("formula", now.name, asked),
    )


def _size(place: str, tin: str, asked: Asked) -> SizePart:
    if not tin:
        return SizePart("", None, (), ())
    answer = size_formula(place, SizeWish((tin,)), asked)
    asks = tuple(dict.fromkeys(problem.ask for problem in answer.problems))
    return SizePart(tin, answer.result, answer.result.options, asks)


ROUTES = (
    Route("/formulas", formulas, methods=["GET"]),
    Route("/formulas/{name}", formula, methods=["GET"]),
    *CARD_ROUTES,
    *text_routes(_KIND, _LIST),
)
