"""A colour as it is measured, L*a*b*, as light and as a screen shows it."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import cache

from krume.base import OutOfRangeError
from krume.properties.constant_table import constant

Three = tuple[float, float, float]

_BYTE = 255
_BEND = 6 / 29
"""Where the cube root of L*a*b* becomes a line: so chosen by the standard that both meet."""


@dataclass(frozen=True, slots=True)
class Lab:
    """A measured colour: lightness 0 to 100, green to red, blue to yellow; daylight D65, 2°."""

    lightness: float
    red: float
    yellow: float

    def distance(self, other: "Lab") -> float:
        """Colour difference, the straight line between both."""
        parts = (
            self.lightness - other.lightness,
            self.red - other.red,
            self.yellow - other.yellow,
        )
        return float(sum(part * part for part in parts) ** 0.5)


@dataclass(frozen=True, slots=True)
class ScreenColour:
    """What a screen is sent: red, green and blue of 0 to 255; `is_exact` if none was cut off."""

    red: int
    green: int
    blue: int
    is_exact: bool = True

    @property
    def text(self) -> str:
        """As a drawing names it: `#c68642`."""
        return f"#{self.red:02x}{self.green:02x}{self.blue:02x}"


def light_of(colour: Lab) -> Three:
    """Light a surface of a measured colour gives back in daylight.

    fy = (L + 16) / 116 · fx = fy + a / 500 · fz = fy - b / 200 · X = Xn g(fx), Y = g(fy) and so on,
    g(f) = f^3 above 6/29, else 3 (6/29)^2 (f - 4/29)

    Parameters
    ----------
    colour : L, a, b [CIE 1976 units]

    Returns
    -------
    X, Y, Z over the light of a white surface [share]

    Raises
    ------
    OutOfRangeError : lightness is outside 0 to 100

    Valid for
    ---------
    Daylight D65 and the 2 degree observer of 1931.

    Source
    ------
    `cie-lab-1976`

    Examples
    --------
    >>> [round(part, 4) for part in light_of(Lab(100.0, 0.0, 0.0))]
    [0.9505, 1.0, 1.0891]
    """
    if not 0 <= colour.lightness <= 100:
        raise OutOfRangeError(
            f"A lightness of {colour.lightness:g} is outside 0 to 100.",
            field="lightness", got=f"{colour.lightness:g}", want="0 to 100",
        )  # fmt: skip
    high = (colour.lightness + 16) / 116
    parts = (high + colour.red / 500, high, high - colour.yellow / 200)
    return _three(share * _cubed(part) for share, part in zip(_white(), parts, strict=True))


def screen_colour(colour: Lab) -> ScreenColour:
    """What a screen is sent for a measured colour, cut off at what it can show.

    (r, g, b) = M^-1 (X, Y, Z) · M from the four chromaticities ·
    v = 12.92 r up to 0.0031308, else 1.055 r^(1/2.4) - 0.055 · byte = round(255 v)

    Parameters
    ----------
    colour : L, a, b [CIE 1976 units]

    Returns
    -------
    red, green, blue [0 to 255]

    Raises
    ------
    OutOfRangeError : lightness is outside 0 to 100

    Valid for
    ---------
    A screen set up as the standard says. A screen is not a calibrated print.

    Source
    ------
    `iec-61966-2-1`

    Examples
    --------
    >>> screen_colour(Lab(53.2408, 80.0925, 67.2032)).text
    '#ff0000'
    """
    shares = _linear(light_of(colour))
    values = [_curved(min(max(share, 0.0), 1.0)) for share in shares]
    red, green, blue = (round(_BYTE * value) for value in values)
    slack = 0.5 / _BYTE
    return ScreenColour(red, green, blue, all(-slack <= share <= 1 + slack for share in shares))


def _cubed(part: float) -> float:
    return part**3 if part > _BEND else 3 * _BEND**2 * (part - 4 / 29)


def _curved(share: float) -> float:
    if share <= constant("screen-dark"):
        return constant("screen-dark-slope") * share
    offset = constant("screen-offset")
    return float((1 + offset) * share ** (1 / constant("screen-power")) - offset)


@cache
def _white() -> Three:
    return _upright("white")


def _upright(name: str) -> Three:
    """X, Y, Z of a chromaticity at Y = 1."""
    x, y = constant(f"screen-{name}-x"), constant(f"screen-{name}-y")
    return x / y, 1.0, (1 - x - y) / y


def _linear(light: Three) -> Three:
    """Shares of the screen's red, green and blue that make a light."""
    whole = _solved(_white())
    return _three(part / full for part, full in zip(_solved(light), whole, strict=True))


def _solved(light: Three) -> Three:
    """How much of each of the three lights, each at Y = 1, adds up to a light (Cramer's rule)."""
    columns = _columns()
    below = _volume(*columns)
    return _three(
        _volume(*(light if k == at else column for k, column in enumerate(columns))) / below
        for at in range(3)
    )


@cache
def _columns() -> tuple[Three, Three, Three]:
    return _upright("red"), _upright("green"), _upright("blue")


def _volume(a: Three, b: Three, c: Three) -> float:
    return (
        a[0] * (b[1] * c[2] - b[2] * c[1])
        - b[0] * (a[1] * c[2] - a[2] * c[1])
        + c[0] * (a[1] * b[2] - a[2] * b[1])
    )


def _three(parts: Iterable[float]) -> Three:
    first, second, third = parts
    return first, second, third
