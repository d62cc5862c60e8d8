"""All lines wrong together: which of them brings how much of the scatter of the figures."""

from dataclasses import dataclass
from typing import TYPE_CHECKING

from krume.design.balance import balance
from krume.design.bands import Band
from krume.design.formula import Formula
from krume.design.matters.slope import Slope, judged, settled, with_masses
from krume.design.matters.twice import LineMatter, Matters

if TYPE_CHECKING:
    from krume.design.matters.variance import Array

# The balance itself is asked at so many points where all lines are off at once.
_WITNESSES = 8
_DRAWS = 4096


@dataclass(frozen=True, slots=True)
class Share:
    """A line's share of the scatter of all figures, each counted in half-widths of its band.

    `alone_share` is what it brings alone, `total_share` with all it acts together with; errors are
    standard errors of the sampling. `main` is the figure it scatters most.
    """

    matter: LineMatter
    alone_share: float
    alone_error: float
    total_share: float
    total_error: float
    main: Band


@dataclass(frozen=True, slots=True)
class Scatter:
    """How far a figure scatters: standard deviation in half-widths, share of draws outside."""

    band: Band
    sd_effect: float
    outside_pct: float


@dataclass(frozen=True, slots=True)
class Ranking:
    """Shares of all lines, largest first.

    `miss_effect` is the largest distance, in half-widths, between the balance and what was sampled
    in its place, at points where all lines are off at once.
    """

    shares: tuple[Share, ...]
    figures: tuple[Scatter, ...]
    runs: int
    repeats: int
    miss_effect: float


@dataclass(frozen=True, slots=True)
class _Sampled:
    """The figures as sums over sums: values, slopes and bends (lines, figures), and the doubts."""

    bands: tuple[Band, ...]
    value: "Array"
    half: "Array"
    per_g: "Array"
    bend: "Array"
    mass_g: "Array"
    reach_g: "Array"

    def off_g(self, points: "Array") -> "Array":
        """Grams too much (n, lines) at points (n, lines, 2): step and usual slip, both uniform."""
        import numpy as np

        off: Array = np.maximum(((2 * points - 1) * self.reach_g).sum(axis=2), -self.mass_g)
        return off

    def figures(self, off_g: "Array") -> "Array":
        """Figures (n, figures): f + sum(slope t) / (1 + sum(bend t)), all lines at once."""
        import numpy as np

        whole = np.maximum(1 + off_g @ self.bend, 1e-6)
        moved_to: Array = self.value + (off_g @ self.per_g) / whole
        return moved_to


def ranking(
    formula: Formula, found: Matters, *, seed: int, count: int = 256, repeats: int = 8
) -> Ranking | None:
    """Shares of variance of all lines; None where no figure with a band moves.

    Each line is off by a uniform part of one step and a uniform part of its usual slip (eggs by
    count: their spread), each line on its own.
    """
    from krume.design.matters.variance import indices

    sampled = _sampled(found)
    if sampled is None:
        return None
    result = indices(
        lambda points: sampled.figures(sampled.off_g(points)) / sampled.half,
        inputs=len(found.lines),
        axes=2,
        count=count,
        repeats=repeats,
        seed=seed,
    )
    shares = [
        Share(
            matter,
            float(result.first_of_all[at]),
            float(result.first_error[at]),
            float(result.total_of_all[at]),
            float(result.total_error[at]),
            sampled.bands[int((result.total[at] * result.variance).argmax())],
        )
        for at, matter in enumerate(found.lines)
    ]
    shares.sort(key=lambda each: (-round(each.total_share, 9), each.matter.doubt.line))
    return Ranking(
        tuple(shares),
        _scatter(sampled, seed=seed),
        result.runs,
        repeats,
        _miss(settled(formula), found, sampled, seed=seed),
    )


def _sampled(found: Matters) -> _Sampled | None:
    import numpy as np

    known = {effect.band: effect.value for each in found.lines for effect in each.effects}
    if not known:
        return None
    bands = tuple(known)
    slopes = [{effect.band: effect.slope for effect in each.effects} for each in found.lines]
    reach = [(each.doubt.step_g or 0.0, each.doubt.wide_g) for each in found.lines]
    return _Sampled(
        bands=bands,
        value=np.array([known[band] for band in bands]),
        half=np.array([(band.high - band.low) / 2 for band in bands]),
        per_g=np.array([[_of(along, band)[0] for band in bands] for along in slopes]),
        bend=np.array([[_of(along, band)[1] for band in bands] for along in slopes]),
        mass_g=np.array([each.doubt.mass_g for each in found.lines]),
        reach_g=np.array(reach),
    )


def _of(along: dict[Band, Slope], band: Band) -> tuple[float, float]:
    slope = along.get(band)
    return (0.0, 0.0) if slope is None else (slope.per_g, slope.bend_per_g)


def _scatter(sampled: _Sampled, *, seed: int) -> tuple[Scatter, ...]:
    import numpy as np

    rng = np.random.default_rng(seed)
    values = sampled.figures(sampled.off_g(rng.random((_DRAWS, len(sampled.mass_g), 2))))
    spread = values.std(axis=0) / sampled.half
    low, high = (np.array([getattr(b, end) for b in sampled.bands]) for end in ("low", "high"))
    outside = 100 * ((values < low) | (values > high)).mean(axis=0)
    return tuple(
        Scatter(band, float(sd), float(out))
        for band, sd, out in zip(sampled.bands, spread, outside, strict=True)
    )


def _miss(formula: Formula, found: Matters, sampled: _Sampled, *, seed: int) -> float:
    """Largest distance to the balance itself, asked at a few points with all lines off."""
    import numpy as np

    rng = np.random.default_rng(seed)
    off = sampled.off_g(rng.random((_WITNESSES, len(sampled.mass_g), 2)))
    taken = sampled.figures(off)
    worst = 0.0
    for point, figures in zip(off, taken, strict=True):
        masses = {
            each.doubt.line: each.doubt.mass_g + float(grams)
            for each, grams in zip(found.lines, point, strict=True)
        }
        real = judged(balance(with_masses(formula, masses)))
        gaps = [
            abs(real[band] - float(figure)) / ((band.high - band.low) / 2)
            for band, figure in zip(sampled.bands, figures, strict=True)
            if band in real
        ]
        worst = max((worst, *gaps))
    return worst
