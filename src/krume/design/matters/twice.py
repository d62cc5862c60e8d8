"""The lines to weigh twice: those whose usual slip moves a figure far in its band."""

from dataclasses import dataclass

from krume.base import as_text
from krume.design.balance import balance
from krume.design.bands import Band
from krume.design.formula import Formula, Line
from krume.design.matters.doubt import Doubt, doubts, figure
from krume.design.matters.slope import Slope, judged, settled, slopes
from krume.design.weighing import Weighing

_NOISE = 1e-9
# The balance is read twice a line, and takes longer the more lines there are.
_MOST_LINES = 100
_TOO_MANY = f"More than {_MOST_LINES} lines: which weighing matters is not worked out."
_UNJUDGED = "No figure with a band is known: which weighing matters cannot be said."


@dataclass(frozen=True, slots=True)
class Effect:
    """What one line's weighing does to one figure: change in its unit, effect in half-widths.

    Both are the larger of too much and too little. `leaves` says that a usual slip takes a figure
    that is inside its band out of it. None stands where no value is left to compare.
    """

    band: Band
    value: float
    slope: Slope
    step_change: float | None
    step_effect: float | None
    slip_change: float | None
    slip_effect: float | None
    leaves: bool


@dataclass(frozen=True, slots=True)
class LineMatter:
    """A line with its doubt and what it does to each figure, the largest effect first."""

    line: Line
    doubt: Doubt
    effects: tuple[Effect, ...]

    @property
    def score(self) -> float:
        """Effect of a usual slip on the figure it moves most, in half-widths."""
        return (self.effects[0].slip_effect or 0.0) if self.effects else 0.0

    @property
    def step_score(self) -> float:
        """Effect of one step of the scale on the figure it moves most, in half-widths."""
        return max((effect.step_effect or 0.0 for effect in self.effects), default=0.0)


@dataclass(frozen=True, slots=True)
class Twice:
    """A line to weigh twice (`mark` is `twice`), or eggs to weigh and not to count (`weigh`)."""

    matter: LineMatter
    mark: str
    text: str

    @property
    def effect(self) -> Effect:
        """The figure it moves most."""
        return self.matter.effects[0]


@dataclass(frozen=True, slots=True)
class Matters:
    """All lines, those that matter most first, and which of them to weigh twice.

    `text` names them in a sentence or two; it says so where there is none, and why.
    """

    lines: tuple[LineMatter, ...]
    twice: tuple[Twice, ...]
    text: str


def matters(formula: Formula, weighing: Weighing) -> Matters:
    """What a usual slip of each line does to the figures of the balance that have a band."""
    if len(formula.lines) > _MOST_LINES:
        return Matters((), (), _TOO_MANY)
    formula = settled(formula)
    base = judged(balance(formula))
    if not base:
        return Matters((), (), _UNJUDGED)
    found = [_matter(formula, doubt, base) for doubt in doubts(formula, weighing)]
    found.sort(key=lambda each: (-round(each.score, 9), each.doubt.line))
    chosen = [each for each in found if each.score >= figure("least-effect") - _NOISE]
    twice = tuple(_twice(each) for each in chosen[: int(figure("most-lines"))])
    return Matters(tuple(found), twice, " ".join((_told(twice), *_left_out(formula))))


def _matter(formula: Formula, doubt: Doubt, base: dict[Band, float]) -> LineMatter:
    along = slopes(formula, doubt.line, base)
    effects = [
        _effect(band, value, along[band], doubt) for band, value in base.items() if band in along
    ]
    effects.sort(key=lambda each: -round(each.slip_effect or 0.0, 9))
    moving = tuple(each for each in effects if each.slope.per_g != 0.0)
    return LineMatter(formula.lines[doubt.line], doubt, moving)


def _effect(band: Band, value: float, slope: Slope, doubt: Doubt) -> Effect:
    half = (band.high - band.low) / 2
    step = None if doubt.step_g is None else _most(slope, doubt.step_g, doubt.mass_g)
    slip = _most(slope, doubt.slip_g, doubt.mass_g)
    return Effect(
        band=band,
        value=value,
        slope=slope,
        step_change=step,
        step_effect=None if step is None else step / half,
        slip_change=slip,
        slip_effect=None if slip is None else slip / half,
        leaves=_leaves(band, value, slope, doubt),
    )


def _changes(slope: Slope, grams: float, mass_g: float) -> tuple[float, ...]:
    """Changes by too much and by too little; no more can be missing than there is."""
    both = (slope.change(grams), slope.change(-min(grams, mass_g)))
    return tuple(change for change in both if change is not None)


def _most(slope: Slope, grams: float, mass_g: float) -> float | None:
    return max((abs(change) for change in _changes(slope, grams, mass_g)), default=None)


def _leaves(band: Band, value: float, slope: Slope, doubt: Doubt) -> bool:
    def is_inside(other: float) -> bool:
        return band.low - _NOISE <= other <= band.high + _NOISE

    changes = _changes(slope, doubt.slip_g, doubt.mass_g)
    return is_inside(value) and not all(is_inside(value + change) for change in changes)


def _twice(found: LineMatter) -> Twice:
    is_eggs = found.doubt.slip_from == "eggs"
    mark = "weigh" if is_eggs else "twice"
    effect, name, off = found.effects[0], found.line.name, as_text(found.doubt.slip_g, 2)
    if is_eggs:
        start = f"By count the {name} may be {off} g off, which moves"
    else:
        step = "One step of " if found.doubt.slip_from == "step" else ""
        start = f"{step}{off} g of {name} too much or too little moves"
    usual = f"usual is {as_text(effect.band.low)} to {as_text(effect.band.high)}{_unit(effect)}"
    out = " It can then lie outside." if effect.leaves else ""
    return Twice(found, mark, f"{start} {_by(effect)}; {usual}.{out}")


def _by(effect: Effect) -> str:
    word = " points" if effect.band.unit == "%" else _unit(effect)
    return f"{effect.band.label.lower()} by {rounded(effect.slip_change or 0.0)}{word}"


def _unit(effect: Effect) -> str:
    words = {"ratio": "", "g/cm2": " g/cm²"}
    return words.get(effect.band.unit, f" {effect.band.unit}")


def rounded(value: float) -> str:
    """A change in two significant digits.

    >>> rounded(0.142857), rounded(12.7), rounded(0.03)
    ('0.14', '13', '0.03')
    """
    text = f"{value:.2g}"
    return as_text(float(text), 6)


def _left_out(formula: Formula) -> tuple[str, ...]:
    names = ", ".join(line.name for line in formula.lines if line.mass_g is None)
    return (f"Not judged: {names}, no mass is known.",) if names else ()


def _told(twice: tuple[Twice, ...]) -> str:
    if not twice:
        return "No line needs weighing twice: a usual slip moves no figure far in its band."
    again = ", ".join(
        dict.fromkeys(each.matter.line.name for each in twice if each.mark == "twice")
    )
    eggs = [each for each in twice if each.mark == "weigh"]
    said = [f"Weigh twice: {again}."] if again else []
    if eggs:
        spread = as_text(sum(each.matter.doubt.slip_g for each in eggs), 0)
        said.append(f"Weigh the eggs (by count ± {spread} g).")
    return " ".join(said)
