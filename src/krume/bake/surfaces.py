"""Where heat enters and water leaves: tin walls, and the wet, then dry, top."""

from dataclasses import dataclass

import numpy as np

from krume.bake.grid import Array
from krume.bake.material import nearest

STEFAN_BOLTZMANN = 5.670374419e-8  # W/m2K4, exact by definition of the SI


def outside(film: Array, glow: Array, air_k: Array, surface_k: Array) -> Array:
    """Film and radiation [W/m2K]; `glow` is emissivity, Stefan-Boltzmann and the oven's heat."""
    found: Array = film + glow * (air_k * air_k + surface_k * surface_k) * (air_k + surface_k)
    return found


@dataclass(frozen=True, slots=True)
class WallStep:
    """One step of a tin wall after eliminating its own temperature: what the cells see."""

    diagonal: Array
    source: Array
    inward: Array
    known: Array
    total: Array

    def next_temp(self, cell: Array) -> Array:
        """Tin temperature after the step, from the cell's temperature in it."""
        moved: Array = (self.known + self.inward * cell) / self.total
        return moved


def wall_step(tin: Array, *, inward: Array, outward: Array, pull: Array, store: Array) -> WallStep:
    """Backward Euler on the tin node, eliminated exactly.

    `inward` and `outward` are conductances to the cell and to what is outside, `pull` the outward
    one times the temperature there, `store` the wall's heat over the step.
    """
    total = store + outward + inward
    known = store * tin + pull
    share = inward / total
    return WallStep(inward - inward * share, known * share, inward, known, total)


@dataclass(frozen=True, slots=True)
class TopStep:
    """One step of the top: front temperature, vapour flux, outer surface; what the cells see."""

    front: Array
    flux: Array
    outer: Array
    diagonal: Array
    source: Array


@dataclass(frozen=True, slots=True)
class Skin:
    """State of the top that the balance needs, (draws, rings): crust depth [m], contact to the
    cell below and its temperature, first guess of the front, resistance of what crust is more
    than crumb, and of film and crust to vapour.
    """

    contact: Array
    cell: Array
    guess: Array
    crust_m2k_w: Array
    vapour_s_m: Array


def top_step(
    outer_film: Array, air_k: Array, skin: Skin, tables: Array, oven_vapour: Array, boiling_k: float
) -> TopStep:
    r"""Balance of heat and vapour at the drying front, two Newton steps.

    U (Ta - Tf) = L j + kz (Tf - Tcell);
    j = Mw P/(R Tf rm) ln[(P - p_oven)/(P - aw p_sat(Tf))]
    """
    through = outer_film / (1 + outer_film * skin.crust_m2k_w)
    reach = through * air_k + skin.contact * skin.cell
    both = through + skin.contact
    front = np.minimum(skin.guess, boiling_k)
    for _ in range(2):
        taken = tables.take(nearest(front), axis=1)
        lines = (taken[:2] - oven_vapour * taken[2:4]) / skin.vapour_s_m
        flux, slope = lines * (lines[0] > 0)
        latent, node = taken[4:]
        steep = latent * slope
        front = (reach - latent * flux + steep * node) / (both + steep)
        front = np.minimum(front, boiling_k)
    flux = np.maximum(flux + slope * (front - node), 0.0)
    follow = skin.contact / (both + steep)
    driven = front >= boiling_k
    if driven.any():
        left = reach - both * boiling_k
        flux = np.where(driven, np.maximum(left / latent, 0.0), flux)
        follow = np.where(driven, 0.0, follow)
    return TopStep(
        front=front,
        flux=flux,
        outer=air_k - through / outer_film * (air_k - front),
        diagonal=skin.contact * (1 - follow),
        source=skin.contact * (front - follow * skin.cell),
    )
