"""A formula in its tin and an oven: how long, by which rule, and how sure."""

from dataclasses import dataclass, replace

from krume.bake import (
    Bake,
    Batter,
    Oven,
    Prediction,
    batter_of,
    depth_cm,
    dial,
    figures,
    is_core_capped,
    predict,
)
from krume.base import Infeasible, Interval, Notice, OutOfRangeError, Problem, Read
from krume.design import Formula, OvenLine, balance, family, read_oven
from krume.properties import constant
from krume.size import Tin, area_cm2, read_tin, tin_text
from krume.usecases.asking.answer import Answer, Asked, clash_problems
from krume.usecases.asking.dial_minutes import beside_asked, fan_notices
from krume.usecases.asking.read import FormulaRead, formula_of
from krume.usecases.asking.sources import line_sources, practice_notice, source_keys
from krume.usecases.bake.around import (
    around_notices,
    around_of,
    around_problems,
    told_around,
)
from krume.usecases.bake.lines import bake_lines
from krume.usecases.bake.out_of_range import out_of_range
from krume.usecases.bake.result import BakeDial, BakeResult, curve_of, rules_of
from krume.usecases.bake.unbaked import unbaked
from krume.usecases.bake.wish import BakeWish
from krume.usecases.formula.size import density_of
from krume.usecases.own_oven.minutes import oven_notices, own_minutes
from krume.usecases.own_oven.own_oven import KnownOven, known_oven, oven_named, oven_unknown
from krume.usecases.own_oven.rows import cake_of


@dataclass(frozen=True, slots=True)
class _Place:
    """Tin and oven of a bake, or what is asked about them."""

    tin: Tin | None
    oven: OvenLine | None
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]


@dataclass(frozen=True, slots=True)
class BakeGround:
    """What a bake stands on: what is known before the oven, and the case where it is whole.

    `batter`, `tin` and `oven` are None together, where something is asked or forbidden first.
    `known` is the person's own oven, `cake` what bakes of this cake go by in it, `name` what the
    formula was asked by.
    """

    bare: Answer[BakeResult]
    formula: Formula
    batter: Batter | None = None
    tin: Tin | None = None
    oven: Oven | None = None
    notices: tuple[Notice, ...] = ()
    known: KnownOven | None = None
    cake: str = ""
    name: str = ""


def bake_formula(name: str, wish: BakeWish, asked: Asked) -> Answer[BakeResult]:
    """Minutes of a formula in a tin and an oven, or what is asked, or the limit that forbids it."""
    ground = bake_ground(name, wish, asked)
    if ground.batter is None or ground.tin is None or ground.oven is None:
        return ground.bare
    answer = predict(ground.batter, ground.tin, ground.oven)
    if isinstance(answer, Infeasible):
        return barred(ground, answer)
    answer, said = _in_own_oven(ground, answer)
    result = _result(ground.bare.result, ground.batter, answer)
    if wish.lines:
        lines = bake_lines(ground.formula, ground.tin, ground.oven, asked)
        result = replace(result, lines=lines)
    if wish.fan and not (ground.formula.oven and ground.formula.oven.fan):
        said = (*said, *fan_notices(ground.batter, ground.tin, ground.oven))
    notices = (*ground.bare.notices, *ground.notices, *said, *answer.notices)
    return replace(ground.bare, result=result, notices=notices)


def _in_own_oven(ground: BakeGround, answer: Prediction) -> tuple[Prediction, tuple[Notice, ...]]:
    """The minutes of a cake this oven has baked before, and what its bakes do to the doubt."""
    known, batter, tin, oven = ground.known, ground.batter, ground.tin, ground.oven
    if known is None or batter is None or tin is None or oven is None:
        return answer, ()
    own = own_minutes(known, ground.cake, batter, oven, answer)
    said = oven_notices(known, own, answer, (batter, tin, oven))
    if own is None:
        return answer, said
    return replace(answer, minutes=own.minutes, check_from_min=int(own.minutes.low)), said


