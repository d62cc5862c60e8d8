"""Price, margin, markup and break-even. Margin is a share of the price, markup of the cost."""

import math
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from krume.base import OutOfRangeError, exact, to_cent
from krume.cost.heads import Heads
from krume.cost.planned import Planned

WHOLE_PCT = 100


@dataclass(frozen=True, slots=True)
class Offer:
    """What a price means; None is not known, or does not exist (`break_even`, see `loses`).

    `price` is for all that is sold together, of so many `tortes`. `contribution` is what the price
    leaves for one torte after its direct cost; `break_even` counts tortes a month.
    `unpaid` is the break-even if own work is nothing. `left_a_month` is beyond the paid hours.
    """

    price: Decimal
    margin_pct: Decimal | None
    contribution: Decimal | None
    break_even: int | None
    break_even_unpaid: int | None
    per_hour: Decimal | None
    left_a_month: Decimal | None

    @property
    def loses(self) -> bool:
        """Whether each torte takes more than it brings, so that no number of them breaks even."""
        return self.contribution is not None and self.contribution <= 0


def price_for_margin(full: Decimal, margin_pct: Decimal) -> Decimal:
    """Price of which so many percent are left after the full cost, to the cent.

    price = full / (1 - margin / 100)

    Parameters
    ----------
    full : full cost [money]
    margin_pct : share of the price, from 0 to below 100 [%]

    Returns
    -------
    price, rounded half up to the cent [money]

    Raises
    ------
    OutOfRangeError : margin_pct is below 0, or 100 and more: no price has such a margin

    Valid for
    ---------
    Any cost of zero or more.

    Source
    ------
    Elementary arithmetic.

    Examples
    --------
    >>> price_for_margin(Decimal("88.46"), Decimal(30))
    Decimal('126.37')
    """
    if not 0 <= margin_pct < WHOLE_PCT:
        message = f"a margin of {margin_pct} % has no price. Type one from 0 to below 100."
        raise OutOfRangeError(message, field="margin", got=str(margin_pct), want="0 to below 100")
    return to_cent(exact(full) / (1 - exact(margin_pct) / WHOLE_PCT))


def price_for_markup(full: Decimal, markup_pct: Decimal) -> Decimal:
    """Price that lies so many percent above the full cost, to the cent.

    price = full x (1 + markup / 100)

    Parameters
    ----------
    full : full cost [money]
    markup_pct : share of the cost, 0 or more [%]

    Returns
    -------
    price, rounded half up to the cent [money]

    Raises
    ------
    OutOfRangeError : markup_pct is below 0

    Valid for
    ---------
    Any cost of zero or more.

    Source
    ------
    Elementary arithmetic.

    Examples
    --------
    >>> price_for_markup(Decimal("88.46"), Decimal(30))
    Decimal('115.00')
    """
    if markup_pct < 0:
        message = f"a markup of {markup_pct} % is below the cost. Type 0 or more."
        raise OutOfRangeError(message, field="markup", got=str(markup_pct), want="0 or more")
    return to_cent(exact(full) * (1 + exact(markup_pct) / WHOLE_PCT))


def margin_of(price: Decimal, full: Decimal) -> Decimal | None:
    """Share of a price that is left after the full cost, in percent; None of a price of 0.

    >>> margin_of(Decimal("115.00"), Decimal("88.46"))
    Decimal('23.078')
    """
    if price <= 0:
        return None
    return _to_three(exact(price - full) / exact(price) * WHOLE_PCT)


def _to_three(value: Fraction) -> Decimal:
    return to_cent(value * 10).scaleb(-1)


def break_even(fixed: Decimal, contribution: Decimal | Fraction) -> int | None:
    """Tortes a month that pay the fixed costs, up to the next whole one; None: no number does.

    >>> break_even(Decimal(620), Decimal("33.37")), break_even(Decimal(620), Decimal("-1"))
    (19, None)
    """
    if contribution <= 0:
        return None
    return math.ceil(exact(fixed) / Fraction(contribution))


def offer(price: Decimal, heads: Heads, planned: Planned, *, tortes: int) -> Offer:
    """What a price for so many tortes means."""
    contribution = _contribution(price, heads.direct, tortes)
    paid = None if heads.labour is None else Fraction(heads.labour) / max(tortes, 1)
    unpaid = None if contribution is None or paid is None else contribution + paid
    return Offer(
        price=price,
        margin_pct=None if heads.full is None else margin_of(price, heads.full),
        contribution=None if contribution is None else to_cent(contribution),
        break_even=_break_even(planned.fixed_a_month, contribution),
        break_even_unpaid=_break_even(planned.fixed_a_month, unpaid),
        per_hour=_per_hour(price, heads, planned, tortes),
        left_a_month=_left(contribution, planned),
    )


def _contribution(price: Decimal, direct: Decimal | None, tortes: int) -> Fraction | None:
    return None if direct is None or tortes == 0 else exact(price - direct) / tortes


def _break_even(fixed: Decimal | None, contribution: Fraction | None) -> int | None:
    return None if fixed is None or contribution is None else break_even(fixed, contribution)


def _per_hour(price: Decimal, heads: Heads, planned: Planned, tortes: int) -> Decimal | None:
    """What an hour of own work brings: the price less all but the labour, over the hours."""
    if heads.full is None or heads.labour is None or not planned.own_work_h or tortes == 0:
        return None
    return to_cent(exact(price - heads.full + heads.labour) / (exact(planned.own_work_h) * tortes))


def _left(contribution: Fraction | None, planned: Planned) -> Decimal | None:
    if contribution is None or planned.fixed_a_month is None or planned.tortes_a_month is None:
        return None
    return to_cent(exact(planned.tortes_a_month) * contribution - exact(planned.fixed_a_month))
