"""Routes that every table has: its rows, each as a form with its version, and a file of all."""

from collections.abc import Mapping
from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import InputError, KrumeError, NotFoundError, Problem
from krume.usecases import (
    AskedTable,
    RowConflictError,
    RowNow,
    add_row,
    asked_table,
    delete_row,
    row_questions,
    save_row,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page
from krume.web.tables.files import file_routes
from krume.web.tables.kinds import Field, TableKind

_SEE_OTHER = 303
_UNPROCESSABLE = 422


@dataclass(frozen=True, slots=True)
class Beside:
    """One column of a row in two versions."""

    label: str
    theirs: str
    mine: str


@dataclass(frozen=True, slots=True)
class RowPage:
    """A row as a form; `theirs` is what another kept in the meantime, beside what was typed."""

    kind: TableKind
    address: str
    is_new: bool
    fields: tuple[Field, ...]
    form: Form
    said: str
    theirs: tuple[Beside, ...]


@dataclass(frozen=True, slots=True)
class TablePage:
    """All rows of a table with their questions."""

    kind: TableKind
    found: AskedTable
    fields: tuple[Field, ...]


def table_routes(kind: TableKind, *, is_listed: bool = True) -> tuple[Route, ...]:
    """Routes of a table; one that is listed on another page has no list of its own."""
    new, row = f"{kind.address}/new", f"{kind.address}/{{key:int}}"

    def listed(request: Request) -> Response:
        return _list(request, kind)

    def opened(request: Request) -> Response:
        return _opened(request, kind)

    def blank(request: Request) -> Response:
        typed = {each.name: request.query_params.get(each.name, "") for each in kind.fields}
        return _page(request, kind, Form(typed), is_new=True)

    async def add(request: Request) -> Response:
        return await run_in_threadpool(_add, request, kind, await read_form(request))

    async def save(request: Request) -> Response:
        return await run_in_threadpool(_save, request, kind, await read_form(request))

    async def delete(request: Request) -> Response:
        return await run_in_threadpool(_delete, request, kind, await read_form(request))

    return (
        *((Route(kind.address, listed, methods=["GET"]),) if is_listed else ()),
        Route(new, blank, methods=["GET"]),
        Route(new, add, methods=["POST"]),
        Route(row, opened, methods=["GET"]),
        Route(row, save, methods=["POST"]),
        Route(f"{row}/delete", delete, methods=["POST"]),
        *file_routes(kind),
    )


def _list(request: Request, kind: TableKind) -> Response:
    found = asked_table(kind.place, asked_of(request))
    context = TablePage(kind, found, kind.fields_of(found.table.head))
    return page(request, "tables/list.html", context, title=kind.title, section=kind.section)


def _row(request: Request, kind: TableKind) -> tuple[RowNow, tuple[Problem, ...]]:
    key, found = request.path_params["key"], asked_table(kind.place, asked_of(request))
    row = next((each for each in found.table.rows if each.key == key), None)
    if row is None:
        message = f"{kind.place} has no such row. It may have been taken out."
        raise NotFoundError(message, where=kind.place, got=str(key))
    return row, found.by_line.get(row.line, ())


def _opened(request: Request, kind: TableKind) -> Response:
    """A row in its form, with what is asked about it beside its fields."""
    row, problems = _row(request, kind)
    form = _asked(kind, Form({**row.cells, "seen": str(row.revision)}), problems)
    return _page(request, kind, form, is_new=False)


def _asked(kind: TableKind, form: Form, problems: tuple[Problem, ...]) -> Form:
    for problem in problems:
        form = form.with_wrong(kind.field_of(problem), kind.said(problem))
    return form


def _add(request: Request, kind: TableKind, form: Form) -> Response:
    """A new row; what was typed stays when it cannot be kept."""
    asked = asked_of(request)
    try:
        cells = _cells(kind, form)
        problems = row_questions(kind.place, cells, asked, key=None, head=kind.head)
        if not problems or _is_there(kind, cells, request):
            add_row(kind.place, cells, asked, head=kind.head)
            return _home(kind)
    except KrumeError as error:
        return _wrong(request, kind, form, error, is_new=True)
    asked_form = _asked(kind, form, problems)
    return _page(request, kind, asked_form, is_new=True, status=_UNPROCESSABLE)


def _is_there(kind: TableKind, cells: Mapping[str, str], request: Request) -> bool:
    """Whether this very row is in the table: it was sent twice."""
    filled = {name: " ".join(cell.split()) for name, cell in cells.items() if cell.strip()}
    rows = asked_table(kind.place, asked_of(request)).table.rows
    return any({n: c for n, c in row.cells.items() if c} == filled for row in rows)


def _save(request: Request, kind: TableKind, form: Form) -> Response:
    """Keep what was typed; when another was kept meanwhile, both are shown."""
    key, asked = request.path_params["key"], asked_of(request)
    try:
        cells = _cells(kind, form)
        problems = row_questions(kind.place, cells, asked, key=key, head=kind.head)
        if not problems:
            save_row(kind.place, key, cells, asked, seen=form.whole("seen"))
            return _home(kind)
    except RowConflictError as error:
        return _both(request, kind, form, error)
    except KrumeError as error:
        return _wrong(request, kind, form, error, is_new=False)
    asked_form = _asked(kind, form, problems)
    return _page(request, kind, asked_form, is_new=False, status=_UNPROCESSABLE)


def _delete(request: Request, kind: TableKind, form: Form) -> Response:
    key = request.path_params["key"]
    try:
        delete_row(kind.place, key, asked_of(request), seen=form.whole("seen"))
    except RowConflictError as error:
        return _both(request, kind, form, error)
    return _home(kind)


def _cells(kind: TableKind, form: Form) -> dict[str, str]:
    typed = {name: value for name, value in form.values.items() if name != "seen"}
    return kind.cells(typed)


def _both(request: Request, kind: TableKind, form: Form, error: RowConflictError) -> Response:
    """What another kept beside what was typed; kept again, mine goes over what was seen now."""
    now = error.now
    if now is None:
        return _page(request, kind, form, is_new=True, said=error.message, status=error.http_status)
    fields = kind.fields_of(tuple(now.cells))
    typed = {**now.cells, **form.values, "seen": str(now.revision)}
    theirs = tuple(
        Beside(each.label, now.get(each.name), typed[each.name])
        for each in fields
        if now.get(each.name) != typed[each.name]
    )
    return _page(
        request, kind, Form(typed), is_new=False, said=error.message, theirs=theirs,
        status=error.http_status,
    )  # fmt: skip


def _wrong(
    request: Request, kind: TableKind, form: Form, error: KrumeError, *, is_new: bool
) -> Response:
    """What cannot be kept, beside its field where it has one."""
    status = error.http_status
    fields = {each.name for each in (*kind.fields, *kind.extra)}
    if isinstance(error, InputError) and error.field in fields:
        wrong = form.with_wrong(error.field, error.message)
        return _page(request, kind, wrong, is_new=is_new, status=status)
    return _page(request, kind, form, is_new=is_new, said=error.message, status=status)


def _page(
    request: Request,
    kind: TableKind,
    form: Form,
    *,
    is_new: bool,
    said: str = "",
    theirs: tuple[Beside, ...] = (),
    status: int = 200,
) -> Response:
    head = asked_table(kind.place, asked_of(request)).table.head
    own = kind.fields if is_new else kind.fields_of(head)
    fields = tuple(each.with_choice(form.get(each.name)) for each in (*own, *kind.extra))
    address = f"{kind.address}/new" if is_new else f"{kind.address}/{request.path_params['key']}"
    context = RowPage(kind, address, is_new, fields, form, said, theirs)
    name = form.get(kind.fields[0].name)
    title = f"A new {kind.word}" if is_new else f"{kind.word.capitalize()} {name}"
    return page(
        request, "tables/row.html", context, title=title, section=kind.section, status=status
    )


def _home(kind: TableKind) -> Response:
    return RedirectResponse(kind.home, status_code=_SEE_OTHER)
