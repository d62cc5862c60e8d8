"""The list of formulas, and each one: text, questions, balance, sizes, versions."""

from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import ConflictError, InputError
from krume.usecases import (
    CheckResult,
    Explanation,
    ParentNow,
    TextNow,
    TextVersion,
    check_formula,
    parent_now,
    read_formula,
    text_now,
    units_of,
    versions_of,
)
from krume.web.formulas.card import CARD_ROUTES
from krume.web.formulas.sizing import NotKept, SizePart, kept_size, size_part
from krume.web.formulas.strips import Strip, strips
from krume.web.formulas.twin import TwinRow, twin
from krume.web.formulas.weighing import WeighTable, weigh_table
from krume.web.frame.forms import Form, read_form
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
    parent: ParentNow | None
    check: CheckResult
    rows: tuple[TwinRow, ...]
    questions: tuple[Question, ...]
    open_count: int
    strips: tuple[Strip, ...]
    notices: tuple[str, ...]
    why: Explanation | None
    weighing: WeighTable | None
    size: SizePart
    versions: tuple[TextVersion, ...]


def formulas(request: Request) -> Response:
    """The list, with what is searched for."""
    return _LIST(request, Form(), 200)


def formula(request: Request) -> Response:
    """One formula."""
    return _page(request)


def _page(request: Request, not_kept: NotKept | None = None) -> Response:
    name = request.path_params["name"]
    now = text_now("formula", name, asked_of(request))
    return page(
        request, "formulas/formula.html", _formula(request, now, not_kept),
        title=now.title or name, section="formulas",
        status=200 if not_kept is None else not_kept.error.http_status,
    )  # fmt: skip


async def keep_size(request: Request) -> Response:
    """A size kept as a child, and perhaps weighed at once."""
    form = await read_form(request)
    return await run_in_threadpool(_keep_size, request, form)


def _keep_size(request: Request, form: Form) -> Response:
    try:
        return kept_size(request.path_params["name"], form, asked_of(request))
    except (ConflictError, InputError) as error:
        return _page(request, NotKept(form, error))


def _formula(request: Request, now: TextNow, not_kept: NotKept | None) -> FormulaPage:
    asked, place = asked_of(request), f"formulas/{now.name}.txt"
    read = read_formula(place, asked)
    why = request.query_params.get("why")
    tin = request.query_params.get("tin", "") if not_kept is None else not_kept.form.get("tin")
    lines = request.query_params.get("lines") == "1"
    check = check_formula(place, asked, explain=why or None, lines=lines)
    rows = twin(read.result, check.result, read.problems, units_of(asked))
    return FormulaPage(
        now=now,
        address=_KIND.address(now.name),
        parent=parent_now(now.name, asked),
        check=check.result,
        rows=rows,
        questions=elsewhere((row.number for row in rows), read.problems),
        open_count=len(read.problems),
        strips=strips(check.result),
        notices=tuple(dict.fromkeys(notice.text for notice in check.notices)),
        why=check.explain,
        weighing=weigh_table(check.result),
        size=size_part(place, tin.strip(), asked, not_kept),
        versions=versions_of("formula", now.name, asked),
    )


ROUTES = (
    Route("/formulas", formulas, methods=["GET"]),
    Route("/formulas/{name}", formula, methods=["GET"]),
    Route("/formulas/{name}/sizes", keep_size, methods=["POST"]),
    *CARD_ROUTES,
    *text_routes(_KIND, _LIST),
)
