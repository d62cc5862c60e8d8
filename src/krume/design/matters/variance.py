"""Shares of variance: how much of a result's scatter each input brings, alone and with others."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
from scipy.stats import qmc

Array = np.ndarray[tuple[int, ...], np.dtype[np.float64]]
Model = Callable[[Array], Array]


@dataclass(frozen=True, slots=True)
class Indices:
    """First-order and total indices: (inputs, outputs), and over all outputs together (inputs,).

    Errors are standard errors over the repeats. `variance` and `mean` are those of each output
    (outputs,). `runs` is how often the model was evaluated.
    """

    first: Array
    total: Array
    first_of_all: Array
    total_of_all: Array
    first_error: Array
    total_error: Array
    mean: Array
    variance: Array
    runs: int


def indices(
    model: Model, *, inputs: int, axes: int = 1, count: int = 256, repeats: int = 8, seed: int
) -> Indices:
    r"""First-order and total indices of a model of independent inputs.

    S_i = mean(f_B (f_ABi - f_A)) / V, T_i = mean((f_A - f_ABi)^2) / (2 V), where A and B are two
    designs and ABi is A with input i of B; over all outputs both sides are summed first.

    Parameters
    ----------
    model : outputs (n, outputs) of points (n, inputs, axes), each number uniform in 0..1
    inputs : how many inputs
    axes : how many uniform numbers make one input
    count : points of each design, a power of 2
    repeats : independent scrambles of the design; their scatter is the sampling error
    seed : of the scrambles; equal seeds give equal indices

    Returns
    -------
    means over the repeats, with their standard errors

    Valid for
    ---------
    Inputs that do not depend on one another. An output that does not vary has indices of 0.

    Source
    ------
    `saltelli-2010`, its recommended estimators; `lamboni-2011` for all outputs together
    """
    rng = np.random.default_rng(seed)
    parts = [_once(model, (inputs, axes), count, rng) for _ in range(repeats)]
    first, total = (np.stack([part[at] for part in parts]) for at in (0, 1))
    variance = np.stack([part[2] for part in parts])
    of_all = [_over(part.sum(axis=2), variance.sum(axis=1)[:, None]) for part in (first, total)]
    errors = [each.std(axis=0, ddof=1) / np.sqrt(repeats) for each in of_all]
    return Indices(
        first=_over(first.mean(axis=0), variance.mean(axis=0)),
        total=_over(total.mean(axis=0), variance.mean(axis=0)),
        first_of_all=of_all[0].mean(axis=0),
        total_of_all=of_all[1].mean(axis=0),
        first_error=errors[0],
        total_error=errors[1],
        mean=np.stack([part[3] for part in parts]).mean(axis=0),
        variance=variance.mean(axis=0),
        runs=repeats * count * (inputs + 2),
    )


def _once(
    model: Model, shape: tuple[int, int], count: int, rng: np.random.Generator
) -> tuple[Array, Array, Array, Array]:
    """Both parts of the variance (inputs, outputs), the variance and the mean (outputs,)."""
    inputs, axes = shape
    sampler = qmc.Sobol(2 * inputs * axes, scramble=True, rng=rng)
    points = sampler.random(count).reshape(count, 2, inputs, axes)
    a, b = points[:, 0], points[:, 1]
    at_a, at_b = model(a), model(b)
    both = np.concatenate([at_a, at_b])
    mean, variance = both.mean(axis=0), both.var(axis=0)
    first, total = [], []
    for each in range(inputs):
        mixed = a.copy()
        mixed[:, each] = b[:, each]
        at_mixed = model(mixed)
        first.append(((at_b - mean) * (at_mixed - at_a)).mean(axis=0))
        total.append(((at_a - at_mixed) ** 2).mean(axis=0) / 2)
    return np.stack(first), np.stack(total), variance, mean


def _over(part: Array, whole: Array) -> Array:
    """A share of something; of nothing it is 0."""
    shares: Array = np.divide(part, whole, out=np.zeros_like(part), where=whole > 0)
    return shares
