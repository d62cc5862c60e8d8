"""Four cakes that made-up kitchens bake, and the usual oven they begin from."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from krume.bake import Batter
    from krume.learn import Prior
    from krume.size import Tin

# Grams, g/ml, then water, protein, fat, carbohydrate, fibre, ash, sugar; the core; the tin.
CAKES = {
    "hazel": (540, 0.48, (0.395, 0.084, 0.094, 0.399, 0.017, 0.011, 0.257), 95,
              "round 20 x 7 cm"),
    "walnut": (520, 0.50, (0.379, 0.094, 0.188, 0.312, 0.016, 0.011, 0.238), 96,
               "round 22 x 5 cm"),
    "sheet": (1000, 0.85, (0.297, 0.045, 0.216, 0.423, 0.007, 0.012, 0.237), 97,
              "sheet 33x22.9x5 cm"),
    "butter": (640, 0.85, (0.297, 0.045, 0.216, 0.423, 0.007, 0.012, 0.237), 97,
               "round 18 x 7 cm"),
}  # fmt: skip


def cake(name: str) -> tuple[Batter, Tin]:
    """A batter and its tin."""
    from krume.bake import Batter
    from krume.size import read_tin

    mass_g, density, parts, core, text = CAKES[name]
    tin = read_tin(text).value
    if tin is None:
        raise LookupError(text)
    batter = Batter(mass_g, density, *parts, core_c=core, density_measured=True)
    return batter, tin


def prior() -> Prior:
    """A usual oven, known by a thermometer."""
    from krume.learn import Prior

    return Prior(ln_heat=0.0, ln_heat_sd=0.25, offset_sd_c=5.0, thermometer_sd_c=2.0)
