"""A formula's percentages against the usual bands of its family."""

from dataclasses import dataclass

from krume.base import Interval
from krume.design import Balance, Finding, balance, bands
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.read import formula_of
from krume.usecases.asking.sources import line_sources, practice_notice, source_keys
from krume.usecases.formula.matters import CheckLine, CheckRanking, CheckTwice, Weighed, weighed
from krume.usecases.formula.own_formulas import CheckOwn, Own, own_formulas
from krume.usecases.formula.why_check import explain_balance, figures_of


@dataclass(frozen=True, slots=True)
class CheckFinding:
    """A figure outside its band, or near an edge; `change_g` brings it back inside."""

    code: str
    value: float | Interval
    low: float
    high: float
    unit: str
    status: str
    text: str
    change_g: float | None
    warns: bool


@dataclass(frozen=True, slots=True)
class CheckPerEgg:
    """The formula for one egg."""

    size: str
    basis: str
    egg_g: float
    flour_g: float | Interval | None
    sugar_g: float | Interval | None


@dataclass(frozen=True, slots=True)
class CheckRatios:
    """Figures that are no percent of the basis."""

    sugar_per_egg: float | Interval | None
    nut_share_pct: float | Interval | None


@dataclass(frozen=True, slots=True)
class CheckBand:
    """The usual range of one figure, with its value here; None is not known."""

    key: str
    label: str
    value: float | Interval | None
    low: float
    high: float
    warn_high: float | None
    unit: str
    basis: str
    status: str
    source: str
    own: CheckOwn


@dataclass(frozen=True, slots=True)
class CheckResult:
    """The balance of a formula: `basis` is what 100 is, `percent` is of it.

    `weigh_twice` are the lines whose weighing matters most, `weigh_twice_text` says so in words,
    or that there is none; `lines` and `ranking` are the whole table, null where it is not asked.
    """

    name: str | None
    family: str | None
    family_label: str
    family_basis: str
    basis: str
    basis_g: float | Interval | None
    total_g: float | Interval | None
    flour_g: float | Interval | None
    percent: dict[str, float | Interval | None]
    ratios: CheckRatios
    figures: dict[str, float | Interval | None]
    per_egg: CheckPerEgg | None
    findings: tuple[CheckFinding, ...]
    near_edge: tuple[CheckFinding, ...]
    bands: tuple[CheckBand, ...]
    weigh_twice: tuple[CheckTwice, ...]
    weigh_twice_text: str
    lines: tuple[CheckLine, ...] | None
    ranking: CheckRanking | None


def check_formula(
    name: str, asked: Asked, *, explain: str | None = None, lines: bool = False
) -> Answer[CheckResult]:
    """Balance a formula against the bands of its family; `lines` asks for every line's effect."""
    found = formula_of(name, asked)
    figures = balance(found.formula)
    scale = weighed(found.formula, asked, table=lines)
    judged = () if figures.family is None else bands(figures.family)
    own = own_formulas(found, figures, asked)
    answer = Answer(
        _result(found.formula.name, figures, scale, own),
        found.problems,
        (
            *found.notices,
            *figures.notices,
            *scale.notices,
            *own.notices(),
            *practice_notice(band.status for band in judged),
        ),
        source_keys(line_sources(found.formula), figures.sources),
    )
    key = asked.answer_for("--explain") or explain
    if key is None:
        return answer
    return answer.explained(explain_balance(key, found.formula, figures))


def _result(name: str | None, found: Balance, scale: Weighed, own: Own) -> CheckResult:
    per_egg = found.per_egg
    return CheckResult(
        name=name,
        family=found.family,
        family_label=found.family_label,
        family_basis=found.family_basis,
        basis=found.basis,
        basis_g=found.basis_g,
        total_g=found.total_g,
        flour_g=found.flour_g,
        percent=found.percent,
        ratios=CheckRatios(found.sugar_per_egg, found.nut_share_pct),
        figures=found.figures,
        per_egg=None
        if per_egg is None
        else CheckPerEgg(
            per_egg.size, per_egg.basis, per_egg.egg_g, per_egg.flour_g, per_egg.sugar_g
        ),
        findings=tuple(_finding(each) for each in found.findings),
        near_edge=tuple(_finding(each) for each in found.near),
        bands=_bands(found, own),
        weigh_twice=scale.twice,
        weigh_twice_text=scale.text,
        lines=scale.lines,
        ranking=scale.ranking,
    )


def _finding(found: Finding) -> CheckFinding:
    return CheckFinding(
        found.code,
        found.value,
        found.low,
        found.high,
        found.unit,
        found.status,
        found.text,
        found.change_g,
        found.warns,
    )


def _bands(found: Balance, own: Own) -> tuple[CheckBand, ...]:
    if found.family is None:
        return ()
    figures = figures_of(found)
    return tuple(
        CheckBand(
            key=band.quantity,
            label=band.label,
            value=figures.get(band.quantity),
            low=band.low,
            high=band.high,
            warn_high=band.warn_high,
            unit=band.unit,
            basis=band.basis,
            status=band.status,
            source=band.source,
            own=own.beside(band),
        )
        for band in bands(found.family)
    )
