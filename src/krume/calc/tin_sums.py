"""Quick sums on tins and rolls."""

from krume.base import InputError, as_text
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.properties import within
from krume.size import SHAPES, Tin, area_cm2, read_tin, roll, tin_factor, tin_text, volume_ml

_LONGEST_CM = 200.0
_WITH_HOLE = ("tube", "ring-mould")
_LENGTHS = ("diameter", "top", "length", "width", "height", "hole", "top_length", "top_width")


def _tin_volume(given: Given) -> Values:
    tin = _tin(given)
    volume = volume_ml(tin)
    if volume is None:
        given.note("tin-depth-missing", "Without the height there is no volume; the area is exact.")
    return {"volume_ml": volume, "area_cm2": area_cm2(tin), "tin": tin_text(tin)}


def _tin(given: Given) -> Tin:
    shape = given.text("shape")
    sizes = {name: _length(given, name) for name in _LENGTHS}
    if shape in ("sheet", "loaf"):
        _need(given, sizes, "length", "width")
    elif shape == "square":
        side = next((sizes[n] for n in ("length", "width", "diameter") if sizes[n]), None)
        sizes |= {"length": side, "width": sizes["width"] or side, "diameter": None}
        _need(given, sizes, "length")
    else:
        _need(given, sizes, "diameter", *(("hole",) if shape in _WITH_HOLE else ()))
    _check_walls(sizes)
    if sizes["hole"] is not None and shape not in _WITH_HOLE:
        raise InputError(
            f"A {shape} tin has no hole. With a central tube it is shape=tube, half a torus is "
            "shape=ring-mould.",
            field="hole", got=as_text(sizes["hole"]), want="no hole, or shape=tube",
        )  # fmt: skip
    return Tin(
        read="",
        shape=shape,
        diameter_cm=sizes["diameter"],
        top_cm=sizes["top"],
        length_cm=sizes["length"],
        width_cm=sizes["width"],
        top_length_cm=sizes["top_length"],
        top_width_cm=sizes["top_width"],
        height_cm=None if shape == "ring-mould" else sizes["height"],
        hole_cm=sizes["hole"],
        count=given.count("count") or 1,
    )


def _length(given: Given, name: str) -> float | None:
    found = given.maybe(name)
    if found is None:
        return None
    if found <= 0:
        raise InputError(
            f"{name} is {as_text(found)} cm; a tin measures more than 0.",
            field=name, got=as_text(found), want="more than 0 cm",
        )  # fmt: skip
    return within(name, found, 0.0, _LONGEST_CM, "cm")


def _need(given: Given, sizes: dict[str, float | None], *names: str) -> None:
    absent = [name for name in names if sizes[name] is None]
    if absent:
        raise given.missing(*absent)


def _check_walls(sizes: dict[str, float | None]) -> None:
    pairs = (("diameter", "top"), ("length", "top_length"), ("width", "top_width"))
    for bottom, rim in pairs:
        low, high = sizes[bottom], sizes[rim]
        if low is not None and high is not None and high < low:
            raise InputError(
                f"{rim} ({as_text(high)} cm, at the rim) is narrower than {bottom} "
                f"({as_text(low)} cm, at the bottom). Exchange them.",
                field=rim, got=as_text(high), want=f"{as_text(low)} cm or more",
            )  # fmt: skip
    across, hole = sizes["diameter"], sizes["hole"]
    if across is not None and hole is not None and hole >= across:
        raise InputError(
            f"A hole of {as_text(hole)} cm does not fit into {as_text(across)} cm.",
            field="hole", got=as_text(hole), want=f"less than {as_text(across)} cm",
        )  # fmt: skip


def _tin_factor(given: Given) -> Values:
    own = _read(given, "from", given.text("from"))
    targets = [_read(given, "to", text) for text in given.text("to").split(";") if text.strip()]
    found = tin_factor(own, targets)
    if found.by_volume is None:
        given.note("tin-depth-missing", "A tin without its depth has no factor by volume.")
    return {"by_volume": found.by_volume, "by_area": found.by_area}


def _read(given: Given, field: str, text: str) -> Tin:
    read = read_tin(text, where=field)
    given.notices.extend(n for n in read.notices if n.code != "tin-depth-assumed")
    if read.value is None:
        problem = read.problems[0]
        lines = [option.line for option in problem.options]
        raise InputError(
            f"{problem.ask} Type for example {field}='{lines[0]}'." if lines else problem.ask,
            field=field, got=problem.read, want=" or ".join(lines), where=field,
        )  # fmt: skip
    return read.value


def _roll(given: Given) -> Values:
    found = roll(
        given.number("length"),
        thickness_cm=given.number("thickness"),
        cream_cm=given.or_zero("cream"),
        core_cm=given.or_zero("core"),
    )
    return {
        "turns": found.turns,
        "diameter_cm": found.diameter_cm,
        "outer_strain_pct": found.outer_strain_pct,
    }


TIN_SUMS = (
    Sum(
        "tin-volume",
        "How much a tin holds, and its floor area.",
        (
            Input("shape", "shape of the tin", kind="choice", choices=SHAPES),
            Input("diameter", "inside diameter, at the bottom", "cm", required=False),
            Input("top", "inside diameter at the rim, where the walls flare", "cm", required=False),
            Input("length", "inside length, at the bottom", "cm", required=False),
            Input("width", "inside width, at the bottom", "cm", required=False),
            Input("height", "inside depth", "cm", required=False),
            Input("hole", "diameter of the tube or hole", "cm", required=False),
            Input("top_length", "length at the rim, where the walls flare", "cm", required=False),
            Input("top_width", "width at the rim, where the walls flare", "cm", required=False),
            Input("count", "how many equal cups or tins", kind="count", required=False),
        ),
        (
            Output("volume_ml", "filled level to the rim; null without a depth"),
            Output("area_cm2", "of the floor; of a ring-mould, of its opening"),
            Output("tin", "the tin as it is written"),
        ),
        _tin_volume,
        ("mathematics",),
        (("shape", "round"), ("diameter", "8in"), ("height", "2in")),
        "A fluted tin holds less than its widths say: weigh it with water.",
    ),
    Sum(
        "tin-factor",
        "What to multiply a formula by when the tin changes.",
        (
            Input("from", "the tin of the formula", kind="text"),
            Input("to", "the tin at hand; several separated by ;", kind="text"),
        ),
        (
            Output("by_volume", "the same fill; null without both depths"),
            Output("by_area", "the same depth in straight tins"),
        ),
        _tin_factor,
        ("mathematics",),
        (("from", "round 20 x 7 cm"), ("to", "round 24 x 7 cm")),
    ),
    Sum(
        "roll",
        "Turns, diameter and stretch of a rolled sheet.",
        (
            Input("length", "side that is rolled up", "cm"),
            Input("thickness", "thickness of the sheet", "cm"),
            Input("cream", "thickness of the cream", "cm", required=False),
            Input("core", "radius of the hollow in the middle", "cm", required=False),
        ),
        (
            Output("turns", "turns of the sheet"),
            Output("diameter_cm", "outside diameter"),
            Output("outer_strain_pct", "stretch of the innermost outer face, an upper estimate"),
        ),
        _roll,
        ("mathematics",),
        (("length", "38"), ("thickness", "1.0"), ("cream", "0.4"), ("core", "0.8")),
    ),
)
