"""Every number of the model is a row; this is the table by key."""

from dataclasses import dataclass
from functools import cache

from krume.base import DataError, Figure, NotFoundError
from krume.evidence import Column, column, load, optional

MODEL_COLUMNS = (
    column("key", "key"),
    optional("symbol"),
    column("value", "number"),
    column("unit"),
    optional("half_width", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_COLUMNS = (*MODEL_COLUMNS, optional("doubt"))
_WALL_COLUMNS = (
    column("key", "key"),
    column("emissivity", "number"),
    column("heat_per_area_j_m2k", "number"),
    column("resistance_m2k_w", "number"),
    column("spread", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class Wall:
    """What a tin's material does to heat: emissivity, heat per area, resistance.

    `ln_spread` is the doubt about the heat that passes such a wall: its shine, its thickness.
    """

    emissivity: float
    heat_per_area_j_m2k: float
    resistance_m2k_w: float
    ln_spread: float = 0.0


def model_figures(file: str, columns: tuple[Column, ...] = MODEL_COLUMNS) -> dict[str, Figure]:
    """Figures of a table of the model by key; their note stands as what they are stated for."""
    return {
        row.text("key"): Figure(
            row.number_of("value"),
            row.text("unit"),
            row.text("note"),
            row.text("status"),
            row.text("source"),
            row.maybe("half_width"),
        )
        for row in load(file, columns)
    }


def half_width_of(file: str, key: str, figure: Figure) -> float:
    """How far a figure may be off, or DataError where its row does not say: unknown is not none."""
    if figure.half_width is None:
        message = f"{file}, row {key}: how far it may be off is not given, and it is drawn."
        raise DataError(message, got=key)
    return figure.half_width


@cache
def figures() -> dict[str, Figure]:
    """All parameters of the model with their papers."""
    return model_figures("bake.csv", _COLUMNS)


@cache
def doubts() -> dict[str, str]:
    """For each parameter the row it is drawn by, or "none:" and why it is not drawn.

    Rows that are a doubt or a limit themselves have none.
    """
    rows = load("bake.csv", _COLUMNS)
    return {row.text("key"): row.text("doubt") for row in rows if row.text("doubt")}


@cache
def value(key: str) -> float:
    """Value of a parameter."""
    return figures()[key].value


@cache
def walls() -> dict[str, Wall]:
    """Tin materials by name."""
    return {
        row.text("key"): Wall(
            row.number_of("emissivity"),
            row.number_of("heat_per_area_j_m2k"),
            row.number_of("resistance_m2k_w"),
            row.number_of("spread"),
        )
        for row in load("walls.csv", _WALL_COLUMNS)
    }


def wall(material: str) -> Wall:
    """Wall of a material, or NotFoundError naming those known."""
    if material not in walls():
        known = ", ".join(walls())
        raise NotFoundError(f"No tin material '{material}'. Type one of: {known}.", got=material)
    return walls()[material]
