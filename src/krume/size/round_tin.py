"""A tin with a round floor: rim and bottom, depth, hole, half torus."""

from krume.base import as_text
from krume.size.asking import Asking
from krume.size.limits import value
from krume.size.missing import EXAMPLES, has_capacity, whole
from krume.size.sizes import Sizes
from krume.size.tin import Tin


def round_tin(shape: str, found: Sizes, asking: Asking, tin: Tin) -> Tin | None:
    """Fill a round tin's lengths, or ask about them."""
    labels, groups = found.labels, list(found.groups)
    top, bottom = labels.get("top"), labels.get("bottom", labels.get("diameter"))
    bottom = labels.get("width") if bottom is None else bottom
    if groups and (bottom is None or top is None):
        first = groups.pop(0)
        top, bottom = _rim_and_bottom(first, top, bottom)
    height = labels.get("height")
    if groups and height is None:
        height = groups.pop(0)[0]
    if groups:
        _too_many(shape, found, asking)
        return None
    filled = _set(
        tin, diameter_cm=bottom, top_cm=None if bottom in (None, top) else top, height_cm=height,
        hole_cm=labels.get("hole"),
    )  # fmt: skip
    return filled if _is_round_sound(shape, filled, found, asking) else None


def _rim_and_bottom(
    first: list[float], top: float | None, bottom: float | None
) -> tuple[float | None, float | None]:
    if len(first) == 2:
        return first[0], first[1]
    if top is not None:
        return top, first[0]
    if bottom is not None:
        return first[0], bottom
    return None, first[0]


def _set(
    tin: Tin, *, diameter_cm: float | None, top_cm: float | None, height_cm: float | None,
    hole_cm: float | None,
) -> Tin:  # fmt: skip
    return Tin(
        tin.read, tin.shape, tin.material, diameter_cm=diameter_cm, top_cm=top_cm,
        height_cm=height_cm, hole_cm=hole_cm, count=tin.count, water_ml=tin.water_ml,
        greased=tin.greased,
    )  # fmt: skip


def _too_many(shape: str, found: Sizes, asking: Asking) -> None:
    lengths = [found.text(v) for group in found.groups for v in group]
    unit = found.unit
    lines = list(EXAMPLES[shape])
    if len(lengths) > 1 and shape not in ("tube", "ring-mould"):
        lines = [f"{shape} {lengths[0]} x {lengths[1]} {unit}"]
    elif len(lengths) > 1:
        lines = [f"tube {lengths[0]} x {lengths[1]} {unit}, hole {lengths[-1]} {unit}"]
    if len(lengths) == 3:
        lines.append(f"sheet {' x '.join(lengths)} {unit}")
    asking.ask(
        "tin-order",
        f"A {shape} tin has a width and a depth; here are more numbers. Which tin is it?",
        *lines,
    )


def _is_round_sound(shape: str, tin: Tin, found: Sizes, asking: Asking) -> bool:
    if tin.diameter_cm is None:
        return has_capacity(shape, tin, asking)
    return (
        _is_cup(tin, found, asking)
        and _rim_is_wider(shape, tin, found, asking)
        and _is_wider_than_deep(shape, tin, found, asking)
        and _hole_fits(shape, tin, found, asking)
        and _is_half_torus(tin, found, asking)
    )


def _is_cup(tin: Tin, found: Sizes, asking: Asking) -> bool:
    """A tray's cups are small; a wide one is a tin or a sheet."""
    across = max(tin.diameter_cm or 0.0, tin.top_cm or 0.0)
    if tin.shape != "tray" or across <= value("cup-widest"):
        return True
    shown = f"{found.text(across)} {found.unit}"
    asking.ask(
        "tin-shape-missing",
        f"A cup of {shown} is wider than the cups of a tray. Which tin is it?",
        f"round {shown}",
        f"square {shown}",
    )
    return False


def _rim_is_wider(shape: str, tin: Tin, found: Sizes, asking: Asking) -> bool:
    if tin.top_cm is None or tin.diameter_cm is None or tin.top_cm > tin.diameter_cm:
        return True
    swapped = _with_height(shape, f"{found.text(tin.diameter_cm)}/{found.text(tin.top_cm)}", tin,
                           found)  # fmt: skip
    straight = _with_height(shape, found.text(tin.diameter_cm), tin, found)
    asking.ask(
        "tin-rim-narrow",
        f"The rim ({found.text(tin.top_cm)} {found.unit}) is narrower than the bottom "
        f"({found.text(tin.diameter_cm)} {found.unit}). The rim stands first: "
        f"'{swapped}'.",
        swapped,
        straight,
    )
    return False


