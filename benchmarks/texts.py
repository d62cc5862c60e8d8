"""Texts to measure with: the demo studio's formulas, each copy with amounts of its own."""

import re
from importlib.resources import files

_GRAMS = re.compile(r"^(\d+(?:\.\d+)?) g ", re.MULTILINE)


def demo_formulas() -> list[str]:
    """The packed formulas of the demo studio."""
    folder = files("krume").joinpath("data", "demo", "formulas")
    found = [f for f in folder.iterdir() if re.fullmatch(r"F\d\.txt", f.name)]
    return [f.read_text(encoding="utf-8") for f in sorted(found, key=lambda f: f.name)]


def many_formulas(count: int) -> list[str]:
    """So many different texts: no two of one formula share their amounts."""
    demo = demo_formulas()
    return [_scaled(demo[at % len(demo)], 1 + at // len(demo) / 1000) for at in range(count)]


def _scaled(text: str, factor: float) -> str:
    return _GRAMS.sub(lambda found: f"{float(found[1]) * factor:.2f} g ", text)
