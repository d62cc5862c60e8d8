"""Figures of what stands round the tin; every one a row of around.csv."""

import math
from functools import cache

from krume.bake.batter import Around
from krume.bake.parameters import model_figures
from krume.base import Figure, Notice


@cache
def around_figures() -> dict[str, Figure]:
    """All figures of what stands round the tin, with their papers."""
    return model_figures("around.csv")


def around_value(key: str) -> float:
    """Value of a figure."""
    return around_figures()[key].value


def around_doubt(around: Around) -> float:
    """What never-compared surroundings add to the doubt of ln minutes, as one deviation."""
    kinds = [each for _, each, _ in _said(around)]
    return math.hypot(*(around_value(f"doubt-{kind}") for kind in kinds)) if kinds else 0.0


def around_notices(around: Around) -> tuple[Notice, ...]:
    """That such surroundings were never compared with a bake, one notice each."""
    said = {code: text for code, _, text in _said(around)}
    return tuple(
        Notice(code, f"{text} It was never compared with a bake. Wider doubt.")
        for code, text in said.items()
    )


def _said(around: Around) -> list[tuple[str, str, str]]:
    """Notice code, row of its doubt, and what is taken, for each thing that is not plain."""
    found: list[tuple[str, str, str]] = []
    if around.jacket in _JACKETS:
        found.append((f"jacket-{around.jacket}", around.jacket, _JACKETS[around.jacket]))
    if around.under in _UNDERS and around.jacket != "water":
        found.append((f"under-{around.under}", around.under, _UNDERS[around.under]))
    if around.rack != "middle":
        near, far = ("bottom", "top") if around.rack == "low" else ("top", "bottom")
        text = f"On the {around.rack} rack the {near} is taken to get more heat, the {far} less."
        found.append(("rack-off-middle", "rack", text))
    if around.course is not None:
        return [*found, ("air-given", "course", "The oven's air is taken as it is given.")]
    if around.warming_from_c is not None:
        text = f"The oven warms up from {around.warming_from_c:.0f} °C with the cake in it."
        found.append(("oven-warming", "warming", text))
    if around.door_min:
        at = ", ".join(f"{minute:.0f}" for minute in sorted(around.door_min))
        text = f"The door is opened on the way, at minute {at}."
        found += [("door-opened", "door", text)] * len(around.door_min)
    return found


_JACKETS = {
    "wrapped": "A wet strip round the wall keeps the edge cool while it is wet. The core is looked "
    "for in the middle.",
    "water": "The tin stands in hot water, and its wall gets no hotter than that water. The core "
    "is looked for in the middle.",
}
_UNDERS = {
    "tray": "The tin stands on a tray, which touches it in places only.",
    "insulated": "Two trays with air between them hold back the heat from below.",
    "stone": "The stone under the tin is taken to be as hot as the oven.",
}
