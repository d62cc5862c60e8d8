"""The list of formulas, and each one: text, questions, balance, sizes, versions."""

from dataclasses import dataclass
from urllib.parse import quote

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import ConflictError, KrumeError
from krume.usecases import (
    Asked,
    CheckResult,
    Explanation,
    LineChange,
    SizeOption,
    SizeResult,
    SizeWish,
    TextNow,
    TextRow,
    TextVersion,
    answered_text,
    bring_back,
    check_formula,
    differences,
    read_formula,
    save_text,
    size_formula,
    text_now,
    texts_of,
    versions_of,
)
from krume.web.formulas.strips import Strip, strips
from krume.web.formulas.twin import Question, TwinRow, elsewhere, twin
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page

_PAGE = 200
_SEE_OTHER = 303


@dataclass(frozen=True, slots=True)
class ListPage:
    """Formulas that are searched for, and the box for a new one."""

    rows: tuple[TextRow, ...]
    more: int
    search: str
    form: Form


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
    size: "SizePart"
    versions: tuple[TextVersion, ...]


@dataclass(frozen=True, slots=True)
class SizePart:
    """The sizes of a formula for a tin that was asked for."""

    tin: str
    result: SizeResult | None
    options: tuple[SizeOption, ...]
    asks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class EditPage:
    """A text being edited; `theirs` is what another kept in the meantime, line against line."""

    name: str
    address: str
    form: Form
    theirs: tuple[LineChange, ...]


@dataclass(frozen=True, slots=True)
class VersionPage:
    """One old version, line against line with the text as it is now."""

    name: str
    address: str
    version: TextVersion
    now: int | None
    changes: tuple[LineChange, ...]


def formulas(request: Request) -> Response:
    """The list, with what is searched for."""
    return _list(request, Form())


def _list(request: Request, form: Form, *, status: int = 200) -> Response:
    search = request.query_params.get("search", "")
    rows = texts_of("formula", asked_of(request), search=search)
    context = ListPage(rows[:_PAGE], max(0, len(rows) - _PAGE), search, form)
    return page(
        request, "formulas/list.html", context, title="Formulas", section="formulas", status=status
    )


async def add(request: Request) -> Response:
    """A new formula from its text; what was typed stays when it cannot be kept."""
    form = await read_form(request)
    return await run_in_threadpool(_add, request, form)


def _add(request: Request, form: Form) -> Response:
    try:
        now = save_text("formula", form.get("name"), form.get("text"), asked_of(request), seen=None)
    except KrumeError as error:
        field = "name" if isinstance(error, ConflictError) else "text"
        form = form.with_wrong(field, error.message)
        return _list(request, form, status=error.http_status)
    return _to(_address(now.name))


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
    check = check_formula(place, asked, explain=why) if why else check_formula(place, asked)
    rows = twin(read.result, check.result, read.problems)
    return FormulaPage(
        now=now,
        address=_address(now.name),
        check=check.result,
        rows=rows,
        questions=elsewhere(rows, read.problems),
        open_count=len(read.problems),
        strips=strips(check.result),
        notices=tuple(dict.fromkeys(notice.text for notice in check.notices)),
        why=check.explain,
        size=_size(place, request.query_params.get("tin", "").strip(), asked),
        versions=versions_of("formula", now.name, asked),
    )


def _size(place: str, tin: str, asked: Asked) -> SizePart:
    if not tin:
        return SizePart("", None, (), ())
    answer = size_formula(place, SizeWish((tin,)), asked)
    asks = tuple(dict.fromkeys(problem.ask for problem in answer.problems))
    return SizePart(tin, answer.result, answer.result.options, asks)


async def answer(request: Request) -> Response:
    """An answer is an edit: one line of the text is changed and kept."""
    form = await read_form(request)
    return await run_in_threadpool(_answer, request, form)


def _answer(request: Request, form: Form) -> Response:
    name, asked = request.path_params["name"], asked_of(request)
    now = text_now("formula", name, asked)
    text = answered_text(now.text, f"{form.get('where')}={form.get('line')}")
    save_text("formula", name, text, asked, seen=form.whole("seen"))
    return _to(_address(name))


def edit(request: Request) -> Response:
    """The text in a box."""
    name = request.path_params["name"]
    now = text_now("formula", name, asked_of(request))
    form = Form({"text": now.text, "seen": "" if now.revision is None else str(now.revision)})
    return _edit(request, name, form, ())


async def save(request: Request) -> Response:
    """Keep what was typed; when another was kept meanwhile, both are shown."""
    form = await read_form(request)
    return await run_in_threadpool(_save, request, form)


def _save(request: Request, form: Form) -> Response:
    name, asked = request.path_params["name"], asked_of(request)
    try:
        save_text("formula", name, form.get("text"), asked, seen=form.whole("seen"))
    except ConflictError as error:
        now = text_now("formula", name, asked)
        both = Form({**form.values, "seen": str(now.revision)}).with_wrong("text", error.message)
        return _edit(request, name, both, differences(now.text, form.get("text")), 409)
    except KrumeError as error:
        return _edit(request, name, form.with_wrong("text", error.message), (), error.http_status)
    return _to(_address(name))


def _edit(
    request: Request, name: str, form: Form, theirs: tuple[LineChange, ...], status: int = 200
) -> Response:
    context = EditPage(name, _address(name), form, theirs)
    return page(
        request, "formulas/edit.html", context, title=f"Edit {name}", section="formulas",
        status=status,
    )  # fmt: skip


def version(request: Request) -> Response:
    """An old version against the text as it is now."""
    name, asked = request.path_params["name"], asked_of(request)
    now = text_now("formula", name, asked)
    wanted = request.path_params["revision"]
    found = next((v for v in versions_of("formula", name, asked) if v.revision == wanted), None)
    if found is None:
        return _to(_address(name))
    changes = differences(found.text, now.text)
    context = VersionPage(name, _address(name), found, now.revision, changes)
    title = f"{name}, version {wanted}"
    return page(request, "formulas/version.html", context, title=title, section="formulas")


async def take_version(request: Request) -> Response:
    """An old version kept again as the newest."""
    name, revision = request.path_params["name"], request.path_params["revision"]
    await run_in_threadpool(bring_back, "formula", name, asked_of(request), revision=revision)
    return _to(_address(name))


def _address(name: str) -> str:
    return f"/formulas/{quote(name, safe='')}"


def _to(address: str) -> Response:
    return RedirectResponse(address, status_code=_SEE_OTHER)


ROUTES = (
    Route("/formulas", formulas, methods=["GET"]),
    Route("/formulas", add, methods=["POST"]),
    Route("/formulas/{name}", formula, methods=["GET"]),
    Route("/formulas/{name}/answer", answer, methods=["POST"]),
    Route("/formulas/{name}/edit", edit, methods=["GET"]),
    Route("/formulas/{name}/edit", save, methods=["POST"]),
    Route("/formulas/{name}/versions/{revision:int}", version, methods=["GET"]),
    Route("/formulas/{name}/versions/{revision:int}", take_version, methods=["POST"]),
)
