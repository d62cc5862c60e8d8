"""The floor of a tin and how deep the batter stands on it."""

from krume.bake.batter import Batter
from krume.bake.grid import Footprint
from krume.bake.long_tin import body_of_rectangle
from krume.base import InputError
from krume.size import Tin, area_cm2

_WITH_HOLE = ("tube", "ring-mould")


def footprint_of(tin: Tin) -> Footprint:
    """Floor of one tin (one cup of a tray): its real area, and the body that stands for it."""
    area = floor_cm2(tin) / tin.count / 1e4
    if tin.length_cm is not None:
        width = tin.length_cm if tin.width_cm is None else tin.width_cm
        radius, bend = body_of_rectangle(tin.length_cm / 100, width / 100)
        return Footprint(area, radius, bend_ratio=bend)
    hole = (tin.hole_cm or 0.0) / 200 if tin.shape in _WITH_HOLE else 0.0
    return Footprint(area, (tin.diameter_cm or 0.0) / 200, hole)


def floor_cm2(tin: Tin) -> float:
    """Floor area of all cups together, or InputError where its size is not given."""
    area = area_cm2(tin)
    if area is None:
        message = f"The tin '{tin.read}' has no floor area. Type its inside size, in cm."
        raise InputError(message, field="tin", got=tin.read, want="inside size in cm")
    return area


def depth_cm(batter: Batter, tin: Tin) -> float:
    """Depth of the batter over the tin's real area, per cup of a tray."""
    volume_ml = batter.mass_g / tin.count / batter.density_g_ml
    return volume_ml / (floor_cm2(tin) / tin.count)
