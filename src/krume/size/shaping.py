"""From settled lengths to a tin of one shape, or a question about the order of the numbers."""

from krume.base import as_text
from krume.size.asking import Asking
from krume.size.limits import value
from krume.size.sizes import Sizes
from krume.size.tin import ROUND_FLOOR, Tin


def build_tin(shape: str, found: Sizes, asking: Asking, tin: Tin) -> Tin | None:
    """Fill the tin's lengths from the numbers in their usual order; None where that is unclear."""
    if found.loose and not _take_loose(shape, found, asking):
        return None
    if shape in ROUND_FLOOR:
        return _round(shape, found, asking, tin)
    return _rectangle(shape, found, asking, tin)


def _take_loose(shape: str, found: Sizes, asking: Asking) -> bool:
    """`20 cm round, 5 cm`: one more length with its own unit is the depth; a bare one is asked."""
    width = found.groups[0][0] if found.groups else 0.0
    only = found.loose[0]
    clear = len(found.loose) == 1 and found.loose_has_unit and only < width
    if clear and "height" not in found.labels and len(found.groups) == 1:
        found.labels["height"] = only
        found.loose = []
        return True
    across, extra = found.text(width), found.text(only)
    asking.ask(
        "tin-order",
        f"What does the number {extra} measure? Join the inside width and the depth by 'x', "
        "or name the hole.",
        f"{shape} {across} x {extra} {found.unit}",
        f"ring-mould {across} {found.unit}, hole {extra} {found.unit}",
    )
    return False


