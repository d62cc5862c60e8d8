"""The invented studio's torte and kitchen, as the planner takes them."""

from datetime import datetime

from krume.base import Interval
from krume.plan import CreamUse, Kitchen, PlannedFormula, PlannedTorte, Promise

NOW = datetime(2027, 6, 10, 8)  # noqa: DTZ001
SATURDAY = datetime(2027, 6, 12, 9)  # noqa: DTZ001

FORMULAS = {
    one.name: one
    for one in (
        PlannedFormula(
            "F1", "hazel sponge", "separated", 542.0, Interval(34, 37, 40), 170.0, 5.0, 1129.0,
            1117.0, "round 20 x 7 cm",
        ),
        PlannedFormula(
            "F3", "roulade", "roulade", 398.0, Interval(10, 11, 12), 190.0, 4.0, 829.0, 893.0,
            "sheet 13 x 9 in",
        ),
        PlannedFormula("C1", "custard cream", "custard-lightened", 941.5, set_h=4.0),
        PlannedFormula("C2", "yoghurt cream", "set-cream", 853.0, use_min=15.0, set_h=4.0),
        PlannedFormula("C5", "buttercream", "cooked-white-buttercream", 615.0),
        PlannedFormula("S1", "syrup", "syrup", 220.0),
    )
}  # fmt: skip
T1 = PlannedTorte(
    "T1",
    "hazel torte",
    "stacked",
    (("F1", 1),),
    (CreamUse("S1", 134.4), CreamUse("C1", 448.0), CreamUse("C5", 227.6, is_last=True)),
)
T2 = PlannedTorte("T2", "lemon roll", "roll", (("F3", 1),), (CreamUse("C2", 347.2),))


def kitchen(places: float | None = 8.0) -> Kitchen:
    """The studio's kitchen, with so many places in the fridge."""
    return Kitchen(
        2, 2, 5, 4800.0, places, (("round 20 x 7 cm", 4), ("sheet 13 x 9 in", 2)), 360, 450, 1260
    )


def order(count: int, torte: PlannedTorte = T1, ready: datetime = SATURDAY) -> Promise:
    """An order of so many tortes."""
    return Promise("order", ready, ((torte, count),))
