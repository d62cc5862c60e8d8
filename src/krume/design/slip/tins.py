"""Where a batter of another size goes: its depth in the own tin, and the tin that fits."""

from functools import lru_cache

from krume.design.slip.state import Slip, figure
from krume.design.slip.way import WayTin
from krume.size import Tin, area_cm2, depth_cm, fill, rim_cm, tin_text


def way_tin(slip: Slip, total_g: float) -> WayTin | None:
    """Depth and fill of a batter in the own tin, and the tin at hand that keeps the depth.

    None where the formula names no tin, the batter's density or a line's mass is not known, or a
    dough only lines its tin.
    """
    own, density = slip.formula.tin, slip.density_g_ml
    masses = [line.mass_g for line in slip.lines if line.mass_g is not None]
    planned_g = sum(masses)
    is_known = len(masses) == len(slip.lines)
    if own is None or not density or not planned_g or not is_known or _is_lined(slip):
        return None
    volume, was = total_g / density, _depth_cm(own, planned_g / density)
    fits = None if not was else _closest(slip, own, volume, was)
    full = fill(own, volume)
    return WayTin(
        own=_name(own),
        depth_cm=_depth_cm(own, volume),
        was_depth_cm=was,
        fill=full,
        is_full=full is not None and full > figure("fill-most"),
        wanted_area_cm2=volume / was if was else None,
        fits=None if fits is None else _name(fits),
        fits_depth_cm=None if fits is None else _depth_cm(fits, volume),
    )


def _is_lined(slip: Slip) -> bool:
    baked = slip.formula.baked
    return slip.formula.family == "tart" or (baked is not None and baked.thickness_mm is not None)


def _measure(tin: Tin) -> tuple[str, float, float]:
    """What makes two tins one, however they are written."""
    return tin.shape, round(area_cm2(tin) or 0.0, 3), round(rim_cm(tin) or 0.0, 3)


def _name(tin: Tin) -> str:
    """A tin as its owner wrote it."""
    return " ".join(tin.read.split()) or tin_text(tin)


@lru_cache(maxsize=512)
def _depth_cm(tin: Tin, volume_ml: float) -> float | None:
    return depth_cm(tin, volume_ml)


def _closest(slip: Slip, own: Tin, volume_ml: float, was_cm: float) -> Tin | None:
    """The tin in which a volume stands closest to the planned depth and not too full."""
    found: list[tuple[float, str, Tin]] = []
    for tin in {_measure(each): each for each in (*slip.tins, own)}.values():
        deep, full = _depth_cm(tin, volume_ml), fill(tin, volume_ml)
        if deep is None or full is None or full > figure("fill-most"):
            continue
        off = abs(deep - was_cm)
        is_deep = (rim_cm(tin) or 0.0) >= (rim_cm(own) or 0.0) and tin.shape != "ring"
        is_alike = tin.shape == own.shape or is_deep
        if is_alike and off <= figure("fit-near") * was_cm:
            found.append((off, tin_text(tin), tin))
    return min(found, key=lambda each: each[:2])[2] if found else None
