"""A whole table by file: what it would change is shown, and only then kept."""

from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import KrumeError, Problem
from krume.usecases import TableChange, keep_table, questions_of_table, table_change
from krume.web.frame.forms import Form, read_form
from krume.web.frame.guarding import BODY_LIMIT
from krume.web.frame.rendering import asked_of, page
from krume.web.tables.kinds import TableKind

_SEE_OTHER = 303


@dataclass(frozen=True, slots=True)
class FilePage:
    """The box for a file; `change` is what the one that was sent would change."""

    kind: TableKind
    form: Form
    change: TableChange | None
    problems: tuple[Problem, ...]


def file_routes(kind: TableKind) -> tuple[Route, ...]:
    """Routes of a table that comes as a file."""
    at = f"{kind.address}/file"

    def box(request: Request) -> Response:
        return _page(request, kind, Form())

    async def look(request: Request) -> Response:
        return await run_in_threadpool(_look, request, kind, await _sent(request))

    async def keep(request: Request) -> Response:
        return await run_in_threadpool(_keep, request, kind, await _sent(request))

    return (
        Route(at, box, methods=["GET"]),
        Route(at, look, methods=["POST"]),
        Route(f"{at}/keep", keep, methods=["POST"]),
    )


async def _sent(request: Request) -> Form:
    """The form; a table comes back as one long field, which may be as long as a body."""
    await request.form(max_files=4, max_fields=500, max_part_size=BODY_LIMIT)
    try:
        return await read_form(request)
    finally:
        await request.close()


def _look(request: Request, kind: TableKind, form: Form) -> Response:
    """What the file would change; a file that is no table is refused with a sentence."""
    asked = asked_of(request)
    try:
        change = table_change(kind.place, form.get("file"), asked, required=kind.required)
    except KrumeError as error:
        wrong = Form().with_wrong("file", error.message)
        return _page(request, kind, wrong, status=error.http_status)
    problems = questions_of_table(kind.place, change.text, asked)
    return _page(request, kind, Form(), change, problems)


def _keep(request: Request, kind: TableKind, form: Form) -> Response:
    try:
        keep_table(
            kind.place, form.get("text"), asked_of(request), seen=form.get("seen"),
            required=kind.required,
        )  # fmt: skip
    except KrumeError as error:
        wrong = Form().with_wrong("file", error.message)
        return _page(request, kind, wrong, status=error.http_status)
    return RedirectResponse(kind.home, status_code=_SEE_OTHER)


def _page(
    request: Request,
    kind: TableKind,
    form: Form,
    change: TableChange | None = None,
    problems: tuple[Problem, ...] = (),
    status: int = 200,
) -> Response:
    context = FilePage(kind, form, change, problems)
    title = f"{kind.title} from a file"
    return page(
        request, "tables/file.html", context, title=title, section=kind.section, status=status
    )
