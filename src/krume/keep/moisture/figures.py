"""Figures of moving water by their names, and how fast it moves in each kind of layer."""

import math
from dataclasses import dataclass
from functools import cache

from krume.evidence import Row, column, load, optional
from krume.properties import constant, constants

_RATE_COLUMNS = (
    column("key", "key"),
    column("low_m2_s", "number"),
    column("best_m2_s", "number"),
    column("high_m2_s", "number"),
    column("energy_kj_mol", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_J_PER_KJ = 1e3


@dataclass(frozen=True, slots=True)
class Rate:
    """Diffusivity of water in a kind of layer [m2/s], from the slowest to the fastest."""

    key: str
    low_m2_s: float
    best_m2_s: float
    high_m2_s: float
    energy_kj_mol: float
    status: str
    source: str

    def at(self, temp_c: float) -> tuple[float, float, float]:
        """The three at a temperature, by the activation energy from that of the table.

        >>> [f"{each:.2g}" for each in rate("sponge").at(20.0)]
        ['5e-11', '2e-10', '7.5e-10']
        """
        zero = constant("celsius-zero")
        kelvin, from_k = temp_c + zero, moisture_figure("diffusion-at-c") + zero
        energy = self.energy_kj_mol * _J_PER_KJ / constant("gas-constant")
        factor = math.exp(-energy * (1 / kelvin - 1 / from_k))
        return self.low_m2_s * factor, self.best_m2_s * factor, self.high_m2_s * factor


@cache
def moisture_figure(key: str) -> float:
    """Value of a figure of `moisture.csv`.

    >>> moisture_figure("gab-monolayer")
    0.0743
    """
    return constants("moisture.csv")[key]


def rate(key: str) -> Rate:
    """Diffusivity of water in sponge, tart, cream, jelly or fat."""
    return _rates()[key]


@cache
def _rates() -> dict[str, Rate]:
    return {row.text("key"): _rate(row) for row in load("moisture_rates.csv", _RATE_COLUMNS)}


def _rate(row: Row) -> Rate:
    return Rate(
        key=row.text("key"),
        low_m2_s=row.number_of("low_m2_s"),
        best_m2_s=row.number_of("best_m2_s"),
        high_m2_s=row.number_of("high_m2_s"),
        energy_kj_mol=row.number_of("energy_kj_mol"),
        status=row.text("status"),
        source=row.text("source"),
    )
