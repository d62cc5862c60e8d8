"""Texts to measure with: the demo studio's formulas, each copy with amounts of its own."""

import re
from importlib.resources import files

_GRAMS = re.compile(r"\b(\d+(?:\.\d+)?) g\b(?!/)")
_STEP = re.compile(r"^([A-Z][^:\n]+\.)$", re.MULTILINE)


def demo_formulas() -> list[str]:
    """The packed formulas of the demo studio."""
    folder = files("krume").joinpath("data", "demo", "formulas")
    found = [f for f in folder.iterdir() if re.fullmatch(r"F\d\.txt", f.name)]
    return [f.read_text(encoding="utf-8") for f in sorted(found, key=lambda f: f.name)]


def many_formulas(count: int) -> list[str]:
    """So many different texts: no two share an amount or a step, so that none is known already."""
    demo = demo_formulas()
    return [_copy(demo[at % len(demo)], at // len(demo)) for at in range(count)]


def _copy(text: str, number: int) -> str:
    scaled = _GRAMS.sub(lambda found: f"{float(found[1]) * (1 + number / 1000):.2f} g", text)
    return _STEP.sub(lambda found: f"{found[1]} See page {number}.", scaled)
