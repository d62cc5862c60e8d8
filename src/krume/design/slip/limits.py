"""The bands of a formula as linear limits on what is still to add to a bowl."""

from collections.abc import Sequence

from krume.design.bands import Band
from krume.design.ratios import OF_FLOUR, best_of
from krume.design.shares import counted_as
from krume.design.slip.judging import Judge, figure_of
from krume.design.slip.split import Limit


def band_limits(
    judge: Judge, base_g: Sequence[float | None], open_lines: Sequence[int], *, step_g: float
) -> tuple[Limit, ...] | None:
    """Limits on whole steps added to the open lines, the other grams as given.

    Each band low <= 100 p / b <= high is linear: p - b high / 100 <= 0. A figure that the plan
    has outside its band may stay as far outside. None where a line's share in a figure is unknown.
    """
    counted = [_classes(judge, n) for n in range(len(base_g))]
    if any(each is None for each in counted):
        return None
    found: list[Limit] = []
    for band in judge.limits:
        sides = _sides(judge, band)
        if sides is None:
            continue
        part, basis, scale = sides
        weights = _weights(counted, part), _weights(counted, *basis)
        if any(weight is None for weights_of in weights for weight in weights_of):
            return None
        found += _of_band(judge, band, base_g, open_lines, weights, scale, step_g)
    return tuple(found)


def _classes(judge: Judge, line: int) -> dict[str, float | None] | None:
    counted = counted_as(judge.slip.lines[line])
    return None if counted is None else {each.name: each.factor for each in counted}


def _weights(counted: list[dict[str, float | None] | None], *names: str) -> list[float | None]:
    out: list[float | None] = []
    for classes in counted:
        values = [(classes or {}).get(name, 0.0) for name in names]
        out.append(None if any(v is None for v in values) else sum(v or 0.0 for v in values))
    return out


def _sides(judge: Judge, band: Band) -> tuple[str, tuple[str, ...], float] | None:
    """What a band divides by what, and its scale; None where it is no such figure."""
    if best_of(figure_of(judge.plan, band.quantity)) is None:
        return None
    if band.quantity == "sugar_per_egg":
        return "sugar", ("egg_white" if band.basis == "white" else "egg",), 1.0
    if band.quantity not in judge.plan.percent or judge.plan.basis == "none":
        return None
    with_nut = judge.plan.basis == "flour and nut" and band.quantity not in OF_FLOUR
    return band.quantity, ("flour", "nut") if with_nut else ("flour",), 100.0


def _of_band(
    judge: Judge,
    band: Band,
    base_g: Sequence[float | None],
    open_lines: Sequence[int],
    weights: tuple[list[float | None], list[float | None]],
    scale: float,
    step_g: float,
) -> list[Limit]:
    value = best_of(figure_of(judge.plan, band.quantity)) or 0.0
    found = []
    for edge, sign in ((min(band.low, value), -1.0), (max(band.high, value), 1.0)):
        each = [
            sign * ((p or 0.0) - (b or 0.0) * edge / scale) for p, b in zip(*weights, strict=True)
        ]
        if any(each[n] for n in open_lines):
            most = -sum(w * (g or 0.0) for w, g in zip(each, base_g, strict=True)) / step_g
            found.append(Limit(tuple(round(each[n], 12) for n in open_lines), most))
    return found
