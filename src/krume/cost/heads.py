"""The heads of a cost: each rounded to the cent, and sums that are sums of the rounded heads."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from krume.base import exact, to_cent
from krume.cost.component import Component
from krume.cost.lines import Missing
from krume.cost.planned import Planned
from krume.pantry import Price, PriceList, price_of

BOX = ("box and board", "each")
LABEL = ("label", "each")
POWER = ("electricity", "kWh")
"""What the price list calls the things a torte takes beside its material, and per what."""


@dataclass(frozen=True, slots=True)
class Heads:
    """Heads of one thing sold, or of all of an order; None is not known, and then no sum is.

    `direct` is material, labour, energy and packaging; `full` is direct and the share of fixed.
    """

    material: Decimal | None
    labour: Decimal | None
    energy: Decimal | None
    packaging: Decimal | None
    fixed_share: Decimal | None

    @property
    def direct(self) -> Decimal | None:
        """Sum of material, labour, energy and packaging."""
        return added(self.material, self.labour, self.energy, self.packaging)

    @property
    def full(self) -> Decimal | None:
        """Direct and the share of fixed."""
        return added(self.direct, self.fixed_share)


def added(*heads: Decimal | None) -> Decimal | None:
    """Sum of heads; None when one of them is not known.

    >>> added(Decimal("6.76"), Decimal("52.80")), added(Decimal(1), None)
    (Decimal('59.56'), None)
    """
    known = [head for head in heads if head is not None]
    return sum(known, Decimal(0)) if len(known) == len(heads) else None


def heads(
    components: tuple[Component, ...], planned: Planned, prices: PriceList, *, tortes: int
) -> Heads:
    """Heads of so many tortes; with none (a cream alone) all but the material are not known."""
    material = added(*(component.cost for component in components)) if components else None
    if tortes == 0:
        return Heads(material, None, None, None, None)
    return Heads(
        material=material,
        labour=_times(tortes, planned.own_work_h, planned.own_work_rate),
        energy=_bought(tortes, planned.energy_kwh, POWER, prices),
        packaging=_packaging(tortes, planned, prices),
        fixed_share=_fixed(tortes, planned),
    )


def _times(tortes: int, *values: Decimal | None) -> Decimal | None:
    product = Fraction(tortes)
    for value in values:
        if value is None:
            return None
        product *= exact(value)
    return to_cent(product)


def priced(prices: PriceList, what: tuple[str, str]) -> Price | None:
    """Price of a thing of the list by its name and unit of sale."""
    found = price_of(prices, what[0], None)
    fits = found is not None and found.price.per == what[1] and not found.others
    return found.price if found is not None and fits else None


def _bought(
    tortes: int, count: Decimal | None, what: tuple[str, str], prices: PriceList
) -> Decimal | None:
    """So many of a thing for each torte; none of it needs no price."""
    if count is not None and count == 0:
        return to_cent(Decimal(0))
    price = priced(prices, what)
    return None if price is None else _times(tortes, count, price.amount)


def _packaging(tortes: int, planned: Planned, prices: PriceList) -> Decimal | None:
    boxes = _bought(tortes, planned.boxes, BOX, prices)
    return added(boxes, _bought(tortes, planned.labels, LABEL, prices))


def _fixed(tortes: int, planned: Planned) -> Decimal | None:
    if planned.fixed_a_month is None or not planned.tortes_a_month:
        return None
    return to_cent(tortes * exact(planned.fixed_a_month) / exact(planned.tortes_a_month))


def missing_beside(planned: Planned, prices: PriceList) -> tuple[Missing, ...]:
    """Prices of box, label and power that are wanted and not on the list."""
    wanted = ((planned.boxes, BOX), (planned.labels, LABEL), (planned.energy_kwh, POWER))
    return tuple(
        Missing(what[0], what[1], "")
        for count, what in wanted
        if count != 0 and priced(prices, what) is None
    )
