"""Gluten of the finished cake at most, by its papers: a warning of its own, never a claim."""

import math
from dataclasses import dataclass
from datetime import date
from fractions import Fraction

from krume.label.gate_records import worst_state
from krume.label.gluten import GlutenPart, gluten_mix
from krume.label.parts import lots_in_use
from krume.label.product import Product, Used
from krume.pantry import Lot, claim_rule, record_need, record_standings

FINISHED = "finished cake: "


@dataclass(frozen=True, slots=True)
class GateEstimate:
    """The sum over the papers; `most_ppm` is None while one of the goods is not known.

    `known_ppm` is what the known goods alone may bring, None without a finished mass.
    """

    most_ppm: float | None
    known_ppm: float | None


def gate_estimate(
    product: Product,
    lots: tuple[Lot, ...],
    chosen: frozenset[str],
    days: tuple[date, ...],
    market: str,
) -> GateEstimate:
    """Each record at its own upper figure, goods that need none at none, water baked out."""
    finished = product.finished_g
    if finished is None or not 0 < finished < math.inf:
        return GateEstimate(None, None)
    known, is_whole = Fraction(0), bool(product.used)
    for used in product.used:
        most = _most_of(used, lots_in_use(used, lots, chosen), days, market)
        if used.mass_g is None or most is None:
            is_whole = False
            continue
        known += Fraction(used.mass_g) * Fraction(most)
    mass = Fraction(finished)
    ppm = gluten_mix([GlutenPart(mass, known / mass)]).gluten_ppm
    return GateEstimate(ppm if is_whole else None, ppm)


def _most_of(
    used: Used, in_use: tuple[Lot, ...], days: tuple[date, ...], market: str
) -> float | None:
    """Highest figure of the records of these goods; goods that need none count as none."""
    needed = [x for x in in_use if record_need(used.name, used.key, lot=x).is_needed]
    if not needed:
        return None if not in_use and record_need(used.name, used.key).is_needed else 0.0
    good = [lot for lot in needed if worst_state(lot, used, days, market)[0] == "good"]
    figures = [_highest(lot, days, market) for lot in good]
    return max(figures) if len(figures) == len(needed) else None


def _highest(lot: Lot, days: tuple[date, ...], market: str) -> float:
    """The highest figure of the papers of a good lot that are in force on a judged day."""
    return max(
        standing.record.result.most_ppm
        for day in days
        for standing in record_standings(lot, on=day, market=market)
        if standing.state == "good" and standing.record.result is not None
    )


def finished_missing(most: float | None, market: str, *, is_tested: bool) -> str:
    """What the finished cake still needs; empty when the sum lies inside the limit.

    A test of the finished cake in force stands for the sum where that lies above the limit.
    """
    if most is None:
        return f"{FINISHED}its baked mass"
    mixed = gluten_mix([GlutenPart(Fraction(1), Fraction(most))])
    is_inside = mixed.us_gluten_free if claim_rule(market).side == "below" else mixed.eu_gluten_free
    if is_inside or is_tested:
        return ""
    return f"{FINISHED}a test of it, the estimate is {most:.1f} mg/kg"
