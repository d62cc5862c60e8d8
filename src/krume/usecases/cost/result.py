"""The answer of `cost`: the heads, the price and what it means, in the contract's words."""

from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from fractions import Fraction

from krume.base import exact, money_text, to_cent
from krume.build import weakest
from krume.cost import (
    PLANNED,
    Component,
    Costed,
    Heads,
    Offer,
    Planned,
    margin_of,
    price_for_margin,
    price_for_markup,
)
from krume.usecases.cost.sold import Item, Sold


@dataclass(frozen=True, slots=True)
class CostLine:
    """One line of a formula for the batches paid for; `cost` is not rounded to the cent.

    `count` are eggs or pieces paid for: a yolk or a white alone is half an egg.
    """

    line: int
    read: str
    mass_g: float | None
    count: Decimal | None
    price: Decimal | None
    per: str | None
    priced_as: str | None
    price_date: date | None
    cost: Decimal | None
    status: str


@dataclass(frozen=True, slots=True)
class CostComponent:
    """A formula with its head. A `cake` is paid whole, a `cream` by the grams that go in.

    `over_cost` of a cake is trim and inside `cost`; of a cream it is bought beyond it.
    """

    name: str
    title: str
    kind: str
    batches: Decimal | None
    used_g: float | None
    over_g: float | None
    cost: Decimal | None
    over_cost: Decimal | None
    lines: tuple[CostLine, ...]


@dataclass(frozen=True, slots=True)
class CostPlan:
    """A planned value of one torte."""

    name: str
    value: Decimal | None
    status: str


@dataclass(frozen=True, slots=True)
class CostSlice:
    """All of it cut into so many slices: what each brings and what each takes."""

    count: int
    price: Decimal | None
    full: Decimal | None


@dataclass(frozen=True, slots=True)
class CostMarkup:
    """The same percent as a markup on the cost: another price, and a smaller margin."""

    markup_pct: Decimal
    price: Decimal | None
    margin_pct: Decimal | None


@dataclass(frozen=True, slots=True)
class CostResult:
    """What it costs and what to ask for it; money in `currency`, which may be empty.

    All after `full` is at `price`: the one given, else the one agreed in the order, else the one
    for the margin (`price_basis`). Of an order all heads are of the whole order. `text` says what
    the price means.
    """

    name: str
    kind: str
    currency: str
    items: tuple[Item, ...]
    tortes: int
    material: Decimal | None
    labour: Decimal | None
    energy: Decimal | None
    packaging: Decimal | None
    direct: Decimal | None
    fixed_share: Decimal | None
    full: Decimal | None
    price: Decimal | None
    price_basis: str
    per_slice: Decimal | None
    slices: tuple[CostSlice, ...]
    price_for_margin: Decimal | None
    margin_asked_pct: Decimal
    markup: CostMarkup
    margin_pct: Decimal | None
    contribution: Decimal | None
    break_even: int | None
    break_even_unpaid: int | None
    per_hour: Decimal | None
    left_a_month: Decimal | None
    components: tuple[CostComponent, ...]
    planned: tuple[CostPlan, ...]
    missing: tuple[str, ...]
    status: str
    text: str


@dataclass(frozen=True, slots=True)
class Worked:
    """All that a cost was worked out from, and came to."""

    sold: Sold
    components: tuple[Component, ...]
    heads: Heads
    planned: Planned
    offer: Offer | None
    price_basis: str
    margin_pct: Decimal
    slices: tuple[int, ...]
    currency: str
    missing: tuple[str, ...]


