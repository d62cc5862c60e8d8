"""The tin: what it bakes in, by its inside dimensions."""

from dataclasses import dataclass

SHAPES = (
    "round",
    "square",
    "sheet",
    "loaf",
    "ring",
    "tube",
    "ring-mould",
    "springform",
    "tray",
)
MATERIALS = ("aluminium", "steel", "dark", "glass", "ceramic", "silicone")

ROUND_FLOOR = frozenset({"round", "springform", "ring", "tube", "ring-mould", "tray"})


@dataclass(frozen=True, slots=True)
class Tin:
    """A tin by its inside dimensions; None is not given.

    `diameter_cm` is the bottom's and `top_cm` the rim's where the walls flare; for a rectangle
    `length_cm`/`width_cm` are the bottom's and `top_length_cm`/`top_width_cm` the rim's. `count`
    is how many equal cups a tray holds, or how many equal tins stand side by side. `water_ml` is
    the volume weighed with water, of all of them. `greased` is None where the text is silent.
    """

    read: str
    shape: str
    material: str = "aluminium"
    diameter_cm: float | None = None
    top_cm: float | None = None
    length_cm: float | None = None
    width_cm: float | None = None
    top_length_cm: float | None = None
    top_width_cm: float | None = None
    height_cm: float | None = None
    hole_cm: float | None = None
    count: int = 1
    water_ml: float | None = None
    greased: bool | None = None