def bake_ground(name: str, wish: BakeWish, asked: Asked) -> BakeGround:
    """A formula in a tin and an oven, before anything is baked."""
    wish = replace(wish, oven_name=asked.answer_for("--oven-name") or wish.oven_name)
    found = formula_of(name, asked)
    place = _place(found.formula, wish, asked)
    bare = _bare(found, place, wish, asked)
    if refusals := unbaked(found.formula, wish):
        problems = (*found.problems, *refusals)
        known = replace(bare.result, dial=None)
        refused = replace(bare, result=known, problems=problems, is_possible=bool(found.problems))
        return BakeGround(refused, found.formula)
    if bare.problems or place.tin is None or place.oven is None:
        return BakeGround(bare, found.formula)
    batter = _batter(found)
    if batter.value is None:
        return BakeGround(replace(bare, problems=batter.problems), found.formula)
    known = replace(bare.result, depth_cm=round(depth_cm(batter.value, place.tin), 2))
    bare, oven = replace(bare, result=known), _oven(place.oven, wish)
    own = _known(oven, wish, asked)
    oven = own.oven(oven)
    if asks := out_of_range(found.formula, batter.value, place.tin, oven):
        return BakeGround(replace(bare, problems=asks), found.formula)
    return BakeGround(
        bare, found.formula, batter.value, place.tin, oven, batter.notices, own,
        cake_of(found.source.name, place.tin) if _is_own(found) else "", name,
    )  # fmt: skip


def _known(oven: Oven, wish: BakeWish, asked: Asked) -> KnownOven:
    """The person's own oven at the place the bake is wished for."""
    return known_oven(asked, wish.oven_name, fan=oven.fan, rack=oven.around.rack)


def _is_own(found: FormulaRead) -> bool:
    """Whether a formula is one of the book's: a file of the same name is another cake."""
    path = found.source.path
    return found.source.kind == "formula" or (path is not None and path.parent.name == "formulas")


def barred(ground: BakeGround, answer: Infeasible) -> Answer[BakeResult]:
    """The answer where a limit forbids it: the limit named, no minutes."""
    known = replace(ground.bare.result, dial=None)
    problems = clash_problems(answer, _limited_by(ground, answer.clashes[0].name))
    return replace(ground.bare, result=known, problems=problems, is_possible=False)


def _limited_by(ground: BakeGround, limit: str) -> str:
    """The option that a limit is about."""
    if limit == "tin height":
        return "--tin"
    in_water = ground.oven is not None and ground.oven.around.jacket == "water"
    return "--jacket" if limit == "time" and in_water else "--oven"


def own_prediction(found: FormulaRead, asked: Asked) -> Prediction | None:
    """What the model says in the formula's own tin and oven, for its sheets; None is nothing."""
    place = _place(found.formula, BakeWish(), asked)
    bare = _bare(found, place, BakeWish(), asked)
    stops = (*unbaked(found.formula, BakeWish()), *bare.problems)
    if stops or place.tin is None or place.oven is None:
        return None
    batter = _batter(found).value
    if batter is None:
        return None
    plain = _oven(place.oven, BakeWish())
    known = _known(plain, BakeWish(), asked)
    oven = known.oven(plain)
    answer = predict(batter, place.tin, oven)
    if isinstance(answer, Infeasible):
        return None
    cake = cake_of(found.source.name, place.tin) if _is_own(found) else ""
    own = own_minutes(known, cake, batter, oven, answer)
    if own is None:
        return answer
    return replace(answer, minutes=own.minutes, check_from_min=int(own.minutes.low))


def _batter(found: FormulaRead) -> Read[Batter | None]:
    density = density_of(found.formula)
    return batter_of(
        found.formula,
        family=balance(found.formula).family,
        density_g_ml=density.value_g_ml or 0.0,
        density_measured=density.status == "measured",
    )


