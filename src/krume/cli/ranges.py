"""Numbers of options: a number at all, whole where one counts, and inside its range."""

import re
from math import isfinite
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from click import Context, Parameter


_DEGREES = re.compile(r"([-+\N{MINUS SIGN}]?\d+(?:[.,]\d+)?)\s*°?\s*([CF])?$", re.IGNORECASE)


class Number(click.ParamType[float]):
    """A number; `nan` and `inf` can be read as one and are none."""

    name = "number"

    def convert(self, value: float, param: "Parameter | None", ctx: "Context | None") -> float:
        """The number, or the refusal that names the option."""
        found = float(click.FLOAT.convert(value, param, ctx))
        if not isfinite(found):
            self.fail(f"'{value}' is no number.", param, ctx)
        return found


class Celsius(Number):
    """A temperature as a thermometer shows it: with a comma, °C or °F; bare is degrees Celsius."""

    name = "celsius"

    def convert(self, value: float, param: "Parameter | None", ctx: "Context | None") -> float:
        """The degrees Celsius, or the refusal that names the option."""
        match = _DEGREES.match(str(value).strip())
        if match is None:
            self.fail(f"'{value}' is no temperature. Type 4.5, 4.5C or 40F.", param, ctx)
        figure = float(match[1].replace("\N{MINUS SIGN}", "-").replace(",", "."))
        return (figure - 32) / 1.8 if (match[2] or "").casefold() == "f" else figure


class Within(click.FloatRange):
    """A number in a range; `nan` lies in none, though it compares as if it lay in each."""

    def convert(self, value: float, param: "Parameter | None", ctx: "Context | None") -> float:
        """The number, or the refusal that names the option."""
        return float(super().convert(Number().convert(value, param, ctx), param, ctx))


class Whole(click.IntRange):
    """A whole number, in a range or in none."""

    def convert(self, value: int, param: "Parameter | None", ctx: "Context | None") -> int:
        """The whole number, or the refusal that names the option."""
        try:
            found = int(value)
        except (ValueError, OverflowError):
            self.fail(f"'{value}' is no whole number.", param, ctx)
        return int(super().convert(found, param, ctx))
