"""The factor from one tin to others: by volume, and by area at the same depth."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from krume.size.geometry import area_cm2, volume_ml
from krume.size.tin import Tin


@dataclass(frozen=True, slots=True)
class Factors:
    """What to multiply a formula by when its tin changes; None where a size is not known."""

    by_volume: float | None
    by_area: float | None


def tin_factor(own: Tin, target: Tin | Sequence[Tin]) -> Factors:
    """Factors from a formula's own tin to another, or to several filled to one depth.

    by area: A2 / A1, the same depth in straight tins · by volume: V2 / V1, the same fill

    Parameters
    ----------
    own : the tin the formula was written for
    target : the tin or tins it is to be baked in

    Returns
    -------
    both factors; None where a tin's depth or width is not known

    Valid for
    ---------
    Plain tins. The area is the floor's: for flared tins at one depth see `fit`.

    Source
    ------
    `mathematics`, plane and solid geometry

    Examples
    --------
    >>> small, large = (Tin("", "round", diameter_cm=d) for d in (20.0, 24.0))
    >>> round(tin_factor(small, large).by_area, 4)
    1.44
    """
    targets = (target,) if isinstance(target, Tin) else tuple(target)
    return Factors(_ratio(volume_ml, own, targets), _ratio(area_cm2, own, targets))


def _ratio(
    measure: Callable[[Tin], float | None], own: Tin, targets: Sequence[Tin]
) -> float | None:
    before, after = measure(own), total_of(measure, targets)
    return None if before is None or after is None else after / before


def total_of(measure: Callable[[Tin], float | None], tins: Sequence[Tin]) -> float | None:
    """Sum of a measure over several tins; None as soon as one is not known."""
    parts = [measure(tin) for tin in tins]
    known = [part for part in parts if part is not None]
    return sum(known) if parts and len(known) == len(parts) else None