def _place(formula: Formula, wish: BakeWish, asked: Asked) -> _Place:
    tin, problems, notices = _tin(formula, wish, asked)
    oven, more, said = _oven_line(formula, wish, asked)
    return _Place(tin, oven, (*problems, *more, *_altitude(wish)), (*notices, *said))


def _oven_line(
    formula: Formula, wish: BakeWish, asked: Asked
) -> tuple[OvenLine | None, tuple[Problem, ...], tuple[Notice, ...]]:
    typed = asked.answer_for("--oven") or wish.oven
    if typed is None:
        oven = formula.oven
        is_known = oven is not None and oven.temp_c is not None
        return oven, () if is_known else (_no_oven(),), ()
    read = read_oven(typed)
    return read.value, tuple(replace(p, where="--oven") for p in read.problems), read.notices


def _tin(
    formula: Formula, wish: BakeWish, asked: Asked
) -> tuple[Tin | None, tuple[Problem, ...], tuple[Notice, ...]]:
    typed = asked.answer_for("--tin") or wish.tin
    if typed is None:
        problems = () if formula.tin is not None else (_no_tin(),)
        return formula.tin, problems, ()
    read = read_tin(typed, where="--tin")
    tin = read.value
    if tin is not None and area_cm2(tin) is None:
        return None, (*read.problems, _no_tin()), read.notices
    return tin, read.problems, read.notices


def _no_tin() -> Problem:
    ask = 'No tin is named. Type it by its inside: "round 20 x 7 cm", "sheet 13x9x1 in".'
    return Problem("tin-missing", "--tin", "", ask)


def _no_oven() -> Problem:
    ask = 'No oven temperature is named. Type it with its unit: "170 C", "325 F", "fan 150 C".'
    return Problem("oven-missing", "--oven", "", ask)


def _altitude(wish: BakeWish) -> tuple[Problem, ...]:
    lowest, highest = constant("altitude-least"), constant("kitchen-altitude-most")
    if lowest <= wish.altitude_m <= highest:
        return ()
    ask = f"Altitudes from {lowest:.0f} to {highest:.0f} m are known; type one in metres."
    return (Problem("altitude-out-of-range", "--altitude", f"{wish.altitude_m:g}", ask),)


def _oven(line: OvenLine, wish: BakeWish) -> Oven:
    return Oven(
        temp_c=line.temp_c or 0.0,
        fan=wish.fan or bool(line.fan),
        altitude_m=wish.altitude_m,
        around=around_of(wish),
    )


def _bare(found: FormulaRead, place: _Place, wish: BakeWish, asked: Asked) -> Answer[BakeResult]:
    """What is known before anything is baked."""
    formula, density = found.formula, density_of(found.formula)
    open_ = beside_asked(place.problems, found.problems)
    problems = (*found.problems, *open_, *_density_problem(density.value_g_ml, found.problems))
    problems = (*problems, *_stages(place.oven), *_oven_named(wish, asked))
    oven_c = None if place.oven is None else place.oven.temp_c
    problems = (*problems, *around_problems(wish, place.tin, oven_c))
    result = BakeResult(
        name=formula.name,
        tin=None if place.tin is None else tin_text(place.tin),
        oven_c=None if place.oven is None else place.oven.temp_c,
        fan=wish.fan or bool(place.oven and place.oven.fan),
        altitude_m=wish.altitude_m,
        minutes=None, check_from_min=None, done_by=None, rules=None,
        core_c=formula.core_c,
        core_from=None if formula.core_c is None else "the formula's own",
        family_core_c=_family_core(formula),
        boiling_c=None, depth_cm=None,
        density_g_ml=density.value_g_ml, density_status=density.status,
        loss_pct=None,
        planned_loss_pct=_planned_loss_pct(formula),
        own_minutes=formula.bake_min,
        curve=None,
        dial=_dial(place.oven, wish, asked),
        discrepancy=None, draws=None, stalled=None,
        around=told_around(wish),
    )  # fmt: skip
    keys = source_keys(line_sources(formula), {f.source for f in figures().values()})
    practice = practice_notice((density.status,)) if density.value_g_ml is not None else ()
    texts = (*formula.steps, "" if place.oven is None else place.oven.read)
    said = around_notices(wish, balance(formula).family, texts)
    return Answer(result, problems, (*found.notices, *place.notices, *said, *practice), keys)


