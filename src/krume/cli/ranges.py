"""Numbers of options: inside their range, and a number at all."""

from math import isnan
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from click import Context, Parameter


class Within(click.FloatRange):
    """A number in a range; `nan` lies in none, though it compares as if it lay in each."""

    def convert(self, value: float, param: "Parameter | None", ctx: "Context | None") -> float:
        """The number, or the refusal that names the option."""
        found = float(super().convert(value, param, ctx))
        if isnan(found):
            self.fail(f"'{value}' is no number.", param, ctx)
        return found
