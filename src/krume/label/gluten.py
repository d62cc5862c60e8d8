"""Gluten of a mixture by mass balance: the side of the limit, never a claim."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from krume.base import OutOfRangeError
from krume.properties import constants


@dataclass(frozen=True, slots=True)
class GlutenPart:
    """Mass of one part and its gluten; None is unknown. Exact, so that a limit is met exactly."""

    mass_g: Fraction
    gluten_ppm: Fraction | None


@dataclass(frozen=True, slots=True)
class GlutenMix:
    """Gluten of the mixture and on which side of each limit it lies; None where unknown."""

    gluten_ppm: float | None
    us_gluten_free: bool | None
    eu_gluten_free: bool | None


def gluten_mix(parts: Sequence[GlutenPart]) -> GlutenMix:
    """Gluten of a mixture from its parts.

    c = sum m_i c_i / sum m_i

    Parameters
    ----------
    parts : mass and gluten of each part; gluten None is unknown

    Returns
    -------
    gluten [mg/kg] and the side of both limits; all None as soon as a part is unknown

    Raises
    ------
    OutOfRangeError : no part, a mass that is not above 0, or gluten outside 0 to 1 000 000

    Valid for
    ---------
    Arithmetic that supports a decision. A part never tested, or mixed unevenly, is not shown.

    Source
    ------
    `us-21-cfr-101-91` (below 20 ppm), `eu-828-2014` (no more than 20 mg/kg)

    Examples
    --------
    >>> gluten_mix([GlutenPart(Fraction(100), Fraction(20))])
    GlutenMix(gluten_ppm=20.0, us_gluten_free=False, eu_gluten_free=True)
    """
    _check(parts)
    known = [part.gluten_ppm for part in parts if part.gluten_ppm is not None]
    if len(known) < len(parts):
        return GlutenMix(None, None, None)
    total = sum(part.mass_g for part in parts)
    mixed = sum(part.mass_g * c for part, c in zip(parts, known, strict=True)) / total
    limits = constants("declared.csv")
    return GlutenMix(
        gluten_ppm=float(mixed),
        us_gluten_free=bool(mixed < Fraction(limits["us-gluten-below"])),
        eu_gluten_free=bool(mixed <= Fraction(limits["eu-gluten-most"])),
    )


def _check(parts: Sequence[GlutenPart]) -> None:
    if not parts:
        raise OutOfRangeError(
            "No part was given. Type mass:ppm for each, for example 250:10,40:?",
            field="parts", got="nothing", want="mass:ppm, one or more",
        )  # fmt: skip
    for part in parts:
        if part.mass_g <= 0:
            raise OutOfRangeError(
                f"A part of {float(part.mass_g):g} g is none. Type a mass above 0.",
                field="parts", got=f"{float(part.mass_g):g}", want="more than 0 g",
            )  # fmt: skip
        if part.gluten_ppm is not None and not 0 <= part.gluten_ppm <= 1_000_000:
            raise OutOfRangeError(
                f"{float(part.gluten_ppm):g} ppm of gluten is not possible. Type 0 to 1000000, or "
                "? for unknown.",
                field="parts", got=f"{float(part.gluten_ppm):g}", want="0 to 1000000, or ?",
            )  # fmt: skip