def _density_problem(density: float | None, asked: tuple[Problem, ...]) -> tuple[Problem, ...]:
    if density is not None or any(problem.code == "density-unclear" for problem in asked):
        return ()
    ask = (
        "The batter's density is not known, nor its family. Add a line: Density: 0.48 g/ml "
        "(weigh a level cup of batter), or Family: separated."
    )
    return (Problem("density-missing", "after line 1", "", ask),)


def _oven_named(wish: BakeWish, asked: Asked) -> tuple[Problem, ...]:
    if wish.oven_name is None:
        return ()
    if oven_named(wish.oven_name, asked) is not None:
        return ()
    return (oven_unknown(wish.oven_name, asked),)


def _stages(oven: OvenLine | None) -> tuple[Problem, ...]:
    if oven is None or not oven.stages:
        return ()
    ask = "Two temperatures one after the other are not worked out. Name one with --oven."
    return (Problem("oven-stages", "--oven", oven.read, ask),)


def _family_core(formula: Formula) -> Interval | None:
    key = balance(formula).family
    if key is None:
        return None
    low, high = family(key).core_low_c, family(key).core_high_c
    return None if low is None or high is None else Interval(low, (low + high) / 2, high)


def _planned_loss_pct(formula: Formula) -> float | None:
    total = balance(formula).total_g
    baked = None if formula.baked is None else formula.baked.mass_g
    if baked is None or not isinstance(total, float) or total <= 0 or baked > total:
        return None
    return round(100 * (total - baked) / total, 1)


def _dial(line: OvenLine | None, wish: BakeWish, asked: Asked) -> BakeDial | None:
    if line is None or line.temp_c is None:
        return None
    offset = _known(_oven(line, wish), wish, asked).at(line.temp_c).offset_c
    if offset is None:
        return None
    try:
        found = dial(line.temp_c, offset_k=offset)
    except OutOfRangeError:
        # No dial is set to it; what limits the oven itself says why there is no bake.
        return None
    return BakeDial(round(found.set_c, 1), round(found.set_f, 1), round(offset, 1))


def _result(known: BakeResult, batter: Batter, found: Prediction) -> BakeResult:
    return replace(
        with_bake(known, batter, found.bake),
        minutes=Interval(found.minutes.low, round(found.minutes.best, 1), found.minutes.high),
        check_from_min=found.check_from_min,
        loss_pct=_rounded(found.loss_pct),
        discrepancy=found.discrepancy,
        draws=found.draws,
        stalled=found.stalled,
    )


def with_bake(known: BakeResult, batter: Batter, bake: Bake) -> BakeResult:
    """What is known with the likeliest bake in it; its minutes wait for their doubt."""
    whose = "the formula's own" if batter.core_c is not None else "5 K below boiling"
    if batter.core_c is not None and abs(bake.core_c - batter.core_c) > 0.05:
        capped = is_core_capped(bake.core_c, bake.boiling_c)
        whose += ", kept below boiling" if capped else ", moved with the boiling point"
    return replace(
        known,
        done_by=bake.done_by,
        rules=rules_of(bake),
        core_c=round(bake.core_c, 1),
        core_from=whose,
        boiling_c=round(bake.boiling_c, 1),
        curve=curve_of(bake),
    )


def _rounded(span: Interval) -> Interval:
    return Interval(round(span.low, 1), round(span.best, 1), round(span.high, 1))
