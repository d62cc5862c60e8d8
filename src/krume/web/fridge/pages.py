"""The fridge was off: what stood in it, the hours and readings; then keep, discard, not shown."""

from dataclasses import dataclass, replace

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError, KrumeError
from krume.usecases import (
    FridgePart,
    FridgeResult,
    FridgeWish,
    OrderStanding,
    fridge_off,
    orders_of,
    typed_number,
)
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page

_PAST = "past"
_MOST_ORDERS, _MOST_NAMES = 40, 60
_DOORS = ("shut", "opened", "unknown")
_NUMBERS = {"food": "product_c", "air": "air_c", "before": "before_c"}
_FIELDS = {"product_c": "food", "air_c": "air", "before_c": "before", "hours": "since"}


@dataclass(frozen=True, slots=True)
class PartGroup:
    """Components of one verdict for one reason."""

    verdict: str
    text: str
    parts: tuple[FridgePart, ...]


@dataclass(frozen=True, slots=True)
class FridgeContext:
    """What was typed, the orders that can be ticked, and what follows; None is not judged yet."""

    form: Form
    orders: tuple[OrderStanding, ...]
    ticked: frozenset[str]
    doors: tuple[str, ...]
    found: FridgeResult | None
    groups: tuple[PartGroup, ...]
    asks: tuple[str, ...]
    notices: tuple[str, ...]
    refusal: str


def fridge(request: Request) -> Response:
    """A fridge that was off, by what is typed; nothing is judged before something is said."""
    query = request.query_params
    rows = tuple(row for row in orders_of(asked_of(request)) if row.state != _PAST)
    of = tuple(dict.fromkeys(name.strip() for name in query.getlist("of") if name.strip()))
    form = Form({key: text.strip() for key, text in query.items() if text.strip()})
    bare = FridgeContext(
        form=form,
        orders=rows[:_MOST_ORDERS],
        ticked=frozenset(of),
        doors=_DOORS,
        found=None,
        groups=(),
        asks=(),
        notices=(),
        refusal="",
    )
    context = _judged(request, bare, of) if "judge" in query or of or form.get("since") else bare
    status = 422 if context.form.wrong or context.refusal else 200
    return page(
        request, "fridge/fridge.html", context, title="The fridge was off", section="orders",
        status=status,
    )  # fmt: skip


def _judged(request: Request, bare: FridgeContext, of: tuple[str, ...]) -> FridgeContext:
    more = tuple(word.strip() for word in bare.form.get("more").split(",") if word.strip())
    names = tuple(dict.fromkeys((*of, *more)))
    if len(names) > _MOST_NAMES:
        return replace(bare, refusal=f"{_MOST_NAMES} names are judged at once, not more.")
    numbers, form = _numbers(bare.form)
    if form.wrong:
        return replace(bare, form=form)
    door = form.get("door") if form.get("door") in _DOORS else "unknown"
    readings = tuple(word.strip() for word in form.get("readings").split(",") if word.strip())
    wish = FridgeWish(
        names, form.get("since"), form.get("until"), door, numbers["product_c"],
        numbers["air_c"], numbers["before_c"], readings,
    )  # fmt: skip
    try:
        answer = fridge_off(wish, asked_of(request))
    except InputError as error:
        field = _FIELDS.get(error.field, error.field)
        if field in ("since", "until", "food", "air", "before", "readings"):
            return replace(bare, form=form.with_wrong(field, error.message))
        return replace(bare, refusal=error.message)
    except KrumeError as error:
        return replace(bare, refusal=error.message)
    return replace(
        bare,
        found=answer.result,
        groups=_groups(answer.result),
        asks=tuple(problem.ask for problem in answer.problems),
        notices=tuple(dict.fromkeys(notice.text for notice in answer.notices)),
    )


def _numbers(form: Form) -> tuple[dict[str, float | None], Form]:
    found: dict[str, float | None] = {}
    for name, field in _NUMBERS.items():
        text = form.get(name)
        found[field] = typed_number(text) if text else None
        if text and found[field] is None:
            form = form.with_wrong(name, f"“{text}” is no temperature. Type degrees Celsius: 9.5")
    return found, form


def _groups(found: FridgeResult) -> tuple[PartGroup, ...]:
    groups: dict[tuple[str, str], list[FridgePart]] = {}
    for part in found.components:
        groups.setdefault((part.verdict, part.text), []).append(part)
    return tuple(PartGroup(*key, tuple(parts)) for key, parts in groups.items())


ROUTES = (Route("/fridge", fridge, methods=["GET"]),)
