"""The blend of F2 without teff, and a search of every blend on the grid that needs no solver."""

from collections.abc import Iterator, Mapping, Sequence
from math import sqrt

from krume.usecases import BlendResult, BlendWish

FLOURS = (
    "white rice flour, buckwheat flour, millet flour, potato starch, maize starch, sweet rice flour"
)
LIMITS = (
    "starch 30..50",
    "sweet rice 9 g",
    "rice >= 25 g",
    "buckwheat <= 16 g",
    "potato starch 24..40 g",
    "maize starch 4..8 g",
)
WITHOUT_TEFF = BlendWish(FLOURS, match="F2", without=("teff",), limits=LIMITS)


def distance_of(blend: BlendResult, masses_g: Mapping[str, float]) -> float:
    """How far grams by key are from the target, by the composition that was answered."""
    total_g = sum(masses_g.values())
    return sqrt(
        sum(
            (sum(g * (blend.composition[k][p] or 0) for k, g in masses_g.items()) / total_g - want)
            ** 2
            for p, want in blend.target.items()
            if want is not None
        )
    )


def every_blend(count: int, steps: int) -> Iterator[tuple[int, ...]]:
    """Every way to share so many steps among so many flours."""
    if count == 1:
        yield (steps,)
        return
    for first in range(steps + 1):
        for rest in every_blend(count - 1, steps - first):
            yield (first, *rest)


def keeps(blend: BlendResult, keys: Sequence[str], masses_g: Sequence[float]) -> bool:
    """Whether grams keep every limit as it was answered back."""
    by_key = dict(zip(keys, masses_g, strict=True))
    total_g = sum(masses_g)
    for limit in blend.limits:
        if limit.kind != "share":
            continue
        part_g = sum(by_key.get(key, 0.0) for key in limit.members)
        ends = ((limit.low_g, limit.high_g, part_g), (limit.low_pct, limit.high_pct,
                100 * part_g / total_g))  # fmt: skip
        for low, high, value in ends:
            if low is not None and value < low - 1e-9:
                return False
            if high is not None and value > high + 1e-9:
                return False
    return True


def nearest(blend: BlendResult, keys: Sequence[str]) -> float:
    """The least distance of any blend on the grid, found by trying them all."""
    steps = round((blend.total_g or 0) / blend.step_g)
    tried = ([step * blend.step_g for step in shared] for shared in every_blend(len(keys), steps))
    return min(
        distance_of(blend, dict(zip(keys, masses, strict=True)))
        for masses in tried
        if keeps(blend, keys, masses)
    )
