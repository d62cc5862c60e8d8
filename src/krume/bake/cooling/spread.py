"""What is not known of a cooling, as joint draws; draw 0 is always the nominal one."""

from dataclasses import dataclass

import numpy as np

from krume.bake.cooling.rows import cooling_doubt, cooling_value
from krume.bake.grid import Array
from krume.bake.parameters import value
from krume.bake.strata import even_normal, even_shares


@dataclass(frozen=True, slots=True)
class CoolingDraws:
    """Parameters of each draw, all (draws,): films, room [K], its water, crust, gap and so on."""

    film: Array
    room_k: Array
    humidity: Array
    crust: Array
    gap: Array
    mass: Array
    height: Array
    start_k: Array
    pore_share: Array
    factor: Array

    def __len__(self) -> int:
        return len(self.film)


def cooling_draws(
    room_c: float, *, room_doubt_k: float, humidity_pct: float | None, count: int, seed: int
) -> CoolingDraws:
    """Nominal cooling and `count` joint draws; equal seeds give equal draws."""
    rng = np.random.default_rng(seed)

    def normal(spread: float) -> Array:
        return np.concatenate([[0.0], spread * even_normal(count, rng)])

    def ln(key: str) -> Array:
        found: Array = np.exp(normal(cooling_value(key)))
        return found

    def evenly(key: str) -> Array:
        low, high = value(f"{key}-low"), value(f"{key}-high")
        return np.concatenate([[value(key)], low + (high - low) * even_shares(count, rng)])

    said = cooling_value("humidity") if humidity_pct is None else humidity_pct
    doubt = cooling_doubt("humidity") if humidity_pct is None else cooling_doubt("humidity") / 3
    return CoolingDraws(
        film=ln("spread-film"),
        room_k=room_c + 273.15 + normal(room_doubt_k),
        humidity=np.clip(said + normal(doubt), 5.0, 95.0) / 100,
        crust=ln("spread-crust"),
        gap=ln("spread-gap"),
        mass=ln("spread-mass"),
        height=ln("spread-height"),
        start_k=normal(cooling_value("spread-start")),
        pore_share=evenly("vapour-conduction"),
        factor=ln("discrepancy"),
    )
