"""The eggs of open orders as a page: to buy first, then what to crack, bowls, and the rest."""

from dataclasses import dataclass, replace

from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from krume.base import InputError, KrumeError
from krume.usecases import EggsResult, EggsWish, OrderStanding, eggs_of, orders_of
from krume.web.eggs.shown import BowlRow, BuyRow, PackRow, bowl_rows, buy_rows, pack_rows
from krume.web.frame.asking import Ask, asked_with_answers, asks_of
from krume.web.frame.forms import Form
from krume.web.frame.rendering import asked_of, page

_PAST = "past"
_MOST_PACK = 360
_MOST_NAMES = 60
_MOST_ORDERS = 40


@dataclass(frozen=True, slots=True)
class Counted:
    """Eggs that were counted, as they are shown."""

    result: EggsResult
    buy: tuple[BuyRow, ...]
    packs: tuple[PackRow, ...]
    bowls: tuple[BowlRow, ...]


@dataclass(frozen=True, slots=True)
class EggsPage:
    """The orders that are counted, what is there, and the eggs they take."""

    form: Form
    orders: tuple[OrderStanding, ...]
    ticked: frozenset[str]
    more: str
    asks: tuple[Ask, ...]
    is_possible: bool
    counted: Counted | None
    notices: tuple[str, ...]
    refusal: str


def eggs(request: Request) -> Response:
    """Eggs of the orders that are ticked, all open ones where none is."""
    rows = orders_of(asked_of(request))
    is_open = tuple(row for row in rows if row.state != _PAST)[:_MOST_ORDERS]
    query = request.query_params
    of = tuple(dict.fromkeys(name.strip() for name in query.getlist("of") if name.strip()))
    form = Form({k: v for k, v in query.items() if v.strip()})
    named = {row.name for row in is_open}
    bare = EggsPage(
        form=form,
        orders=is_open,
        ticked=frozenset(of) if of else frozenset(named),
        more=form.get("more") or ", ".join(name for name in of if name not in named),
        asks=(),
        is_possible=True,
        counted=None,
        notices=(),
        refusal="",
    )
    context = _counted(request, bare, _names(of, form))
    status = 422 if context.form.wrong or context.refusal else 200
    return page(request, "eggs/eggs.html", context, title="Eggs", section="orders", status=status)


def _names(of: tuple[str, ...], form: Form) -> tuple[str, ...]:
    more = tuple(part.strip() for part in form.get("more").split(",") if part.strip())
    return tuple(dict.fromkeys((*of, *more)))


def _counted(request: Request, bare: EggsPage, names: tuple[str, ...]) -> EggsPage:
    """The page with its eggs, what is asked, or what is wrong; nothing is counted unasked."""
    if not names:
        return bare
    if len(names) > _MOST_NAMES:
        return replace(bare, refusal=f"{_MOST_NAMES} names are counted at once, not more.")
    packs, form = _packs(bare.form)
    if form.wrong:
        return replace(bare, form=form)
    wish = EggsWish(_lines(form.get("have")), _lines(form.get("shop")), packs)
    try:
        answer = eggs_of(names, wish, asked_with_answers(request))
    except InputError as error:
        if error.field in ("have", "shop"):
            return replace(bare, form=form.with_wrong(error.field, error.message))
        return replace(bare, refusal=error.message)
    except KrumeError as error:
        return replace(bare, refusal=error.message)
    result = answer.result
    is_counted = bool(result.formulas or result.packs or result.proven)
    shown = Counted(result, buy_rows(result), pack_rows(result), bowl_rows(result))
    return replace(
        bare,
        asks=asks_of(request, answer.problems),
        is_possible=answer.is_possible,
        counted=shown if is_counted else None,
        notices=tuple(dict.fromkeys(notice.text for notice in answer.notices)),
    )


def _lines(text: str) -> tuple[str, ...]:
    return tuple(line.strip() for line in text.splitlines() if line.strip())


def _packs(form: Form) -> tuple[tuple[int, ...], Form]:
    """Sizes of packs, with commas between."""
    words = [word.strip() for word in form.get("pack").split(",") if word.strip()]
    numbers = tuple(int(word) for word in words if word.isascii() and word.isdigit())
    if len(numbers) < len(words) or any(not 1 <= n <= _MOST_PACK for n in numbers):
        said = f"Whole numbers from 1 to {_MOST_PACK}, with commas between: 6, 10."
        return (), form.with_wrong("pack", said)
    return numbers, form


ROUTES = (Route("/eggs", eggs, methods=["GET"]),)
