"""Planned values of one torte, used until a timetable and records exist; and figures of cost."""

from dataclasses import dataclass
from decimal import Decimal

from krume.base import Figure, NotFoundError
from krume.evidence import figures

_FILE = "cost.csv"
PLANNED = {
    "fixed_a_month": ("What do rent, insurance and the like come to in a month?", "500.00"),
    "tortes_a_month": ("How many tortes do you make in a month?", "20"),
    "own_work_h": ("How many hours of your own work does one torte take?", "2.5"),
    "own_work_rate": ("What do you pay yourself for one hour?", "20.00"),
    "energy_kwh": ("How many kWh does one torte take?", "1.5"),
    "boxes": ("How many boxes with a board does one torte take?", "1"),
    "labels": ("How many labels does one torte take?", "1"),
}
"""Each planned value, with the question that asks for it and how a number for it is typed."""


@dataclass(frozen=True, slots=True)
class Planned:
    """What one torte is planned to take; None is not said. Money is in the book's currency."""

    fixed_a_month: Decimal | None = None
    tortes_a_month: Decimal | None = None
    own_work_h: Decimal | None = None
    own_work_rate: Decimal | None = None
    energy_kwh: Decimal | None = None
    boxes: Decimal | None = None
    labels: Decimal | None = None
    status: str = "assumed"


def missing_plans(planned: Planned) -> tuple[str, ...]:
    """Names of the planned values that are not said.

    >>> missing_plans(Planned(own_work_h=Decimal("2.2")))[:3]
    ('fixed_a_month', 'tortes_a_month', 'own_work_rate')
    """
    return tuple(name for name in PLANNED if getattr(planned, name) is None)


def figure(key: str) -> Figure:
    """Figure of a key of `cost.csv`.

    >>> figure("margin").value, figure("margin").unit
    (30.0, '%')
    """
    found = figures(_FILE).get(key)
    if found is None:
        message = f"cost.csv has no figure '{key}'."
        raise NotFoundError(message, field="key", got=key, want="a key of cost.csv")
    return found
