"""What has to be said beside a cost: trim, spare cream, a price that cannot pay, local law."""

from collections.abc import Iterator
from decimal import Decimal

from krume.base import Notice, as_text, money_text
from krume.cost import Component
from krume.usecases.cost.result import Worked

LAW = "Tax and whether home baking may be sold: local law."
_LEAST_G = 0.05


def cost_notices(worked: Worked) -> tuple[Notice, ...]:
    """Remarks on the material, on the price, and the one on local law."""
    return (
        *(note for each in worked.components for note in _over(each, worked.currency)),
        *_unweighed(worked),
        *_on_price(worked),
        *_on_slices(worked),
        Notice("local-law", LAW),
    )


def _over(made: Component, currency: str) -> Iterator[Notice]:
    """What is paid and cut away, or bought and not used."""
    over_g, need = made.over_g, made.need
    if over_g is None or over_g < _LEAST_G or made.over_cost is None:
        return
    grams, money = as_text(over_g, 1), money_text(made.over_cost, currency)
    if need.kind == "cake":
        paid = money_text(made.cost, currency)
        trim = f"{grams} g of {need.title} are cut away; they are paid: {money} of its {paid}."
        yield Notice("trim-paid", trim, need.name)
    else:
        spare = f"{grams} g of {need.title} are made and not used: {money} more is bought for it."
        yield Notice("cream-spare", spare, need.name)


def _unweighed(worked: Worked) -> Iterator[Notice]:
    """A line whose amount nobody knows keeps the material unknown."""
    for made in worked.components:
        for costed in made.lines:
            line = costed.line
            if line.cost is None and line.price is not None:
                text = f"How much “{line.read}” is, is not known, and so its cost is not."
                yield Notice("line-not-weighed", text, f"{made.need.name} line {line.number}")


def _on_price(worked: Worked) -> Iterator[Notice]:
    offer, planned = worked.offer, worked.planned
    if worked.heads.full is None and worked.sold.tortes:
        words = "The full cost is not known, and so no price can be worked out from it."
        yield Notice("full-unknown", words)
    if offer is None:
        return
    price, asked = money_text(offer.price, worked.currency), _pct(worked.margin_pct)
    if worked.price_basis == "margin":
        taken = f"No price was given: {price} is the one for {asked} margin."
        yield Notice("price-of-margin", taken)
    if offer.loses:
        none = f"At {price} no number of tortes pays the fixed costs: there is no break-even."
        yield Notice("no-break-even", none)
    elif offer.break_even is not None and planned.tortes_a_month is not None:
        yield from _too_many(offer.break_even, planned.tortes_a_month)


def _too_many(wanted: int, made: Decimal) -> Iterator[Notice]:
    if wanted > made:
        text = f"Break-even is {wanted} tortes a month, more than the {made:f} you make."
        yield Notice("break-even-high", text)


def _on_slices(worked: Worked) -> Iterator[Notice]:
    if not worked.slices and worked.sold.tortes:
        text = "How many slices it is cut into is not said. Type it, such as: --slices 12"
        yield Notice("slices-not-said", text)


def _pct(value: Decimal) -> str:
    return f"{as_text(float(value), 2)} %"
