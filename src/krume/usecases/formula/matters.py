"""Which weighing matters, as `check` answers it."""

from dataclasses import dataclass

from krume.base import Notice
from krume.design import (
    Effect,
    Formula,
    LineMatter,
    Matters,
    Ranking,
    Share,
    Twice,
    matters,
    ranking,
    weigh_out,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.formula.size import scale_step_g

SEED = 7
"""Of the draws of a ranking: the same question gets the same answer."""


@dataclass(frozen=True, slots=True)
class CheckTwice:
    """A line to weigh twice, or eggs to weigh and not to count (`mark`: `twice` or `weigh`).

    Effects are in half-widths of the band of `figure`, 1 being the way from its middle to its
    edge. `slip_from` says what a usual slip is: a `step` of the scale, a `share` of the line, the
    `spread` of a mass that is not settled, or of the `eggs` by count; those have no step (null).
    """

    line: int
    name: str
    part: str | None
    mark: str
    step_g: float | None
    step_effect: float | None
    slip_g: float
    slip_from: str
    slip_effect: float
    figure: str
    value: float
    low: float
    high: float
    unit: str
    text: str


@dataclass(frozen=True, slots=True)
class CheckEffect:
    """What one line does to one figure; `per_g` is the slope where the formula stands."""

    figure: str
    label: str
    unit: str
    per_g: float
    step_change: float | None
    step_effect: float | None
    slip_change: float | None
    slip_effect: float | None
    leaves_band: bool


@dataclass(frozen=True, slots=True)
class CheckLine:
    """A line and all it does; shares are of the scatter with every line off at once."""

    line: int
    name: str
    part: str | None
    mass_g: float
    step_g: float | None
    slip_g: float
    slip_from: str
    step_effect: float
    slip_effect: float
    figure: str | None
    alone_share: float | None
    alone_share_error: float | None
    total_share: float | None
    total_share_error: float | None
    effects: tuple[CheckEffect, ...]


@dataclass(frozen=True, slots=True)
class CheckScatter:
    """How far a figure scatters with every line off at once, and how often it lies outside."""

    figure: str
    label: str
    sd_effect: float
    outside_pct: float


@dataclass(frozen=True, slots=True)
class CheckRanking:
    """How the shares were sampled.

    `miss_effect` is the largest distance to the balance, in half-widths.
    """

    figures: tuple[CheckScatter, ...]
    runs: int
    repeats: int
    seed: int
    miss_effect: float


@dataclass(frozen=True, slots=True)
class Weighed:
    """What `check` says of the weighing: the lines to weigh twice, and the table if it is asked."""

    twice: tuple[CheckTwice, ...]
    text: str
    lines: tuple[CheckLine, ...] | None
    ranking: CheckRanking | None
    notices: tuple[Notice, ...]


def weighed(formula: Formula, asked: Asked, *, table: bool) -> Weighed:
    """Which weighing of a formula matters on the studio's scales."""
    weighing = weigh_out(formula, scale_g=scale_step_g(asked))
    found = matters(formula, weighing)
    named = {each.matter.line.read for each in found.twice}
    notices = tuple(n for n in weighing.notices if n.code == "small-amount" and n.where in named)
    twice = tuple(_twice(each) for each in found.twice)
    if not table:
        return Weighed(twice, found.text, None, None, notices)
    ranked = ranking(formula, found, seed=SEED)
    return Weighed(twice, found.text, _lines(found, ranked), _ranking(ranked), notices)


def _twice(found: Twice) -> CheckTwice:
    line, doubt, effect = found.matter.line, found.matter.doubt, found.effect
    return CheckTwice(
        line=line.number,
        name=line.name,
        part=line.part,
        mark=found.mark,
        step_g=doubt.step_g,
        step_effect=_short(effect.step_effect),
        slip_g=round(doubt.slip_g, 4),
        slip_from=doubt.slip_from,
        slip_effect=round(found.matter.score, 4),
        figure=effect.band.quantity,
        value=effect.value,
        low=effect.band.low,
        high=effect.band.high,
        unit=effect.band.unit,
        text=found.text,
    )


def _lines(found: Matters, ranked: Ranking | None) -> tuple[CheckLine, ...]:
    shares = {} if ranked is None else {each.matter.doubt.line: each for each in ranked.shares}
    return tuple(_line(each, shares.get(each.doubt.line)) for each in found.lines)


def _line(found: LineMatter, share: Share | None) -> CheckLine:
    return CheckLine(
        line=found.line.number,
        name=found.line.name,
        part=found.line.part,
        mass_g=found.doubt.mass_g,
        step_g=found.doubt.step_g,
        slip_g=round(found.doubt.slip_g, 4),
        slip_from=found.doubt.slip_from,
        step_effect=round(found.step_score, 4),
        slip_effect=round(found.score, 4),
        figure=found.effects[0].band.quantity if found.effects else None,
        alone_share=None if share is None else _short(share.alone_share),
        alone_share_error=None if share is None else _short(share.alone_error),
        total_share=None if share is None else _short(share.total_share),
        total_share_error=None if share is None else _short(share.total_error),
        effects=tuple(_effect(each) for each in found.effects),
    )


def _effect(found: Effect) -> CheckEffect:
    return CheckEffect(
        figure=found.band.quantity,
        label=found.band.label,
        unit=found.band.unit,
        per_g=found.slope.per_g,
        step_change=found.step_change,
        step_effect=_short(found.step_effect),
        slip_change=found.slip_change,
        slip_effect=_short(found.slip_effect),
        leaves_band=found.leaves,
    )


def _ranking(ranked: Ranking | None) -> CheckRanking | None:
    if ranked is None:
        return None
    figures = tuple(
        CheckScatter(
            each.band.quantity,
            each.band.label,
            round(each.sd_effect, 4),
            round(each.outside_pct, 1),
        )
        for each in ranked.figures
    )
    return CheckRanking(figures, ranked.runs, ranked.repeats, SEED, ranked.miss_effect)


def _short(value: float | None) -> float | None:
    return None if value is None else round(value, 4)
