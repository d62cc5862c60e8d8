"""Pages from templates: one context a page, and what every page has around it."""

import re
from dataclasses import dataclass
from functools import cache
from hashlib import blake2b
from typing import TYPE_CHECKING

from starlette.requests import Request
from starlette.responses import HTMLResponse

from krume import __version__
from krume.base import unturned
from krume.store import book_at
from krume.usecases import Asked, data_version
from krume.web.frame.figures import FILTERS
from krume.web.frame.glyphs import GLYPHS

if TYPE_CHECKING:
    from jinja2 import Environment

SECTIONS = (
    ("today", "/", "Today"),
    ("formulas", "/formulas", "Formulas"),
    ("tortes", "/tortes", "Tortes"),
    ("orders", "/orders", "Orders"),
    ("plan", "/plan", "Plan"),
    ("trials", "/trials", "Trials"),
    ("pantry", "/pantry", "Pantry"),
    ("ovens", "/ovens", "Tins and ovens"),
    ("sums", "/sums", "Sums"),
)
"""Section, address and word of the navigation, in the order of the work."""


_CONTROL = re.compile(r"[\x00-\x08\x0b-\x1f]")


@dataclass(frozen=True, slots=True)
class Frame:
    """What stands around every page: its section, and by which program and data it was made.

    `book` tells books apart that are served at one address, so that no device mixes what it keeps
    of them. `shows_all` is asked for where a list is cut short.
    """

    title: str
    section: str
    path: str
    made_by: str
    book: str
    shows_all: bool = False


def asked_of(request: Request) -> Asked:
    """The request as the usecases take it: this server's book, judged on the book's own day."""
    asked: Asked = request.app.state.asked
    return asked


def page(
    request: Request,
    template: str,
    context: object,
    *,
    title: str,
    section: str = "",
    status: int = 200,
) -> HTMLResponse:
    """A template as a page; it sees its own context as `page`, and the frame as `frame`."""
    frame = Frame(
        title=" ".join(title.split()),
        section=section,
        path=request.url.path,
        made_by=f"krume {__version__}, data {data_version()}",
        book=_mark_of(asked_of(request)),
        shows_all="all" in request.query_params,
    )
    text = _templates().get_template(template).render(page=context, frame=frame)
    return HTMLResponse(_printable(text), status_code=status)


def _mark_of(asked: Asked) -> str:
    """The same for one book wherever it is served from, another for each other one."""
    place = str(book_at(asked.book).path.absolute())
    return blake2b(place.encode(errors="surrogateescape"), digest_size=8).hexdigest()


def _printable(text: str) -> str:
    """Signs of control, and those that turn a line round, do not go out as markup."""
    return unturned(_CONTROL.sub("", text))


@cache
def _templates() -> "Environment":
    from jinja2 import Environment, PackageLoader, StrictUndefined
    from markupsafe import Markup

    environment = Environment(
        loader=PackageLoader("krume.web", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    environment.filters.update(FILTERS)
    # Glyphs are the package's own drawings: they hold nothing a person typed.
    glyphs = {name: Markup(drawing) for name, drawing in GLYPHS.items()}  # noqa: S704
    environment.globals.update(SECTIONS=SECTIONS, GLYPHS=glyphs)
    return environment
