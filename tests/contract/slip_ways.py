"""The ways out of a slip, reckoned once more and simply, from what a formula's lines say."""

from collections.abc import Mapping, Sequence
from typing import Any, NamedTuple

from krume.pantry import ingredient

BLEND = {"flour", "starch"}
NUT_FAMILY = "nut"
SLACK = 1e-6


class Line(NamedTuple):
    """One line of a formula: what it is, whether white or yolk, its grams."""

    name: str
    ingredient: str
    part: str | None
    mass_g: float

    @property
    def role(self) -> str:
        """What the ingredient does in a batter."""
        return ingredient(self.ingredient).role


def lines_of(read: Mapping[str, Any]) -> list[Line]:
    """The lines of `krume read`'s result."""
    return [Line(x["name"], x["ingredient"], x["part"], x["mass_g"]) for x in read["lines"]]


def _sum(lines: Sequence[Line], role: str) -> float:
    return sum(line.mass_g for line in lines if line.role == role)


def _flag(lines: Sequence[Line], flag: str) -> float:
    return sum(line.mass_g for line in lines if getattr(ingredient(line.ingredient), flag))


def _leavening(lines: Sequence[Line], word: str) -> float:
    return sum(line.mass_g for line in lines if ingredient(line.ingredient).leavening == word)


def _named(lines: Sequence[Line], word: str) -> float:
    return sum(line.mass_g for line in lines if word in line.ingredient)


def _fat(lines: Sequence[Line]) -> float:
    shares = [(x.mass_g, ingredient(x.ingredient)) for x in lines if x.role == "fat"]
    return sum(g * (100 if i.added_fat_pct is None else i.added_fat_pct) / 100 for g, i in shares)


def _nut_fat(lines: Sequence[Line]) -> float:
    nuts = [(x.mass_g, ingredient(x.ingredient)) for x in lines if x.role == "nut"]
    return sum(g * (i.composition.fat_g or 0) / 100 for g, i in nuts)


def figures(lines: Sequence[Line], family: str) -> dict[str, float]:
    """The figures that bands judge, of a formula whose egg lines are shelled grams."""
    flour = sum(line.mass_g for line in lines if line.role in BLEND)
    nut, egg = _sum(lines, "nut"), _sum(lines, "egg")
    white = sum(x.mass_g for x in lines if x.role == "egg" and x.part == "white")
    yolk = sum(x.mass_g for x in lines if x.role == "egg" and x.part == "yolk")
    basis = flour + nut if family == NUT_FAMILY else flour
    masses = {
        "egg": egg, "egg_white": white, "egg_yolk": yolk, "sugar": _sum(lines, "sugar"),
        "added_fat": _fat(lines), "acid": _flag(lines, "acid"), "liquid": _flag(lines, "liquid"),
        "baking_powder": _leavening(lines, "baking-powder"), "xanthan": _named(lines, "xanthan"),
        "psyllium": _named(lines, "psyllium"), "butter": _named(lines, "butter"),
        "nut": nut, "nut_fat": _nut_fat(lines), "cream_of_tartar": _named(lines, "tartar"),
    }  # fmt: skip
    percents = {key: 100 * mass / basis for key, mass in masses.items()}
    percents["starch"] = 100 * _flag(lines, "pure_starch") / flour
    percents["sweet_rice"] = 100 * _flag(lines, "sweet_rice") / flour
    if egg:
        percents["sugar_per_egg"] = masses["sugar"] / (white if family == "angel" else egg)
    return percents


def outside(lines: Sequence[Line], family: str, bands: Sequence[Mapping[str, Any]]) -> set[str]:
    """The codes of the figures outside their bands."""
    values, codes = figures(lines, family), set()
    for band in bands:
        if (value := values.get(band["key"])) is None:
            continue  # a height or a depth: not of the lines alone
        if band["low"] and value < band["low"] - SLACK:
            codes.add(f"{band['key']}-low")
        if band["high"] is not None and value > band["high"] + SLACK:
            codes.add(f"{band['key']}-high")
    return codes


def shift(before: Sequence[Line], after: Sequence[Line], *, in_blend: bool) -> float:
    """The worst shift: points of the blend, or percent of a line's ratio to egg."""
    if in_blend:
        return max(abs(a - b) for a, b in zip(_shares(after), _shares(before), strict=True))
    eggs = _sum(before, "egg"), _sum(after, "egg")
    return max(
        abs((b.mass_g / eggs[1]) / (a.mass_g / eggs[0]) - 1) * 100
        for a, b in zip(before, after, strict=True)
    )


def _shares(lines: Sequence[Line]) -> list[float]:
    blend = [line.mass_g for line in lines if line.role in BLEND]
    return [100 * grams / sum(blend) for grams in blend]


def needed(lines: Sequence[Line], weighed: Mapping[str, float]) -> float:
    """The least factor at which nothing weighed is too much."""
    return max([1.0, *(weighed[x.name] / x.mass_g for x in lines if x.name in weighed)])


def scaled(lines: Sequence[Line], factor: float) -> list[Line]:
    """All lines by a factor."""
    return [x._replace(mass_g=x.mass_g * factor) for x in lines]


def filled_up(lines: Sequence[Line], factor: float) -> list[Line]:
    """The flours and starches by a factor, the rest as planned."""
    return [x._replace(mass_g=x.mass_g * factor) if x.role in BLEND else x for x in lines]


def left(lines: Sequence[Line], weighed: Mapping[str, float]) -> list[Line]:
    """What is in the bowl stays, the rest as planned."""
    return [x._replace(mass_g=max(x.mass_g, weighed.get(x.name, 0))) for x in lines]


def held(lines: Sequence[Line], weighed: Mapping[str, float]) -> list[Line] | None:
    """The blend's total as planned: what is not weighed yet shares what is left of it."""
    blend = [x for x in lines if x.role in BLEND]
    there = sum(weighed.get(x.name, 0) for x in blend)
    open_g = sum(x.mass_g for x in blend if x.name not in weighed)
    room = sum(x.mass_g for x in blend) - there
    if room < -SLACK or not open_g:
        return None
    return [
        x if x.role not in BLEND
        else x._replace(mass_g=weighed.get(x.name, x.mass_g * room / open_g))
        for x in lines
    ]  # fmt: skip
