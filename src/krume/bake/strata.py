"""Even draws: one in each of so many equal strata, so that their quantiles settle sooner."""

import numpy as np
from scipy.special import ndtri

from krume.bake.grid import Array


def even_shares(count: int, rng: np.random.Generator) -> Array:
    """One number between 0 and 1 in the middle of each stratum, in any order (Latin hypercube)."""
    shares: Array = (rng.permutation(count) + 0.5) / max(count, 1)
    return shares


def even_normal(count: int, rng: np.random.Generator) -> Array:
    """The same as normal scores."""
    scores: Array = ndtri(even_shares(count, rng))
    return scores
