"""The colour of a top as the model's browning goes on: a path of L*a*b*, told by words."""

from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from krume.evidence import column, load, optional
from krume.properties import Lab, within

_COLUMNS = (
    column("key", "key"),
    column("word"),
    column("delta_e", "number"),
    column("lightness", "number"),
    column("red", "number"),
    column("yellow", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class CrustStep:
    """One colour on the path of browning: the model's measure, the word, the colour."""

    key: str
    word: str
    delta_e: float
    colour: Lab
    status: str


@cache
def crust_steps() -> tuple[CrustStep, ...]:
    """The path of browning from the batter on, palest first."""
    found = (
        CrustStep(
            row.text("key"),
            row.text("word"),
            row.number_of("delta_e"),
            Lab(row.number_of("lightness"), row.number_of("red"), row.number_of("yellow")),
            row.text("status"),
        )
        for row in load("crust_colours.csv", _COLUMNS)
    )
    return tuple(sorted(found, key=lambda step: step.delta_e))


def crust_colour(delta_e: float) -> Lab:
    """Colour of a top at a measure of browning, straight between the steps of the path.

    Lab = Lab_k + (Lab_k+1 - Lab_k) (dE - dE_k) / (dE_k+1 - dE_k)

    Parameters
    ----------
    delta_e : the bake model's browning, a clock fitted to words and no measured difference [1]

    Returns
    -------
    L, a, b [CIE 1976 units]

    Raises
    ------
    OutOfRangeError : delta_e is outside the path

    Valid for
    ---------
    Light sponges. The path is assumed: cocoa, brown sugar and dark flours begin elsewhere.

    Source
    ------
    `krume`, the rows of crust_colours.csv

    Examples
    --------
    >>> crust_colour(3.5)
    Lab(lightness=72.0, red=9.0, yellow=36.5)
    """
    steps = crust_steps()
    within("delta_e", delta_e, steps[0].delta_e, steps[-1].delta_e)
    before, after = next((a, b) for a, b in pairwise(steps) if delta_e <= b.delta_e)
    part = (delta_e - before.delta_e) / (after.delta_e - before.delta_e)
    one, other = before.colour, after.colour
    return Lab(
        one.lightness + (other.lightness - one.lightness) * part,
        one.red + (other.red - one.red) * part,
        one.yellow + (other.yellow - one.yellow) * part,
    )


def crust_word(delta_e: float) -> str:
    """The word of the nearest step of the path.

    >>> crust_word(5.9)
    'golden'
    """
    return min(crust_steps(), key=lambda step: abs(step.delta_e - delta_e)).word
