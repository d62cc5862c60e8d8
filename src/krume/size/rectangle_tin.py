"""A tin with a rectangular floor: sides, rim, depth, and which number is which."""

from krume.size.asking import Asking
from krume.size.limits import value
from krume.size.missing import has_capacity, whole
from krume.size.sizes import Sizes
from krume.size.tin import Tin


def rectangle_tin(shape: str, found: Sizes, asking: Asking, tin: Tin) -> Tin | None:
    """Fill a rectangular tin's lengths, or ask about them."""
    sides = _sides(shape, found)
    if sides is None:
        return _missing_side(shape, found, asking, tin)
    if isinstance(sides, str):
        _ask_sides(shape, found, asking)
        return None
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
    if (shape == "square" and len(groups) == 1) or _is_side_and_depth(shape, groups, height):
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


def _is_side_and_depth(shape: str, groups: list[list[float]], height: float | None) -> bool:
    return shape == "square" and len(groups) == 2 and height is None


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
        return empty if has_capacity(shape, empty, asking) else None
    length, unit = found.groups[0][0], found.unit
    widths = [value("side-share-narrow"), value("side-share-wide")]
    if shape == "sheet":
        widths = [value("sheet-share-narrow"), value("sheet-share-wide")]
    usual = [whole(share * length, found) for share in widths]
    depth = whole(value("side-share-deep") * usual[0], found)
    deep = "" if shape == "sheet" else f" x {found.text(depth)}"
    asking.ask(
        "tin-side-missing",
        f"A {shape} tin needs length, width and depth inside. How wide and deep is it?",
        *(f"{shape} {found.text(length)} x {found.text(w)}{deep} {unit}" for w in usual),
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
    if tin.shape == "square" and length != width:
        return _ask_square(length, width, found, asking)
    if tin.shape == "square" and high is not None and not named and _is_side(high, width):
        return _ask_square(width, high, found, asking)
    if high is not None and high > width and not named:
        ordered = sorted((length, width, high), reverse=True)
        asking.ask(
            "tin-order",
            "Length and width come first, then depth: is it "
            f"{found.text(ordered[-1])} {unit} deep?",
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
