"""Which of the things not known of a bake makes most of its doubt, and what would narrow it."""

from dataclasses import dataclass

import numpy as np
from scipy.special import ndtri

from krume.bake.batter import Batter, Oven
from krume.bake.draws import Draws
from krume.bake.grid import Array
from krume.bake.parameters import value
from krume.bake.prediction import drawn, likeliest, simulate_many
from krume.base import Infeasible, InputError
from krume.size import Tin

_LEAST = 128
_STATED, _BELOW_BOILING = "core-stated", "core-below-boiling"
# Doubts that a baker meets as one thing stand together.
_FIELDS = {
    "oven-heat": ("heat", "film"),
    "oven-temperature": ("oven_k",),
    "tin": ("tin",),
    "density": ("density",),
    "mass": ("mass",),
    "batter-temperature": ("start_k",),
    _STATED: ("core_shift",),
    _BELOW_BOILING: ("core_margin",),
    "set": ("set_share",),
    "colour": ("colour",),
    "crust": ("wet_skin", "crust_conduction", "crust_diffusion", "oven_vapour"),
    "crumb": ("vapour_conduction", "gas_retention"),
    "model": ("factor",),
}
_TEXTS = {
    "oven-heat": "How strongly this oven heats. Time one bake in it, with the core at its end.",
    "oven-temperature": "How hot this oven really is. Put a thermometer in the middle of it.",
    "tin": "How this tin takes the heat: its shine, its wall. Time a bake in this very tin.",
    "density": "How light the batter is. Weigh a level cup of it.",
    "mass": "How much batter is in the tin. Weigh the tin empty and filled.",
    "batter-temperature": "How warm the batter goes in. Put the probe in the bowl.",
    _STATED: "How exactly the core is read. Hold the probe in boiling water once.",
    _BELOW_BOILING: "What core is done. Write it in the formula once a probe has shown it.",
    "set": "When the crumb is set. Press the top and use the skewer.",
    "colour": "How brown is brown enough. Say pale, golden or brown, and look at the top.",
    "crust": "How the top dries. No kitchen can measure it; timed bakes of this cake take it in.",
    "crumb": "How heat goes through the foam. No kitchen can measure it; timed bakes take it in.",
    "model": "What the model leaves out. Time this very cake: its own bakes take it in.",
}
# What is said once the usual way has narrowed it, by the row that it was before.
_NARROWED = {
    "oven-heat": (
        "spread-heat",
        "How strongly this oven heats. Its timed bakes told some of it; time another cake in it.",
    ),
    "oven-temperature": (
        "spread-oven",
        "How hot this oven really is. Its thermometer told some of it; read it at this dial too.",
    ),
}
_NARROWER = 0.9


@dataclass(frozen=True, slots=True)
class Unknown:
    """One thing not known: its part of the scatter of the minutes (0 to 1), and what narrows it.

    `share_error` is the standard error of `share` with so many draws.
    """

    key: str
    text: str
    share: float
    share_error: float


def unknowns(
    batter: Batter, tin: Tin, oven: Oven, *, count: int = 256, seed: int = 7
) -> tuple[Unknown, ...]:
    """What makes the doubt of these minutes, largest first; empty where there are no minutes."""
    if count < _LEAST:
        message = f"{count} draws are too few for shares. Give at least {_LEAST}."
        raise InputError(message, field="count", got=str(count), want=f"{_LEAST} or more")
    if isinstance(likeliest(batter, tin, oven), Infeasible):
        return ()
    draws = drawn(batter, tin, oven, count=count, seed=seed)
    return unknowns_of(batter, draws, simulate_many(batter, tin, oven, draws).minutes)


def unknowns_of(batter: Batter, draws: Draws, minutes: Array) -> tuple[Unknown, ...]:
    """The same from draws already baked; `minutes` as they come, the nominal bake first."""
    columns = {
        field: getattr(draws, field)[1:]
        for key, fields in _FIELDS.items()
        for field in fields
        if key != (_BELOW_BOILING if batter.core_c is not None else _STATED)
        and np.ptp(getattr(draws, field)[1:]) > 0
    }
    share, noise = first_order(np.stack(list(columns.values()), axis=1), minutes[1:])
    place = {field: at for at, field in enumerate(columns)}
    found = []
    for key, fields in _FIELDS.items():
        held = [place[field] for field in fields if field in place]
        if held:
            most = float(np.sqrt((noise[held] ** 2).sum()))
            found.append(Unknown(key, _text(key, draws), float(share[held].sum()), most))
    return tuple(sorted(found, key=lambda each: (-each.share, each.key)))


def _text(key: str, draws: Draws) -> str:
    """What is not known and what narrows it; another way where the first was taken."""
    if key not in _NARROWED:
        return _TEXTS[key]
    row, beyond = _NARROWED[key]
    drawn_as = {"oven-heat": np.log(draws.heat[1:]), "oven-temperature": draws.oven_k[1:]}[key]
    return beyond if float(drawn_as.std()) < _NARROWER * value(row) else _TEXTS[key]


def first_order(inputs: Array, outcome: Array) -> tuple[Array, Array]:
    """First-order shares of the variance of `outcome`, and their standard errors.

    Inputs and outcome are taken as normal scores of their ranks, so an outcome that never comes is
    only the last one. y = sum over i of b_i z_i + c_i (z_i^2 - 1) / sqrt 2 + rest;
    share_i = (b_i^2 + c_i^2) / (sum of all b^2 + c^2 + variance of the rest), each square less what
    the rest alone makes of it, and never below 0.

    Parameters
    ----------
    inputs : (draws, inputs), independent of one another
    outcome : (draws,), infinite where it never comes

    Returns
    -------
    share (inputs,) and its standard error (inputs,) [no unit]

    Valid for
    ---------
    Outcomes that rise or fall with each input; what inputs do only together is in no share.

    Source
    ------
    `sobol-1993`, first-order index
    """
    z = np.stack([_scores(column) for column in inputs.T], axis=1)
    terms = np.concatenate([z, (z * z - (z * z).mean(axis=0)) / np.sqrt(2)], axis=1)
    y = _scores(outcome)
    fitted, *_ = np.linalg.lstsq(terms, y, rcond=None)
    rest = y - terms @ fitted
    variance = float(rest @ rest) / (len(y) - terms.shape[1])
    doubt = (variance * np.diag(np.linalg.inv(terms.T @ terms))).reshape(2, -1)
    square = (fitted**2).reshape(2, -1)
    known = np.maximum(square - doubt, 0).sum(axis=0)
    whole = known.sum() + variance
    noise: Array = np.sqrt((4 * square * doubt + 2 * doubt**2).sum(axis=0)) / whole
    return known / whole, noise


def _scores(values: Array) -> Array:
    """Normal scores of the ranks: spread like a normal, whatever the values are."""
    _, place, times = np.unique(values, return_inverse=True, return_counts=True)
    rank = times.cumsum() - (times - 1) / 2
    scores: Array = ndtri((rank[place] - 0.5) / len(values))
    return scores