def _with_height(shape: str, across: str, tin: Tin, found: Sizes) -> str:
    cups = f"{tin.count} x " if shape == "tray" else ""
    deep = "" if tin.height_cm is None else f" x {found.text(tin.height_cm)}"
    hole = "" if tin.hole_cm is None else f", hole {found.text(tin.hole_cm)} {found.unit}"
    return f"{shape} {cups}{across}{deep} {found.unit}{hole}"


def _is_wider_than_deep(shape: str, tin: Tin, found: Sizes, asking: Asking) -> bool:
    """`6 x 20`: a tin deeper than wide is asked, unless its depth was named."""
    across, deep = tin.diameter_cm, tin.height_cm
    if across is None or deep is None or deep <= across or "height" in found.labels:
        return True
    a, d, unit = found.text(across), found.text(deep), found.unit
    asking.ask(
        "tin-order",
        f"Width comes first, then depth: is it {d} {unit} wide and {a} {unit} deep?",
        f"{shape} {d} x {a} {unit}",
        f"{shape} {a} {unit}, {d} {unit} high",
        *([f"{a} x {shape} {d} {unit}"] if across == int(across) and across <= 12 else []),
    )
    return False


def _hole_fits(shape: str, tin: Tin, found: Sizes, asking: Asking) -> bool:
    if shape not in ("tube", "ring-mould"):
        return _has_no_hole(shape, tin, found, asking)
    across = tin.diameter_cm or 0.0
    if tin.hole_cm is None:
        return tin.water_ml is not None or _ask_hole(shape, tin, found, asking)
    if tin.hole_cm < across:
        return True
    swapped = _with_height(shape, found.text(tin.hole_cm), _hole(tin, across), found)
    lines = [swapped] if tin.hole_cm > across else list(EXAMPLES[shape])
    asking.ask(
        "tin-hole-wide",
        f"A hole of {found.text(tin.hole_cm)} {found.unit} does not fit into "
        f"{found.text(across)} {found.unit}. The outer width stands first, then the hole.",
        *lines,
    )
    return False


def _hole(tin: Tin, hole_cm: float) -> Tin:
    return _set(tin, diameter_cm=tin.hole_cm, top_cm=None, height_cm=tin.height_cm, hole_cm=hole_cm)


def _has_no_hole(shape: str, tin: Tin, found: Sizes, asking: Asking) -> bool:
    if tin.hole_cm is None:
        return True
    across = found.text(tin.diameter_cm or 0.0)
    tube = _with_height("tube", across, tin, found)
    mould = f"ring-mould {across} {found.unit}, hole {found.text(tin.hole_cm)} {found.unit}"
    asking.ask(
        "tin-hole-shape",
        f"A {shape} tin has no hole. Is it a tin with a central tube (straight walls) or a "
        "ring-mould (half-round section)?",
        tube,
        mould,
    )
    return False


def _ask_hole(shape: str, tin: Tin, found: Sizes, asking: Asking) -> bool:
    across = tin.diameter_cm or 0.0
    shares = [value("hole-share-narrow"), value("hole-share-wide")]
    holes = [_with_hole(tin, whole(share * across, found)) for share in shares]
    lines = [_with_height(shape, found.text(across), hole, found) for hole in holes]
    asking.ask(
        "tin-hole-missing",
        "How wide is the tube in the middle? Measure it outside, or weigh the tin with water "
        "and type the grams.",
        *dict.fromkeys(lines),
    )
    return False


def _with_hole(tin: Tin, hole_cm: float) -> Tin:
    return _set(
        tin, diameter_cm=tin.diameter_cm, top_cm=tin.top_cm, height_cm=tin.height_cm,
        hole_cm=hole_cm,
    )  # fmt: skip


def _is_half_torus(tin: Tin, found: Sizes, asking: Asking) -> bool:
    """A ring-mould's depth follows from its widths; another depth is another shape."""
    if tin.shape != "ring-mould" or tin.height_cm is None or tin.hole_cm is None:
        return True
    half = ((tin.diameter_cm or 0.0) - tin.hole_cm) / 4
    if abs(half - tin.height_cm) <= value("half-torus-tolerance") * half:
        return True
    across, hole, unit = found.text(tin.diameter_cm or 0.0), found.text(tin.hole_cm), found.unit
    asking.ask(
        "tin-half-torus",
        f"Half a torus of these widths is {as_text(half, 1)} cm deep, not "
        f"{as_text(tin.height_cm, 1)} cm. Which tin is it? Its water settles it best.",
        f"ring-mould {across} {unit}, hole {hole} {unit}",
        f"tube {across} x {found.text(tin.height_cm)} {unit}, hole {hole} {unit}",
    )
    return False
