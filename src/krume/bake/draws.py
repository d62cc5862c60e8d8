"""What is not known of a bake, as joint draws; draw 0 is always the nominal bake."""

from dataclasses import dataclass, replace

import numpy as np
from scipy.special import ndtri

from krume.bake.batter import Batter, Oven
from krume.bake.grid import Array
from krume.bake.parameters import value


@dataclass(frozen=True, slots=True)
class Draws:
    """Parameters of each draw, all (draws,): surface heat, oven [K], wet skin [m] and so on."""

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
    )


def draw(batter: Batter, oven: Oven, *, count: int, discrepancy: float, seed: int = 7) -> Draws:
    """Nominal bake and `count` joint draws of what is not known; equal seeds give equal draws."""
    rng = np.random.default_rng(seed)
    base = nominal(batter, oven)

    def shares() -> Array:
        # One draw in each of `count` equal strata (Latin hypercube): the quantiles settle sooner.
        strata: Array = (rng.permutation(count) + 0.5) / count
        return strata

    def times(array: Array, spread: float) -> Array:
        return np.concatenate([array, array[0] * np.exp(spread * ndtri(shares()))])

    def around(array: Array, spread: float) -> Array:
        return np.concatenate([array, array[0] + spread * ndtri(shares())])

    cap = value("crust-diffusion-cap")
    kind = "spread-density" if batter.density_measured else "spread-density-unmeasured"
    half = value("vapour-conduction")
    retention = around(base.gas_retention, 0.10)
    return replace(
        base,
        heat=times(base.heat, oven.ln_heat_sd),
        oven_k=around(base.oven_k, oven.temp_half_width_c),
        wet_skin=times(base.wet_skin, value("spread-wet-skin")),
        crust_conduction=times(base.crust_conduction, value("spread-crust-conduction")),
        crust_diffusion=np.minimum(
            times(base.crust_diffusion, value("spread-crust-diffusion")), cap
        ),
        vapour_conduction=np.concatenate([[half], 0.3 + 0.6 * shares()]),
        gas_retention=np.clip(retention, 0.15, 0.75),
        density=times(base.density, value(kind)),
        mass=times(base.mass, value("spread-mass")),
        start_k=around(base.start_k, value("spread-start")),
        oven_vapour=times(base.oven_vapour, value("spread-oven-vapour")),
        colour=times(base.colour, value("spread-colour")),
        core_shift=around(base.core_shift, value("spread-core")),
        core_margin=np.clip(around(base.core_margin, 1.0), 2.5, 8.0),
        factor=times(base.factor, discrepancy),
    )
