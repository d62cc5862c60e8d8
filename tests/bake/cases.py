"""The reference cases of the bake model: batters, tins, ovens, and a fine grid's minutes."""

from dataclasses import dataclass

from krume.bake import Batter, Oven
from krume.size import Tin, read_tin

PARTS = {
    "hazel": (0.395, 0.084, 0.094, 0.399, 0.017, 0.011, 0.257, 0.48, 0.0, 95.0),
    "roulade": (0.440, 0.074, 0.077, 0.395, 0.005, 0.009, 0.255, 0.48, 0.0, None),
    "walnut": (0.379, 0.094, 0.188, 0.312, 0.016, 0.011, 0.238, 0.50, 0.0, 96.0),
    "chiffon": (0.460, 0.062, 0.118, 0.345, 0.004, 0.011, 0.209, 0.50, 0.28, 97.0),
    "butter": (0.297, 0.045, 0.216, 0.423, 0.007, 0.012, 0.237, 0.85, 1.0, 97.0),
}


def batter(name: str, mass_g: float, **changes: object) -> Batter:
    """One of the five batters."""
    water, protein, fat, carbohydrate, fibre, ash, sugar, density, gas, core = PARTS[name]
    given: dict[str, object] = {
        "mass_g": mass_g, "density_g_ml": density, "water": water, "protein": protein,
        "fat": fat, "carbohydrate": carbohydrate, "fibre": fibre, "ash": ash, "sugar": sugar,
        "gas_ratio": gas, "core_c": core, "density_measured": True,
    }  # fmt: skip
    return Batter(**(given | changes))  # type: ignore[arg-type]


def tin(text: str) -> Tin:
    """A tin that reads without a question."""
    read = read_tin(text).value
    if read is None:
        raise LookupError(text)
    return read


@dataclass(frozen=True, slots=True)
class Case:
    """A batter in a tin in an oven; minutes and loss of a 48 x 56 grid with fine steps."""

    name: str
    batter: Batter
    tin: Tin
    oven: Oven
    minutes: float
    last: str


CASES = (
    Case("sponge20", batter("hazel", 540), tin("round 20 x 7 cm"), Oven(170), 33.4, "core"),
    Case("nut22", batter("walnut", 520), tin("round 22 x 5 cm"), Oven(170), 30.1, "core"),
    Case("roulade", batter("roulade", 400, colour="pale"), tin("sheet 33x22.9x2.5 cm"),
         Oven(190), 11.8, "colour"),
    Case("sheet", batter("butter", 1000), tin("sheet 33x22.9x2.5 cm"), Oven(175), 28.2, "core"),
    Case("butter18", batter("butter", 640), tin("round 18 x 7 cm"), Oven(165), 51.6, "core"),
    Case("cupcake", batter("butter", 55), tin("round 6.3 x 4 cm"), Oven(175), 20.5, "colour"),
    Case("loaf", batter("butter", 930), tin("loaf 21.5x11.5x7 cm"), Oven(165), 66.3, "core"),
    Case("chiffon", batter("chiffon", 550), tin("tube 20 x 10 cm hole 6 cm"), Oven(165), 32.5,
         "core"),
)  # fmt: skip
BUTTER18 = CASES[4]
