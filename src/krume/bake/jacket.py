"""What stands between the oven and a tin: a wet strip, water, a tray, two trays, a hot stone.

Each is one node of heat between air and wall, with a resistance to the wall and, where it is wet,
water that leaves it; it is eliminated from the step exactly, as the wall itself is.
"""

from dataclasses import dataclass, replace

import numpy as np

from krume.bake.around import around_value
from krume.bake.batter import Around
from krume.bake.course import Course
from krume.bake.grid import Array
from krume.bake.material import front_tables, nearest
from krume.properties import boiling_point_c, constant


@dataclass(frozen=True, slots=True)
class Layers:
    """The layers over some faces of the tin, one entry a face in `at`; water in kg for each m2."""

    at: slice
    wet: Array
    dry: Array
    heat: Array
    water: Array
    opening: Array
    emissivity: Array
    start_k: Array
    vapour: Array
    oven_vapour: Array
    film: Array
    boiling_k: float

    def only(self, which: np.ndarray[tuple[int, ...], np.dtype[np.bool_]]) -> "Layers":
        """The same for some of the draws."""
        return replace(
            self,
            start_k=self.start_k[which],
            oven_vapour=self.oven_vapour[which],
            film=self.film[which],
        )


@dataclass(frozen=True, slots=True)
class LayerStep:
    """One step of the layers after eliminating their own temperature, for each area of face."""

    outward: Array
    pull: Array
    contact: Array
    known: Array
    total: Array
    store: Array
    drive: Array
    slope: Array
    node_k: Array
    latent: Array
    most: Array

    def settle(self, tin_k: Array, boiling_k: float, step: Array) -> tuple[Array, Array]:
        """Temperature after the step and water lost in it [kg/m2], from the tin's new one.

        What is hotter than boiling boils as long as there is water.
        """
        moved = (self.known + self.contact * tin_k) / self.total
        flux = self.drive + self.slope * (moved - self.node_k)
        excess = self.store * np.maximum(moved - boiling_k, 0.0)
        boiled = np.minimum(excess / self.latent, np.maximum(self.most - flux, 0.0))
        kept: Array = moved - boiled * self.latent / self.store
        return kept, (flux + boiled) * step


def layer_step(
    layers: Layers, temp_k: Array, water: Array, *, outside: Array, air_k: Array, step: Array
) -> LayerStep:
    r"""Balance of a layer over a step, its vapour flow taken as a straight line.

    (C/dt) (T' - T) = h (Ta - T') - L j(T') + (Ttin' - T') / R
    """
    left = np.maximum(water, 0.0)
    damp = np.divide(left, layers.water, out=np.zeros_like(left), where=layers.water > 0)
    contact = 1 / (layers.dry + (layers.wet - layers.dry) * damp)
    store = (layers.heat + around_value("water-heat") * left) / step
    drive, slope, latent, node_k = _vapour(layers, temp_k, left / step)
    total = store + outside + contact + latent * slope
    known = store * temp_k + outside * air_k - latent * (drive - slope * node_k)
    through = contact / total
    return LayerStep(
        contact - contact * through, known * through, contact, known, total, store,
        drive, slope, node_k, latent, left / step,
    )  # fmt: skip


def _vapour(layers: Layers, temp_k: Array, most: Array) -> tuple[Array, Array, Array, Array]:
    """Water that leaves [kg/m2s], its slope, latent heat, and where both were taken."""
    taken = layers.vapour.take(nearest(temp_k), axis=1)
    drive, drive_slope, share, share_slope, latent, node_k = taken
    flow = layers.opening * layers.film
    flux = flow * (drive - layers.oven_vapour * share)
    slope = flow * (drive_slope - layers.oven_vapour * share_slope)
    free = (flux > 0) & (flux < most)
    return np.clip(flux, 0.0, most), np.where(free, slope, 0.0), latent, node_k


def layers_of(
    around: Around, rings: int, rows: int, *, course: Course, begin_k: Array, pressure_pa: float,
    oven_vapour: Array, film: Array,
) -> Layers | None:  # fmt: skip
    """Layers of what stands round a tin, None where it stands free on a rack.

    Water reaches the bottom too, whatever the tin stands on. `film` is the vapour's own.
    """
    below = "water" if around.jacket == "water" else around.under
    kinds = [kind for kind in [below] * rings + [around.jacket] * rows if kind not in _BARE]
    if not kinds:
        return None
    first = 0 if below not in _BARE else rings
    zero = constant("celsius-zero")
    hot = course.set_k if course.from_k is None else np.full_like(course.set_k, course.from_k)
    starts = {"stone": hot, "water": np.full_like(hot, around_value("water-start") + zero)}
    wet, dry, heat, water, opening, emissivity = np.array([_figures(kind) for kind in kinds]).T
    return Layers(
        at=slice(first, first + len(kinds)),
        wet=wet,
        dry=dry,
        heat=heat,
        water=water,
        opening=opening,
        emissivity=emissivity,
        start_k=np.stack([starts.get(kind, begin_k) for kind in kinds], axis=1),
        vapour=front_tables(pressure_pa, 1.0),
        oven_vapour=oven_vapour,
        film=film,
        boiling_k=boiling_point_c(pressure_pa, sugar_pct=0.0) + zero,
    )


_BARE = ("none", "rack")


def _figures(kind: str) -> tuple[float, float, float, float, float, float]:
    """Resistance wet and dry, own heat, water, share of it that is open to the air, emissivity."""

    def row(part: str) -> float:
        return around_value(f"{kind}-{part}")

    if kind == "wrapped":
        return row("wet"), row("dry"), row("heat"), row("water"), 1.0, row("emissivity")
    contact = row("contact")
    if kind == "water":
        return contact, contact, 0.0, row("depth"), row("open"), row("emissivity")
    return contact, contact, row("heat"), 0.0, 0.0, row("emissivity")
