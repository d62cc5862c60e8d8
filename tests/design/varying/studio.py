"""The demo's formulas, read from their own texts."""

from functools import cache
from importlib.resources import files

from krume.design import Formula, read

DEMO = files("krume") / "data" / "demo"


@cache
def demo(name: str) -> Formula:
    """A formula of the demo studio by its short name."""
    folder = DEMO / "formulas"
    (path,) = [p for p in folder.iterdir() if p.name.split("-")[0].split(".")[0] == name]
    found = read(path.read_text(encoding="utf-8"), eggs_region="eu")
    assert not found.problems
    return found.value
