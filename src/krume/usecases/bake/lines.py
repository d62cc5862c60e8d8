"""What each weighing does to a bake, as `bake` answers it."""

from krume.bake import LineBake, LinesBake, Oven, Rival, lines_bake
from krume.base import as_text
from krume.design import Doubt, Formula, balance, doubts, weigh_out
from krume.size import Tin
from krume.usecases.asking.answer import Asked
from krume.usecases.bake.result import BakeLine, BakeLines, BakeRival
from krume.usecases.formula.matters import SEED
from krume.usecases.formula.size import density_of, scale_step_g

_OVEN = {"oven": "the oven", "density": "the batter's density"}


def bake_lines(formula: Formula, tin: Tin, oven: Oven, asked: Asked) -> BakeLines | None:
    """Minutes, heights and loss that a usual slip of each line moves; None without minutes."""
    density = density_of(formula)
    held = doubts(formula, weigh_out(formula, scale_g=scale_step_g(asked)))
    found = lines_bake(
        formula,
        held,
        tin,
        oven,
        family=balance(formula).family,
        density_g_ml=density.value_g_ml or 0.0,
        density_measured=density.status == "measured",
        seed=SEED,
    )
    if found is None:
        return None
    by_line = {each.line: each for each in held}
    ratio = _baked_to_depth(formula, found)
    return BakeLines(
        lines=tuple(_line(formula, each, by_line[each.line], ratio) for each in found.lines),
        rivals=tuple(_rival(each) for each in found.rivals),
        noise_min=round(found.noise_min, 3),
        sd_min=round(found.sd_min, 3),
        miss_min=round(found.miss_min, 3),
        runs=found.runs,
        seed=SEED,
        text=_told(formula, found),
    )


def _baked_to_depth(formula: Formula, found: LinesBake) -> float | None:
    height = None if formula.baked is None else formula.baked.height_mm
    return None if height is None else height / found.depth_mm


def _line(formula: Formula, found: LineBake, doubt: Doubt, ratio: float | None) -> BakeLine:
    line = formula.lines[found.line]
    return BakeLine(
        line=line.number,
        name=line.name,
        part=line.part,
        slip_g=round(found.slip_g, 4),
        slip_from=doubt.slip_from,
        step_g=doubt.step_g,
        slip_min=round(found.slip_min, 3),
        step_min=None if found.step_min is None else round(found.step_min, 4),
        depth_mm=round(found.slip_depth_mm, 3),
        baked_mm=None if ratio is None else round(found.slip_depth_mm * ratio, 3),
        loss_pct=round(found.slip_loss_pct, 3),
        share=round(found.share, 4),
        shows=found.shows,
    )


def _rival(found: Rival) -> BakeRival:
    return BakeRival(found.key, round(found.half_width, 2), found.unit, round(found.minutes, 2))


def _told(formula: Formula, found: LinesBake) -> str:
    """Which line moves the minutes most, and what moves them more than any line does."""
    first = found.lines[0] if found.lines else None
    if first is None or not first.shows:
        start = "No line moves the minutes by more than the model's own steps"
        return f"{start}, {as_text(found.noise_min, 2)} min. {_rivals(found.rivals)}."
    most = f"{as_text(first.slip_g, 2)} g of {formula.lines[first.line].name}"
    start = f"Of all lines {most} move the minutes most, by {_minutes(first.slip_min)}"
    more = tuple(each for each in found.rivals if abs(each.minutes) > abs(first.slip_min))
    if not more:
        return f"{start}, and neither oven nor density by as much."
    return f"{start}. No line does as much as this: {_rivals(more)}."


def _rivals(rivals: tuple[Rival, ...]) -> str:
    ordered = sorted(rivals, key=lambda each: -abs(each.minutes))
    return "; ".join(
        f"{_OVEN[each.key]} \N{PLUS-MINUS SIGN} {as_text(each.half_width, 1)} {each.unit} "
        f"by {_minutes(each.minutes)}"
        for each in ordered
    )


def _minutes(value: float) -> str:
    return f"{as_text(abs(value), 1 if abs(value) >= 1 else 2)} min"
