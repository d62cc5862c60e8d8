"""What is not known of a bake, as joint draws; draw 0 is always the nominal bake."""

from dataclasses import dataclass, replace

import numpy as np

from krume.bake.batter import Batter, Oven
from krume.bake.grid import Array
from krume.bake.parameters import value, wall
from krume.bake.strata import even_normal, even_shares


@dataclass(frozen=True, slots=True)
class Draws:
    """Parameters of each draw, all (draws,): surface heat, oven [K], wet skin [m] and so on.

    `factor` multiplies the minutes (what the model leaves out), `film` the air's part of the
    surface heat (a fan's wind), `tin` all heat that passes the tin's wall; `set_share` is the share
    of set that counts as done.
    """

    heat: Array
    oven_k: Array
    wet_skin: Array
    crust_conduction: Array
    crust_diffusion: Array
    vapour_conduction: Array
    gas_retention: Array
    density: Array
    mass: Array
    start_k: Array
    oven_vapour: Array
    colour: Array
    core_shift: Array
    core_margin: Array
    factor: Array
    film: Array
    tin: Array
    set_share: Array

    def __len__(self) -> int:
        return len(self.heat)


def nominal(batter: Batter, oven: Oven) -> Draws:
    """The one bake with every parameter at its row's value."""
    one = np.ones(1)
    return Draws(
        heat=one * oven.heat,
        oven_k=one * (oven.temp_c + 273.15),
        wet_skin=one * value("wet-skin"),
        crust_conduction=one * value("crust-conduction"),
        crust_diffusion=one * value("crust-diffusion"),
        vapour_conduction=one * value("vapour-conduction"),
        gas_retention=one * value("gas-retention"),
        density=one * batter.density_g_ml * 1000,
        mass=one * batter.mass_g / 1000,
        start_k=one * (batter.temp_c + 273.15),
        oven_vapour=one * value("oven-vapour"),
        colour=one * value(f"colour-{batter.colour}"),
        core_shift=0 * one,
        core_margin=one * value("core-margin"),
        factor=one,
        film=one,
        tin=one,
        set_share=one * value("set-done"),
    )


def draw(
    batter: Batter,
    oven: Oven,
    *,
    count: int,
    discrepancy: float,
    late_discrepancy: float | None = None,
    material: str = "aluminium",
    seed: int = 7,
) -> Draws:
    """Nominal bake and `count` joint draws of what is not known; equal seeds give equal draws.

    `late_discrepancy` is the doubt towards later alone, where it is the wider one.
    """
    base, off = nominal(batter, oven), _Offs(count, np.random.default_rng(seed))
    kind = "spread-density" if batter.density_measured else "spread-density-unmeasured"
    # The order of the lines is the order of the strata: a new doubt goes to the end.
    return replace(
        base,
        heat=off.times(base.heat, oven.ln_heat_sd),
        oven_k=off.around(base.oven_k, oven.temp_half_width_c),
        wet_skin=off.times(base.wet_skin, value("spread-wet-skin")),
        crust_conduction=off.times(base.crust_conduction, value("spread-crust-conduction")),
        crust_diffusion=np.minimum(
            off.times(base.crust_diffusion, value("spread-crust-diffusion")),
            value("crust-diffusion-cap"),
        ),
        vapour_conduction=off.between(base.vapour_conduction, "vapour-conduction"),
        gas_retention=off.within(base.gas_retention, "gas-retention"),
        density=off.times(base.density, value(kind)),
        mass=off.times(base.mass, value("spread-mass")),
        start_k=off.around(base.start_k, value("spread-start")),
        oven_vapour=off.times(base.oven_vapour, value("spread-oven-vapour")),
        colour=off.times(base.colour, value("spread-colour")),
        core_shift=off.around(base.core_shift, value("spread-core")),
        core_margin=off.within(base.core_margin, "core-margin"),
        factor=off.times(base.factor, discrepancy, late_discrepancy),
        film=off.times(base.film, value("spread-fan") if oven.fan else 0.0),
        tin=off.times(base.tin, wall(material).ln_spread),
        set_share=_set_share(off.times(np.ones(1), value("spread-set"))),
    )


def _set_share(more: Array) -> Array:
    """Share of set at done, where `more` times the reaction of the row's own share is needed."""
    least: Array = 1 - (1 - value("set-done")) ** more
    return least


@dataclass(frozen=True, slots=True)
class _Offs:
    """Even draws around a base, which comes first itself."""

    count: int
    rng: np.random.Generator

    def times(self, base: Array, spread: float, late: float | None = None) -> Array:
        """The base, then log-normal around it; `late` is the spread upwards where it differs."""
        off = even_normal(self.count, self.rng)
        wide = np.where(off > 0, spread if late is None else late, spread)
        return np.concatenate([base, base[0] * np.exp(wide * off)])

    def around(self, base: Array, spread: float) -> Array:
        """The base, then normal around it."""
        return np.concatenate([base, base[0] + spread * even_normal(self.count, self.rng)])

    def within(self, base: Array, key: str) -> Array:
        """The base, then normal around it, cut off at the rows' own lowest and highest."""
        drawn = self.around(base, value(f"spread-{key}"))
        return np.clip(drawn, value(f"{key}-low"), value(f"{key}-high"))

    def between(self, base: Array, key: str) -> Array:
        """The base, then evenly between the rows' own lowest and highest."""
        low, high = value(f"{key}-low"), value(f"{key}-high")
        return np.concatenate([base, low + (high - low) * even_shares(self.count, self.rng)])
