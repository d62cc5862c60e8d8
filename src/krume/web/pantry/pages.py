"""The pantry's first page, the room of the day, and the packed ingredients."""

from dataclasses import dataclass

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import RedirectResponse, Response
from starlette.routing import Route

from krume.usecases import (
    IngredientNow,
    IngredientsFound,
    PantryNow,
    add_row,
    ingredient_now,
    ingredients_found,
    pantry_now,
    room_now,
    save_row,
)
from krume.web.frame.forms import Form, read_form
from krume.web.frame.rendering import asked_of, page
from krume.web.pantry.kinds import CLEANING, LOTS, PACKS, PRICES, ROOM
from krume.web.tables.pages import table_routes

_SEE_OTHER = 303
SIGNS = {
    "good": ("in", "good"),
    "not-needed": ("in", "good"),
    "expired": ("shut", "stop"),
    "conflict": ("clash", "stop"),
    "missing": ("ask", "ask"),
    "not-yet-valid": ("ask", "ask"),
}
"""Glyph and colour of each state of a record; its word stands beside them."""


@dataclass(frozen=True, slots=True)
class PantryPage:
    """What stops an order, then the lots."""

    now: PantryNow
    signs: dict[str, tuple[str, str]]


@dataclass(frozen=True, slots=True)
class SearchPage:
    """Ingredients that were searched for."""

    search: str
    found: IngredientsFound


@dataclass(frozen=True, slots=True)
class IngredientPage:
    """One ingredient with its papers."""

    now: IngredientNow


def pantry(request: Request) -> Response:
    """The first page."""
    context = PantryPage(pantry_now(asked_of(request)), SIGNS)
    return page(request, "pantry/pantry.html", context, title="Pantry", section="pantry")


def lots(_: Request) -> Response:
    """The lots stand on the first page."""
    return RedirectResponse(LOTS.home, status_code=_SEE_OTHER)


async def room(request: Request) -> Response:
    """Keep the room's record of the day."""
    return await run_in_threadpool(_room, request, await read_form(request))


def _room(request: Request, form: Form) -> Response:
    """One record a day: a second answer is a new version of the first."""
    asked = asked_of(request)
    now, said = room_now(asked), "yes" if form.get("cleaned") == "yes" else "no"
    if now.row is None or now.row.key is None:
        cells = {"date": now.today.isoformat(), "cleaned": said}
        add_row(CLEANING.place, cells, asked, head=CLEANING.head)
    else:
        cells = {"cleaned": said}
        save_row(CLEANING.place, now.row.key, cells, asked, seen=form.whole("seen"))
    return RedirectResponse("/pantry#room", status_code=_SEE_OTHER)


def search(request: Request) -> Response:
    """Ingredients by words of their names."""
    words = request.query_params.get("search", "").strip()
    context = SearchPage(words, ingredients_found(words))
    title = "Ingredients"
    return page(request, "pantry/search.html", context, title=title, section="pantry")


def one_ingredient(request: Request) -> Response:
    """One ingredient of the packed pantry."""
    now = ingredient_now(request.path_params["name"], asked_of(request))
    title = now.label_name.capitalize()
    context = IngredientPage(now)
    return page(request, "pantry/ingredient.html", context, title=title, section="pantry")


ROUTES = (
    Route("/pantry", pantry, methods=["GET"]),
    Route("/pantry/room", room, methods=["POST"]),
    Route("/pantry/search", search, methods=["GET"]),
    Route("/pantry/lots", lots, methods=["GET"]),
    *table_routes(LOTS, is_listed=False),
    *table_routes(CLEANING),
    *table_routes(ROOM),
    *table_routes(PRICES),
    *table_routes(PACKS),
    Route("/pantry/{name}", one_ingredient, methods=["GET"]),
)
