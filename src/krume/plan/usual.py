"""Usual durations and rules of a day, and the steps each thing takes: rows of two tables."""

from dataclasses import dataclass
from functools import cache

from krume.base import Figure
from krume.evidence import Row, column, figures, load, optional

_ROUTE_COLUMNS = (
    column("key", "key"),
    column("of", "key"),
    column("step", "count"),
    column("word"),
    optional("minutes", "number"),
    column("per", "one of", "cake", "egg", "foam", "load", "cook", "whip", "batch", "torte"),
    optional("hands", "flag"),
    optional("uses"),
    optional("gap_most", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_FOAMS = frozenset({"separated", "genoise", "chiffon", "angel", "nut"})
_ROUTE_OF = {
    **dict.fromkeys(_FOAMS, "foam"),
    "roulade": "roll",
    "butter": "butter",
    "tart": "shell",
    "custard-lightened": "custard-cream",
    "custard": "custard",
    "custard-buttercream": "buttercream",
    "cooked-white-buttercream": "buttercream",
    "set-cream": "set-cream",
    "fruit-mousse": "set-cream",
    "ganache": "ganache",
    "jelly": "jelly",
    "syrup": "syrup",
}
_TORTE_ROUTE = {
    "stacked": "stacked",
    "ring": "ring",
    "roll": "roll-torte",
    "tart": "tart-torte",
    "tiers": "tiers",
}


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a route; minutes None are the formula's own.

    `gap_most_min` is the longest wait before the step that follows.
    """

    key: str
    word: str
    minutes: float | None
    per: str
    by_hand: bool
    uses: str
    gap_most_min: float | None
    status: str


def usual(key: str) -> Figure:
    """A figure of `tasks.csv`."""
    return figures("tasks.csv")[key]


def usual_min(key: str) -> int:
    """A figure of `tasks.csv` in whole minutes; hours are converted.

    >>> usual_min("day-begins"), usual_min("box")
    (450, 2)
    """
    found = usual(key)
    return round(found.value * 60 if found.unit == "h" else found.value)


@cache
def route(of: str) -> tuple[Step, ...]:
    """Steps of a route in their order.

    >>> [step.word for step in route("stacked")]
    ['stack and fill', 'chill', 'coat']
    """
    rows = [row for row in load("routes.csv", _ROUTE_COLUMNS) if row.text("of") == of]
    return tuple(_step(row) for row in sorted(rows, key=lambda row: row.number_of("step")))


def _step(row: Row) -> Step:
    return Step(
        key=row.text("key"),
        word=row.text("word"),
        minutes=row.maybe("minutes"),
        per=row.text("per"),
        by_hand=row.flag("hands"),
        uses=row.text("uses"),
        gap_most_min=row.maybe("gap_most"),
        status=row.text("status"),
    )


def cake_route(family: str | None) -> tuple[Step, ...]:
    """Steps of a cake of a family; a family that is not known goes as a foam, with its clocks."""
    return route(_ROUTE_OF.get(family or "", "foam"))


def usual_cooling_min(family: str | None) -> float | None:
    """Minutes a cake of a family stands on the rack after the oven, where its route has them.

    >>> usual_cooling_min("separated"), usual_cooling_min("roulade")
    (90.0, 60.0)
    """
    steps = cake_route(family)
    after = next((i for i, step in enumerate(steps) if step.uses == "oven"), len(steps))
    return next((step.minutes for step in steps[after:] if step.uses == "rack"), None)


def cream_route(family: str | None) -> tuple[Step, ...]:
    """Steps of a cream of a family."""
    return route(_ROUTE_OF.get(family or "", "cream"))


def torte_route(kind: str) -> tuple[Step, ...]:
    """Steps of building a torte of a kind; what is handed over as baked has none."""
    return route(_TORTE_ROUTE[kind]) if kind in _TORTE_ROUTE else ()


def is_cut_into_layers(kind: str) -> bool:
    """Whether a torte's cakes rest before they are cut."""
    return kind in ("stacked", "ring", "tiers")
