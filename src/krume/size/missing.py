"""What every shape asks when its size is missing."""

from krume.base import INCH_CM
from krume.size.asking import Asking
from krume.size.sizes import Sizes
from krume.size.tin import Tin


def has_capacity(shape: str, tin: Tin, asking: Asking) -> bool:
    """A tin without a width is known by its water alone; without that either it is asked."""
    if tin.water_ml is None:
        examples = EXAMPLES[shape]
        asking.ask(
            "tin-size-missing",
            f"How wide is the {shape} tin inside, and how deep? Type for example '{examples[0]}', "
            "or weigh it with water.",
            *examples,
        )
        return False
    return True


EXAMPLES: dict[str, tuple[str, ...]] = {
    "round": ("round 20 x 5 cm", "round 8 x 2 in"),
    "springform": ("springform 24 x 7 cm", "springform 26 x 7 cm"),
    "ring": ("ring 22 x 6 cm", "ring 24 x 2.5 cm"),
    "tube": ("tube 20 x 10 cm, hole 6 cm", "tube 25/23 x 9 cm, hole 6 cm"),
    "ring-mould": ("ring-mould 24 cm, hole 10 cm", "ring-mould 22 cm, hole 8 cm"),
    "tray": ("tray 12 x 7/5 x 3 cm", "tray 6 x 8 x 4 cm"),
    "square": ("square 20 x 5 cm", "square 8 x 2 in"),
    "sheet": ("sheet 13 x 9 x 1 in", "sheet 40 x 30 x 2 cm"),
    "loaf": ("loaf 21.5 x 11.5 x 7 cm", "loaf 30 x 11 x 8 cm"),
}


def whole(length_cm: float, found: Sizes) -> float:
    """A length to the whole unit the person types in, at least one."""
    unit = INCH_CM if found.unit == "in" else 1.0
    return max(round(length_cm / unit), 1) * unit