def _round(shape: str, found: Sizes, asking: Asking, tin: Tin) -> Tin | None:
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
        return _too_many(shape, found, asking)
    filled = _set(
        tin, diameter_cm=bottom, top_cm=None if top == bottom else top, height_cm=height,
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
    lines = [f"{shape} {lengths[0]} x {lengths[1]} {unit}"]
    if shape in ("tube", "ring-mould"):
        lines = [f"tube {lengths[0]} x {lengths[1]} {unit}, hole {lengths[-1]} {unit}"]
    if len(lengths) == 3:
        lines.append(f"sheet {' x '.join(lengths)} {unit}")
    asking.ask(
        "tin-order",
        f"A {shape} tin has a width and a depth; here are {len(lengths)} numbers. "
        "Which tin is it?",
        *lines,
    )


def _is_round_sound(shape: str, tin: Tin, found: Sizes, asking: Asking) -> bool:
    if tin.diameter_cm is None:
        return _has_capacity(shape, tin, asking)
    return (
        _rim_is_wider(shape, tin, found, asking)
        and _is_wider_than_deep(shape, tin, found, asking)
        and _hole_fits(shape, tin, found, asking)
        and _is_half_torus(tin, found, asking)
    )


def _has_capacity(shape: str, tin: Tin, asking: Asking) -> bool:
    """A tin without a width is known by its water alone; without that either it is asked."""
    if tin.water_ml is None:
        examples = _EXAMPLES[shape]
        asking.ask(
            "tin-size-missing",
            f"How wide is the {shape} tin inside, and how deep? Type for example '{examples[0]}', "
            "or weigh it with water.",
            *examples,
        )
        return False
    return True


_EXAMPLES: dict[str, tuple[str, ...]] = {
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
    lines = [swapped] if tin.hole_cm > across else list(_EXAMPLES[shape])
    asking.ask(
        "tin-hole-wide",
        f"A hole of {found.text(tin.hole_cm)} {found.unit} does not fit into "
        f"{found.text(across)} {found.unit}. The outer width stands first, then the hole.",
        *lines,
    )
    return False


def _hole(tin: Tin, hole_cm: float) -> Tin:
    return _set(
        tin, diameter_cm=tin.hole_cm, top_cm=None, height_cm=tin.height_cm, hole_cm=hole_cm
    )


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
    lines = [
        _with_height(shape, found.text(across), _with_hole(tin, _whole(share * across, found)), found)
        for share in shares
    ]
    asking.ask(
        "tin-hole-missing",
        "How wide is the tube in the middle? Measure it outside, or weigh the tin with water "
        "and type the grams.",
        *dict.fromkeys(lines),
    )
    return False


def _whole(length_cm: float, found: Sizes) -> float:
    unit = 2.54 if found.unit == "in" else 1.0
    return max(round(length_cm / unit), 1) * unit


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


def _rectangle(shape: str, found: Sizes, asking: Asking, tin: Tin) -> Tin | None:
    sides = _sides(shape, found)
    if sides is None:
        return _missing_side(shape, found, asking, tin)
    if isinstance(sides, str):
        return _ask_sides(shape, found, asking)
    (length, width), top, height = sides
    if width > length:
        length, width = width, length
        top = None if top is None else (top[1], top[0])
    filled = Tin(
        tin.read, shape, tin.material, length_cm=length, width_cm=width,
        top_length_cm=top[0] if top else None, top_width_cm=top[1] if top else None,
        height_cm=height, count=tin.count, water_ml=tin.water_ml, greased=tin.greased,
    )  # fmt: skip
    return filled if _is_rectangle_sound(filled, found, asking) else None


_Sides = tuple[tuple[float, float], tuple[float, float] | None, float | None]


def _sides(shape: str, found: Sizes) -> "_Sides | str | None":
    """Floor, rim and height; a text when the numbers do not say which is which."""
    labels, groups = found.labels, list(found.groups)
    height = labels.get("height")
    if found.pairs is not None:
        top, bottom = found.pairs
        high = groups[0][0] if groups and height is None else height
        return (bottom[0], bottom[1]), (top[0], top[1]), high
    for side in ("length", "width"):
        if side in labels:
            groups.insert(0 if side == "length" else min(len(groups), 1), [labels[side]])
    if shape == "square" and groups and (len(groups) == 1 or len(groups) == 2 and height is None):
        groups = _square_sides(groups)
    if len(groups) < 2:
        return None
    if len(groups) > (2 if height is not None else 3):
        return "too many"
    high = height if len(groups) == 2 else groups[2][0]
    first, second = groups[0], groups[1]
    if len(first) != len(second):
        return "one side flared"
    if len(first) == 2:
        return (first[1], second[1]), (first[0], second[0]), high
    return (first[0], second[0]), None, high


def _square_sides(groups: list[list[float]]) -> list[list[float]]:
    if len(groups) == 1 or groups[0] == groups[1]:
        return [groups[0], groups[0]]
    return [groups[0], groups[0], groups[1]]


def _missing_side(shape: str, found: Sizes, asking: Asking, tin: Tin) -> Tin | None:
    if not found.groups:
        empty = Tin(
            tin.read, shape, tin.material, count=tin.count, water_ml=tin.water_ml,
            greased=tin.greased,
        )  # fmt: skip
        return empty if _has_capacity(shape, empty, asking) else None
    length, unit = found.groups[0][0], found.unit
    widths = [value("side-share-narrow"), value("side-share-wide")]
    if shape == "sheet":
        widths = [value("sheet-share-narrow"), value("sheet-share-wide")]
    whole = [_whole(share * length, found) for share in widths]
    deep = "" if shape == "sheet" else f" x {found.text(_whole(0.75 * whole[0], found))}"
    asking.ask(
        "tin-side-missing",
        f"A {shape} tin needs length, width and depth inside. How wide and deep is it?",
        *(f"{shape} {found.text(length)} x {found.text(w)}{deep} {unit}" for w in whole),
    )
    return None


def _ask_sides(shape: str, found: Sizes, asking: Asking) -> None:
    lengths = [found.text(group[0]) for group in found.groups]
    unit = found.unit
    asking.ask(
        "tin-order",
        f"A {shape} tin is written length x width x depth, a flared one "
        "'loaf 23 x 13 / 20 x 10 x 7 cm' (rim / bottom). Which measures are they?",
        f"{shape} {' x '.join(lengths[:3])} {unit}",
        f"{shape} {' x '.join(lengths[:2])} {unit}",
    )


def _is_rectangle_sound(tin: Tin, found: Sizes, asking: Asking) -> bool:
    length, width, high, unit = tin.length_cm or 0.0, tin.width_cm or 0.0, tin.height_cm, found.unit
    sides = f"{found.text(length)} x {found.text(width)}"
    named = "height" in found.labels
    if tin.shape == "square" and high is not None and not named and _is_side(high, width):
        return _ask_square(width, high, found, asking)
    if high is not None and high > width and not named:
        ordered = sorted((length, width, high), reverse=True)
        asking.ask(
            "tin-order",
            f"Length and width come first, then depth: is it {found.text(ordered[-1])} {unit} deep?",
            f"{tin.shape} {' x '.join(found.text(v) for v in ordered)} {unit}",
            f"{tin.shape} {sides} {unit}, {found.text(high)} {unit} high",
        )
        return False
    top = (tin.top_length_cm or length, tin.top_width_cm or width)
    if top[0] >= length and top[1] >= width:
        return True
    rim = f"{found.text(top[0])} x {found.text(top[1])}"
    deep = "" if high is None else f" x {found.text(high)}"
    asking.ask(
        "tin-rim-narrow",
        f"The rim ({rim} {unit}) is narrower than the bottom ({sides} {unit}). "
        "The rim stands first.",
        f"{tin.shape} {sides} / {rim}{deep} {unit}",
        f"{tin.shape} {sides}{deep} {unit}",
    )
    return False


def _is_side(high: float, width: float) -> bool:
    ratio = value("rectangle-least-ratio")
    return min(high, width) > ratio * max(high, width) and high != width


def _ask_square(width: float, high: float, found: Sizes, asking: Asking) -> bool:
    """`square 9 x 13`: two sides that differ, or a deep square tin."""
    one, two = found.text(max(width, high)), found.text(min(width, high))
    asking.ask(
        "tin-order",
        f"{found.text(width)} x {found.text(high)} {found.unit} is no square. Are these two sides "
        "of a sheet, or the side and the depth of a square tin?",
        f"sheet {one} x {two} {found.unit}",
        f"square {found.text(width)} {found.unit}, {found.text(high)} {found.unit} high",
    )
    return False
