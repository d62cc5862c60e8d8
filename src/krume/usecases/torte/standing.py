"""Whether a torte holds: its creams judged by what lies on them, in sentences."""

from dataclasses import replace

from krume.base import Infeasible, Interval, NotFoundError, as_text
from krume.build import ComponentFormula, Crush, Standing, StandingLayer, Torte, standing
from krume.design import Formula, balance
from krume.pantry import ingredient
from krume.usecases.torte.build import TorteMade, parts_of
from krume.usecases.torte.standing_result import StandingPart, StandingResult

_FIRM, _UNKNOWN = "firm enough", "not known"
_DECIDES = {
    "weight": "under what lies on it",
    "slice": "in a cut slice",
    "edge": "at its own free side",
    "hang": "where it clings to the side",
}
_CAUTION = (
    "Judged by a range for creams of its kind; no bowl of yours was measured. Chill before you "
    "stack, and try one slice before the day."
)


def standing_of(made: TorteMade) -> StandingResult | None:
    """How a torte that was built stands; None where it cannot be built."""
    if isinstance(made.torte, Infeasible):
        return None
    parts = {name: _with_gelatine(part, made) for name, part in parts_of(made.formulas).items()}
    found = standing(_without_chocolate(made.torte, made), parts)
    return StandingResult(
        verdict=found.verdict,
        warm_verdict=found.warm_verdict,
        warm_c=found.warm_c,
        parts=tuple(_part(each, found) for each in found.layers),
        crush=found.crush,
        lines=tuple(_lines(found, is_tiered=bool(made.torte.tiers))),
        caution=_CAUTION,
    )


def _without_chocolate(torte: Torte, made: TorteMade) -> Torte:
    """The torte in which set chocolate is no cream to be judged; its weight stays."""
    hard = {name for name, read in made.formulas.items() if _is_chocolate(read.formula)}
    layers = tuple(
        replace(layer, role="decoration") if layer.of in hard else layer for layer in torte.layers
    )
    return replace(torte, layers=layers) if hard else torte


def _is_chocolate(formula: Formula) -> bool:
    """Whether nothing but chocolate is in it."""
    keys = [line.ingredient for line in formula.lines]
    return bool(keys) and all(_role(key) == "chocolate" for key in keys)


def _role(key: str | None) -> str:
    try:
        return "" if key is None else ingredient(key).role
    except NotFoundError:
        return ""


def _with_gelatine(part: ComponentFormula, made: TorteMade) -> ComponentFormula:
    """A jelly's gelatine is by the litre; a cream in which no line is gelatine holds none."""
    formula = made.formulas[part.name].formula
    if part.gelatine_g_kg is not None:
        return part
    litre = balance(formula).figures.get("gelatine_g_l")
    per_l = litre.best if isinstance(litre, Interval) else litre
    if per_l is not None and part.density_g_ml:
        return replace(part, gelatine_g_kg=per_l / part.density_g_ml)
    words = [f"{line.ingredient or ''} {line.name}".casefold() for line in formula.lines]
    known = all(line.ingredient is not None for line in formula.lines)
    has = any("gelatin" in each for each in words)
    return part if has or not known else replace(part, gelatine_g_kg=0.0)


def _part(each: StandingLayer, found: Standing) -> StandingPart:
    return StandingPart(
        line=each.line,
        name=each.name,
        of=each.of,
        verdict=each.verdict,
        warm_verdict=each.warm_verdict,
        above_g=each.above_g,
        load_pa=each.load_pa,
        decides=None if each.decides is None else _DECIDES[each.decides],
        need_pa=each.need_pa,
        low_pa=_two(each.low_pa),
        high_pa=_two(each.high_pa),
        warm_low_pa=_two(each.warm_low_pa),
        warm_high_pa=_two(each.warm_high_pa),
        status=each.status,
        source=each.source,
        text=standing_sentence(each, found.warm_c),
    )


def standing_sentence(each: StandingLayer, warm_c: float) -> str:
    """One cream in a sentence, with its numbers."""
    if each.verdict == _UNKNOWN or each.decides is None:
        return f"{each.name}: not known, for {each.why_not}."
    carries = f"It carries {as_text(each.above_g or 0.0, 0)} g. " if each.above_g else ""
    span = f"{_pa(each.low_pa)} to {_pa(each.high_pa)} Pa ({each.status})"
    needs = f"It needs {_pa(each.need_pa)} Pa {_DECIDES[each.decides]}; set, its kind has {span}"
    return f"{each.name}: {each.verdict}. {carries}{needs}. {_warm(each, warm_c)}"


def _warm(each: StandingLayer, warm_c: float) -> str:
    span = f"{_pa(each.warm_low_pa)} to {_pa(each.warm_high_pa)} Pa"
    return f"At {as_text(warm_c, 0)} °C: {each.warm_verdict} ({span})."


def _two(value: float | None) -> float | None:
    """A yield stress to two figures: no range of it is known better."""
    return None if value is None else float(f"{value:.2g}")


def _pa(value: float | None) -> str:
    two = _two(value)
    return "not known" if two is None else as_text(two, 0)


def _lines(found: Standing, *, is_tiered: bool) -> list[str]:
    if found.verdict is None:
        return ["Nothing soft is in it."]
    said = [
        f"In the cold: {found.verdict}. At {as_text(found.warm_c, 0)} °C: {found.warm_verdict}."
    ]
    if found.verdict != _FIRM or found.warm_verdict != _FIRM:
        said.append(_advice(found))
    if is_tiered:
        said.append("Each tier is judged as standing on supports and a board of its own.")
    if found.crush is not None:
        said.append(_crush(found.crush))
    return said


def _advice(found: Standing) -> str:
    """What helps, by what is short."""
    if found.verdict == "too soft":
        return "A lower stack, a thinner layer of that cream or more gelatine, then chill and try."
    if found.verdict == _UNKNOWN:
        return "What is not known is treated as soft: leave the ring on until it is served."
    if found.verdict == "borderline":
        return "Leave the ring or a paper collar on until it is served, and cut it cold."
    return "Keep it cold until it is cut: in a warm room it is another torte."


def _crush(crush: Crush) -> str:
    span = f"{as_text(crush.least_mm, 1)} to {as_text(crush.most_mm, 1)} mm"
    return (
        f"The lowest sponge gives by {span} of its {as_text(crush.height_mm, 1)} mm, by the "
        "published stiffness of wheat sponges."
    )
