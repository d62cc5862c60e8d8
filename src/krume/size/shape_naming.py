"""The shape where none is named, and shapes that have no formula: told by the sides, or asked."""

import math

from krume.size.asking import Asking
from krume.size.geometry import area_cm2
from krume.size.limits import value
from krume.size.measures import Measures
from krume.size.sizes import Sizes
from krume.size.tin import Tin
from krume.size.words import (
    ADJECTIVES,
    COUNT_WORDS,
    CUP_WORDS,
    IGNORED,
    MATERIAL_WORDS,
    NO_FORMULA,
    NOUNS,
    SHAPE_WORDS,
)


def has_formula(lengths: Sizes, found: Measures, asking: Asking) -> bool:
    """An oval or a heart has no formula here; an oval's floor is that of a round tin."""
    odd = next((word for word in found.words if word in NO_FORMULA), None)
    flat = [group[0] for group in lengths.groups]
    if odd is None or found.capacity:
        return True
    lines: list[tuple[str, str]] = []
    if odd == "oval" and len(flat) > 1:
        size = f"round {lengths.text(round(math.sqrt(flat[0] * flat[1]), 1))} {lengths.unit}"
        lines.append((f"{size}: a round tin of the same floor", size))
    elif flat:
        size = f"square {lengths.text(flat[0])} {lengths.unit}"
        lines.append((f"{size}: as if square, too large", size))
    asking.ask(
        "tin-no-formula",
        f"There is no formula for a tin that is '{odd}'. Fill it with water, weigh the water and "
        "type for example 'round 1500 g water' with your number.",
        *lines,
    )
    return False


def is_one_size(lengths: Sizes, found: Measures, shape: str | None, asking: Asking) -> bool:
    """`8- or 9-inch tins`: two sizes to choose from are asked."""
    if not {"or", "oder"} & set(found.words) or not lengths.loose or not lengths.groups:
        return True
    name = shape or "round"
    both = (lengths.groups[0][0], lengths.loose[0])
    asking.ask(
        "tin-two-sizes",
        "Two sizes are named. Which tin is it?",
        *(f"{name} {lengths.text(size)} {lengths.unit}" for size in both),
    )
    return False


def shape_by_sides(found: Sizes, words: Measures, asking: Asking) -> str | None:
    """The shape when none is named: a rectangle where the sides say so, else it is asked."""
    flat = [group[0] for group in found.groups]
    if found.pairs is not None or len(flat) == 3:
        sides = found.pairs[1] if found.pairs is not None else flat[:2]
        return _named_rectangle(sides, asking)
    if len(flat) == 2 and min(flat) > value("rectangle-least-ratio") * max(flat):
        return _named_rectangle(flat, asking)
    if len(flat) == 2:
        _ask_shape_of_two(found, flat, asking)
        return None
    width = found.labels.get("diameter", flat[0] if flat else None)
    if "diameter" in found.labels:
        return "round"
    if width is None:
        _ask_shape(words, asking)
    else:
        _ask_round_or_square(found, width, asking)
    return None


def _named_rectangle(sides: list[float], asking: Asking) -> str:
    ratio = min(sides) / max(sides)
    narrow = ratio <= value("rectangle-least-ratio")
    shape = "square" if ratio == 1 else "loaf" if narrow else "sheet"
    asking.note("tin-shape-assumed", f"No shape is named: read as a {shape} by its sides.")
    return shape


def _ask_shape_of_two(found: Sizes, flat: list[float], asking: Asking) -> None:
    wide, deep = found.text(max(flat)), found.text(min(flat))
    size = f"{wide} x {deep} {found.unit}"
    asking.ask(
        "tin-shape-missing",
        f"Which tin is it: {wide} {found.unit} wide and {deep} {found.unit} deep, or two sides? "
        "Type the shape, then width x depth.",
        f"round {size}", f"ring {size}", f"square {size}",
        (f"loaf {size}, depth not given", f"loaf {size}"),
    )  # fmt: skip


def _ask_shape(words: Measures, asking: Asking) -> None:
    named = "".join(f" '{word}' is not a shape known here." for word in unused_words(words)[:1])
    asking.ask(
        "tin-not-read",
        f"No shape and no size can be read.{named} Type shape and inside size, "
        "for example 'round 20 x 5 cm'.",
        "round 20 x 5 cm",
        "sheet 13 x 9 x 1 in",
    )


def _ask_round_or_square(found: Sizes, width: float, asking: Asking) -> None:
    areas = [
        area_cm2(Tin("", "round", diameter_cm=width)),
        area_cm2(Tin("", "square", length_cm=width, width_cm=width)),
    ]
    high = found.labels.get("height")
    deep = "" if high is None else f" x {found.text(high)}"
    size = f"{found.text(width)}{deep} {found.unit}"
    shown = [f"{area or 0:.0f} cm2" for area in areas]
    asking.ask(
        "tin-shape-missing",
        f"Round ({shown[0]}) or square ({shown[1]})?",
        (f"round, {shown[0]}", f"round {size}"),
        (f"square, {shown[1]}", f"square {size}"),
    )


def unused_words(found: Measures) -> list[str]:
    """Words of the text that nothing was made of."""
    known = IGNORED | CUP_WORDS | {"greased", "ungreased", "gefettet", "ungefettet"}
    known |= NO_FORMULA
    tables = (SHAPE_WORDS, MATERIAL_WORDS, ADJECTIVES, NOUNS, COUNT_WORDS)
    return [w for w in found.words if w not in known and not any(w in t for t in tables)]
