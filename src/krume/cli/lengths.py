"""A length as it is typed: a bare number is in cm, `11 mm` and `1/2 in` say their own unit."""

import re

import click

from krume.base import read_number, unit_named

_TYPED = re.compile(r"^(?P<number>[-\d.,/½¼¾⅓⅔ ]+?)\s*(?P<unit>[^\d\s.,/-].*)?$")
_MOST_CM = 100.0


class LengthCm(click.ParamType[float]):
    """A length above 0 and up to a metre, as centimetres."""

    name = "length"

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> float:
        """Centimetres of what was typed."""
        length_cm = value if isinstance(value, float) else _read(str(value))
        if length_cm is None:
            self.fail(f"'{value}' is no length. Type 3.5, 3.5 cm, 11 mm or 1 1/2 in.", param, ctx)
        if not 0 < length_cm <= _MOST_CM:
            self.fail(f"'{value}' is not between 0 and {_MOST_CM:.0f} cm.", param, ctx)
        return length_cm


def _read(text: str) -> float | None:
    match = _TYPED.match(text.strip())
    number = read_number(match["number"], comma_is_decimal=True) if match else None
    if match is None or number is None:
        return None
    unit = unit_named(match["unit"] or "cm")
    if unit is None or unit.kind != "length" or unit.size is None:
        return None
    return number.value * unit.size
