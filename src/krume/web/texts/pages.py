"""Routes that every kind of text has: keep a new one, answer, edit, look back, take back."""

from collections.abc import Callable
from dataclasses import dataclass
from urllib.parse import quote

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.base import ConflictError, KrumeError
from krume.usecases import (
    LineChange,
    TextVersion,
    answered_text,
    bring_back,
    differences,
    save_text,
    text_now,
    versions_of,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page

_SEE_OTHER = 303
_CONFLICT = 409

Shown = Callable[[Request, Form, int], Response]
"""The page a form stands on, with the form and a status."""


@dataclass(frozen=True, slots=True)
class TextKind:
    """One kind of text in the app: its word, and the section it lives in.

    >>> TextKind("order", "orders").address("the café's")
    '/orders/the%20caf%C3%A9%27s'
    """

    word: str
    section: str

    def address(self, name: str) -> str:
        """Address of a text's own page."""
        return f"/{self.section}/{quote(name, safe='')}"


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
    word: str
    address: str
    version: TextVersion
    changes: tuple[LineChange, ...]


def text_routes(kind: TextKind, shown: Shown) -> tuple[Route, ...]:
    """Routes of a kind of text; `shown` is its list, which holds the box for a new one."""
    base, at = f"/{kind.section}", f"/{kind.section}/{{name}}"
    old = f"{at}/versions/{{revision:int}}"

    async def add(request: Request) -> Response:
        return await run_in_threadpool(_add, request, kind, await read_form(request), shown)

    async def answer(request: Request) -> Response:
        return await run_in_threadpool(_answer, request, kind, await read_form(request))

    async def save(request: Request) -> Response:
        return await run_in_threadpool(_save, request, kind, await read_form(request))

    async def take(request: Request) -> Response:
        return await run_in_threadpool(_take, request, kind)

    def edit(request: Request) -> Response:
        return _edit(request, kind)

    def version(request: Request) -> Response:
        return _version(request, kind)

    return (
        Route(base, add, methods=["POST"]),
        Route(f"{at}/answer", answer, methods=["POST"]),
        Route(f"{at}/edit", edit, methods=["GET"]),
        Route(f"{at}/edit", save, methods=["POST"]),
        Route(old, version, methods=["GET"]),
        Route(old, take, methods=["POST"]),
    )


def _add(request: Request, kind: TextKind, form: Form, shown: Shown) -> Response:
    """A new text; what was typed stays when it cannot be kept."""
    try:
        now = save_text(kind.word, form.get("name"), form.get("text"), asked_of(request), seen=None)
    except KrumeError as error:
        field = "name" if isinstance(error, ConflictError) else "text"
        return shown(request, form.with_wrong(field, error.message), error.http_status)
    return _to(kind.address(now.name))


def _answer(request: Request, kind: TextKind, form: Form) -> Response:
    """An answer is an edit: one line of the text is changed and kept."""
    name, asked = request.path_params["name"], asked_of(request)
    now = text_now(kind.word, name, asked)
    text = answered_text(now.text, f"{form.get('where')}={form.get('line')}")
    save_text(kind.word, name, text, asked, seen=form.whole("seen"))
    return _to(kind.address(name))


def _edit(request: Request, kind: TextKind) -> Response:
    """The text in a box."""
    name = request.path_params["name"]
    now = text_now(kind.word, name, asked_of(request))
    form = Form({"text": now.text, "seen": "" if now.revision is None else str(now.revision)})
    return _edit_page(request, kind, form)


def _save(request: Request, kind: TextKind, form: Form) -> Response:
    """Keep what was typed; when another was kept meanwhile, both are shown."""
    name, asked = request.path_params["name"], asked_of(request)
    try:
        save_text(kind.word, name, form.get("text"), asked, seen=form.whole("seen"))
    except ConflictError as error:
        now = text_now(kind.word, name, asked)
        both = Form({**form.values, "seen": str(now.revision)}).with_wrong("text", error.message)
        theirs = differences(now.text, form.get("text"))
        return _edit_page(request, kind, both, theirs, _CONFLICT)
    except KrumeError as error:
        wrong = form.with_wrong("text", error.message)
        return _edit_page(request, kind, wrong, (), error.http_status)
    return _to(kind.address(name))


def _edit_page(
    request: Request,
    kind: TextKind,
    form: Form,
    theirs: tuple[LineChange, ...] = (),
    status: int = 200,
) -> Response:
    name = request.path_params["name"]
    context = EditPage(name, kind.address(name), form, theirs)
    return page(
        request, "texts/edit.html", context, title=f"Edit {name}", section=kind.section,
        status=status,
    )  # fmt: skip


def _version(request: Request, kind: TextKind) -> Response:
    """An old version against the text as it is now."""
    name, asked = request.path_params["name"], asked_of(request)
    wanted = request.path_params["revision"]
    now = text_now(kind.word, name, asked)
    found = next((v for v in versions_of(kind.word, name, asked) if v.revision == wanted), None)
    if found is None:
        return _to(kind.address(name))
    changes = differences(found.text, now.text)
    context = VersionPage(name, kind.word, kind.address(name), found, changes)
    title = f"{name}, version {wanted}"
    return page(request, "texts/version.html", context, title=title, section=kind.section)


def _take(request: Request, kind: TextKind) -> Response:
    """An old version kept again as the newest."""
    name, revision = request.path_params["name"], request.path_params["revision"]
    bring_back(kind.word, name, asked_of(request), revision=revision)
    return _to(kind.address(name))


def _to(address: str) -> Response:
    return RedirectResponse(address, status_code=_SEE_OTHER)
