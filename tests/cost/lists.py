"""Price lists and lines for tests of the sums, without a book."""

from typing import Any

from krume.design import Formula, Line
from krume.pantry import PriceList, egg_size, find, read_prices

DEMO = """\
item,price,per
caster sugar,1.40,kg
whole milk,1.20,kg
butter,9.20,kg
"eggs, EU M",0.32,each
"eggs, EU L",0.38,each
pasteurised egg white,7.00,kg
vanilla pods,2.50,each
box and board,2.40,each
label,0.06,each
electricity,0.34,kWh
"""


def prices(*more: str, text: str = DEMO) -> PriceList:
    """A price list of these rows and more."""
    read = read_prices(text + "".join(f"{row}\n" for row in more))
    assert read.problems == ()
    return read.value


def weighed(mass_g: float | None, name: str, **more: Any) -> Line:
    """A line weighed in grams."""
    said: dict[str, Any] = {
        "read": f"{mass_g} g {name}", "number": 1, "amount": mass_g, "unit": "g",
        "mass_g": mass_g, "basis": "weighed", "name": name, "ingredient": find(name).key,
    }  # fmt: skip
    return Line(**{**said, **more})


def eggs(count: float, size: str = "eu-m", part: str = "whole") -> Line:
    """Eggs, yolks or whites by count."""
    word = {"whole": "eggs", "yolk": "egg yolks", "white": "egg whites"}[part]
    return weighed(
        count * egg_size(size).part_g(part).best, word, read=f"{count} {word}", amount=count,
        unit="each", basis="egg", part=part, egg_size=size,
    )  # fmt: skip


def formula(*lines: Line, **more: Any) -> Formula:
    """A formula of these lines."""
    return Formula("Cream", lines, **more)
