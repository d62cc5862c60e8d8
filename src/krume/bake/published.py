"""Bakes that others wrote down, and where each lies in the interval of the model."""

from dataclasses import dataclass, fields
from functools import cache

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.draws import Draws, nominal
from krume.bake.grid import Array
from krume.bake.prediction import drawn, simulate_many
from krume.base import DataError
from krume.evidence import Row, column, load, optional
from krume.size import Tin, read_tin

KINDS = ("timed", "fixed", "table", "household")
_PARTS = ("water", "protein", "fat", "carbohydrate", "fibre", "ash", "sugar")
BATTER_COLUMNS = (
    column("key", "key"),
    *(column(part, "number") for part in _PARTS),
    column("density_g_ml", "number"),
    column("gas_ratio", "number"),
    optional("egg", "flag"),
    optional("gluten_free", "flag"),
    column("status", "status"),
    column("source", "source"),
    column("note"),
)
_BAKES = (
    column("key", "key"),
    column("source", "source"),
    column("seen"),
    column("kind", "one of", *KINDS),
    column("batter", "key"),
    column("mass_g", "number"),
    column("tin"),
    column("oven_c", "number"),
    optional("fan", "flag"),
    column("low_min", "number"),
    column("high_min", "number"),
    column("status", "status"),
    column("stated"),
    column("filled_in"),
)
# Heats over which the one that fits a bake is looked for, as logarithms.
_SPAN = np.linspace(-1.2, 0.8, 11)


@dataclass(frozen=True, slots=True)
class PublishedBake:
    """A bake as written down; what was not stated is filled in, and `filled_in` says what.

    `seen` is where its numbers were read: an abstract, an extract of the methods, a table, a page.
    `kind`: timed (looked at until done), fixed (a study bakes so long), table (of a handbook),
    household (a formula's own minutes). Bakes of one `source` come from one hand.
    """

    key: str
    source: str
    seen: str
    kind: str
    batter: Batter
    tin: Tin
    oven: Oven
    low_min: float
    high_min: float
    stated: str
    filled_in: str
    status: str

    @property
    def middle_min(self) -> float:
        """Middle of what is stated, as logarithms go."""
        return float(np.sqrt(self.low_min * self.high_min))


@cache
def published_bakes() -> tuple[PublishedBake, ...]:
    """All of them, in the order of the table."""
    batters = {row.text("key"): row for row in load("published_batters.csv", BATTER_COLUMNS)}
    return tuple(_bake(row, batters) for row in load("published_bakes.csv", _BAKES))


def _bake(row: Row, batters: dict[str, Row]) -> PublishedBake:
    tin = read_tin(row.text("tin")).value
    made = batters.get(row.text("batter"))
    if tin is None or made is None:
        message = f"published_bakes.csv, row {row.number}: tin or batter cannot be read."
        raise DataError(message, got=row.text("key"))
    return PublishedBake(
        key=row.text("key"),
        source=row.text("source"),
        seen=row.text("seen"),
        kind=row.text("kind"),
        batter=_batter(made, row.number_of("mass_g")),
        tin=tin,
        oven=Oven(row.number_of("oven_c"), fan=row.flag("fan")),
        low_min=row.number_of("low_min"),
        high_min=row.number_of("high_min"),
        stated=row.text("stated"),
        filled_in=row.text("filled_in"),
        status=row.text("status"),
    )


def _batter(row: Row, mass_g: float) -> Batter:
    water, protein, fat, carbohydrate, fibre, ash, sugar = (row.number_of(p) for p in _PARTS)
    return Batter(
        mass_g=mass_g,
        density_g_ml=row.number_of("density_g_ml"),
        water=water,
        protein=protein,
        fat=fat,
        carbohydrate=carbohydrate,
        fibre=fibre,
        ash=ash,
        sugar=sugar,
        gas_ratio=row.number_of("gas_ratio"),
        egg=row.flag("egg"),
        gluten_free=row.flag("gluten_free"),
    )


def place(bake: PublishedBake, *, count: int = 128, seed: int = 7) -> float:
    """Share of the draws that are done before the middle of what was stated (0 to 1)."""
    draws = drawn(bake.batter, bake.tin, bake.oven, count=count, seed=seed)
    minutes = simulate_many(bake.batter, bake.tin, bake.oven, draws).minutes[1:]
    return float((minutes < bake.middle_min).mean())


@cache
def ln_heat(bake: PublishedBake) -> float:
    """Logarithm of the surface heat at which the likeliest bake takes what was stated."""
    one = nominal(bake.batter, bake.oven)
    many = {each.name: np.repeat(getattr(one, each.name), len(_SPAN)) for each in fields(Draws)}
    draws = Draws(**(many | {"heat": np.exp(_SPAN)}))
    minutes = simulate_many(bake.batter, bake.tin, bake.oven, draws).minutes
    return float(np.interp(-np.log(bake.middle_min), -np.log(minutes), _SPAN))


@dataclass(frozen=True, slots=True)
class HeatEvidence:
    """Heat that hands other than ours baked with: each hand counts once.

    `ln_mean` (with its error) and `ln_spread` are over hands; `ln_scatter` is the root mean square
    from the model's own middle, in which all else not known of those bakes stands too.
    """

    hands: tuple[tuple[str, float], ...]
    ln_mean: float
    ln_spread: float
    ln_mean_error: float
    ln_scatter: float


def heat_evidence(bakes: tuple[PublishedBake, ...]) -> HeatEvidence:
    """Pooled logarithm of the heat over the hands of these bakes."""
    found: dict[str, list[float]] = {}
    for bake in bakes:
        found.setdefault(bake.source, []).append(ln_heat(bake))
    hands = tuple((hand, float(np.mean(heats))) for hand, heats in found.items())
    each: Array = np.array([heat for _, heat in hands])
    spread = float(each.std(ddof=1))
    return HeatEvidence(
        hands=hands,
        ln_mean=float(each.mean()),
        ln_spread=spread,
        ln_mean_error=spread / float(np.sqrt(len(each))),
        ln_scatter=float(np.sqrt((each**2).mean())),
    )