def cost_result(worked: Worked) -> CostResult:
    """The answer of what was worked out."""
    heads, offer, full = worked.heads, worked.offer, worked.heads.full
    price = None if offer is None else offer.price
    slices = tuple(_slice(n, price, full) for n in worked.slices)
    return CostResult(
        name=worked.sold.name,
        kind=worked.sold.kind,
        currency=worked.currency,
        items=worked.sold.items,
        tortes=worked.sold.tortes,
        material=heads.material,
        labour=heads.labour,
        energy=heads.energy,
        packaging=heads.packaging,
        direct=heads.direct,
        fixed_share=heads.fixed_share,
        full=full,
        price=price,
        price_basis=worked.price_basis,
        per_slice=slices[-1].price if slices else None,
        slices=slices,
        price_for_margin=None if full is None else price_for_margin(full, worked.margin_pct),
        margin_asked_pct=worked.margin_pct,
        markup=_markup(full, worked.margin_pct),
        margin_pct=None if offer is None else offer.margin_pct,
        contribution=None if offer is None else offer.contribution,
        break_even=None if offer is None else offer.break_even,
        break_even_unpaid=None if offer is None else offer.break_even_unpaid,
        per_hour=None if offer is None else offer.per_hour,
        left_a_month=None if offer is None else offer.left_a_month,
        components=tuple(_component(each) for each in worked.components),
        planned=tuple(_plan(name, worked.planned) for name in PLANNED),
        missing=worked.missing,
        status=_status(worked),
        text="" if offer is None else _text(offer, worked),
    )


def _text(offer: Offer, worked: Worked) -> str:
    """What the price means, in one or two sentences."""
    price = money_text(offer.price, worked.currency)
    if offer.contribution is None:
        return f"At {price} nothing more can be said: the direct cost is not known."
    left = money_text(offer.contribution, worked.currency)
    paid = f"At {price} a torte leaves {left} after its direct cost"
    if offer.break_even is not None:
        paid = f"{paid}; break-even: {_tortes(offer.break_even)} a month"
    if offer.break_even_unpaid is None:
        return f"{paid}."
    unpaid = _tortes(offer.break_even_unpaid)
    return f"{paid}. If your own work is nothing: {unpaid}; this pays you nothing."


def _tortes(count: int) -> str:
    return "1 torte" if count == 1 else f"{count} tortes"


def _slice(count: int, price: Decimal | None, full: Decimal | None) -> CostSlice:
    return CostSlice(count, _each(price, count), _each(full, count))


def _each(amount: Decimal | None, count: int) -> Decimal | None:
    return None if amount is None else to_cent(exact(amount) / count)


def _markup(full: Decimal | None, pct: Decimal) -> CostMarkup:
    if full is None:
        return CostMarkup(pct, None, None)
    price = price_for_markup(full, pct)
    return CostMarkup(pct, price, margin_of(price, full))


def _component(made: Component) -> CostComponent:
    need = made.need
    return CostComponent(
        name=need.name,
        title=need.title,
        kind=need.kind,
        batches=None if made.batches is None else _four(made.batches),
        used_g=need.needed_g,
        over_g=made.over_g,
        cost=made.cost,
        over_cost=made.over_cost,
        lines=tuple(_line(costed, made) for costed in made.lines),
    )


def _line(costed: Costed, made: Component) -> CostLine:
    line, price = costed.line, costed.line.price
    batches, share = made.batches, made.line_share(line)
    return CostLine(
        line=line.number,
        read=line.read,
        mass_g=None if batches is None or line.mass_g is None else line.mass_g * float(batches),
        count=None if batches is None or line.count is None else _four(line.count * batches),
        price=None if price is None else price.amount,
        per=None if price is None else price.per,
        priced_as=None if price is None else price.item,
        price_date=None if price is None else price.day,
        cost=None if share is None else _four(share),
        status="unknown" if price is None else price.status,
    )


def _four(value: Fraction) -> Decimal:
    """Four digits after the point: enough to see what moves the cent."""
    return to_cent(value * 100).scaleb(-2)


def _plan(name: str, planned: Planned) -> CostPlan:
    value: Decimal | None = getattr(planned, name)
    return CostPlan(name, value, "unknown" if value is None else planned.status)


def _status(worked: Worked) -> str:
    """Status of the full cost: that of the weakest figure in it; unknown while it is."""
    if worked.heads.full is None:
        return "unknown"
    prices = [c.line.price for each in worked.components for c in each.lines]
    return weakest(worked.planned.status, *(p.status for p in prices if p is not None))
