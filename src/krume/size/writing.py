"""A tin as it is written: the one form that reads back as the same tin."""

from krume.base import INCH_CM, as_text
from krume.size.limits import value
from krume.size.tin import Tin


def tin_text(tin: Tin, *, unit: str = "cm") -> str:
    """Canonical text of a tin, in cm or in inches.

    >>> tin_text(Tin("", "tube", diameter_cm=23.0, top_cm=25.0, height_cm=9.0, hole_cm=6.0))
    'tube 25/23 x 9 cm, hole 6 cm'
    >>> tin_text(Tin("", "round", "dark", diameter_cm=20.32), unit="in")
    'dark round 8 in'
    """
    head = "" if tin.material == "aluminium" else f"{tin.material} "
    if tin.count > 1 and tin.shape != "tray":
        head = f"{tin.count} x {head}"
    words = [f"{head}{tin.shape} {_measures(tin, unit)}".rstrip()]
    if tin.hole_cm is not None:
        words.append(f"hole {_in(tin.hole_cm, unit)} {unit}")
    if tin.water_ml is not None:
        words.append(f"{as_text(tin.water_ml, 6)} ml water")
    if tin.greased is not None:
        words.append("greased" if tin.greased else "not greased")
    return ", ".join(words)


def _measures(tin: Tin, unit: str) -> str:
    floor = _floor(tin, unit)
    if floor is None:
        cups = f"{tin.count} cups" if tin.shape == "tray" and tin.count > 1 else ""
        deep = "" if tin.height_cm is None else f"{_in(tin.height_cm, unit)} {unit} high"
        return ", ".join(part for part in (cups, deep) if part)
    if tin.height_cm is None:
        return f"{floor} {unit}"
    height = _in(tin.height_cm, unit)
    if tin.height_cm > _deepest(tin):
        return f"{floor} {unit}, {height} {unit} high"
    return f"{floor} x {height} {unit}"


def _floor(tin: Tin, unit: str) -> str | None:
    if tin.shape == "tray":
        cup = _flared(tin.diameter_cm, tin.top_cm, unit)
        return f"{tin.count} x {cup}" if cup else None
    if tin.diameter_cm is not None:
        return _flared(tin.diameter_cm, tin.top_cm, unit)
    if tin.length_cm is None or tin.width_cm is None:
        return None
    if tin.shape == "square":
        return _flared(tin.length_cm, tin.top_length_cm, unit)
    bottom = f"{_in(tin.length_cm, unit)} x {_in(tin.width_cm, unit)}"
    if tin.top_length_cm is None or tin.top_width_cm is None:
        return bottom
    return f"{_in(tin.top_length_cm, unit)} x {_in(tin.top_width_cm, unit)} / {bottom}"


def _flared(bottom: float | None, top: float | None, unit: str) -> str | None:
    if bottom is None:
        return None
    return _in(bottom, unit) if top is None else f"{_in(top, unit)}/{_in(bottom, unit)}"


def _deepest(tin: Tin) -> float:
    """Depth up to which the last number reads as the depth."""
    if tin.shape == "square":
        return value("rectangle-least-ratio") * (tin.width_cm or 0.0)
    return tin.diameter_cm or tin.width_cm or 0.0


def _in(length_cm: float, unit: str) -> str:
    return as_text(length_cm / INCH_CM if unit == "in" else length_cm, 6)
