"""The list of one kind of text: what is searched for, and the box for a new one."""

from dataclasses import dataclass

from starlette.requests import Request
from starlette.responses import Response

from krume.usecases import TextRow, texts_of
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page
from krume.web.texts.pages import Shown, TextKind

_PAGE = 200


@dataclass(frozen=True, slots=True)
class ListPage:
    """Texts that are searched for, and the box for a new one."""

    rows: tuple[TextRow, ...]
    more: int
    search: str
    form: Form


def list_page(kind: TextKind, title: str) -> Shown:
    """The list of a kind of text as a page; its template is the section's `list.html`."""

    def shown(request: Request, form: Form, status: int = 200) -> Response:
        search = request.query_params.get("search", "")
        rows = texts_of(kind.word, asked_of(request), search=search)
        context = ListPage(rows[:_PAGE], max(0, len(rows) - _PAGE), search, form)
        return page(
            request, f"{kind.section}/list.html", context, title=title, section=kind.section,
            status=status,
        )  # fmt: skip

    return shown
