"""What a card says about tin, oven, eggs, minutes, core and cooling, and whose word it is."""

import re
from dataclasses import dataclass

from krume.base import Interval, NotFoundError, as_text, heat, heat_text
from krume.design import Family, Formula, Line, family
from krume.pantry import egg_size
from krume.publish.words import grams, listed, span
from krume.size import Tin

_COOL = re.compile(
    r"\b(?:cool|chill|hang|rack|turn (?:it )?(?:out|onto)|abkühlen|auskühlen|stürzen)",
    re.IGNORECASE,
)
_INCHES = re.compile(r"\d\s*(?:in\b|inch|zoll|[\"″])", re.IGNORECASE)
_WHISKED = re.compile(r"\b(?:whisk|whip|beat|\w*schlagen|schaumig)", re.IGNORECASE)
_BAKE = re.compile(r"\b(?:bake|backen)\b", re.IGNORECASE)
_AND = re.compile(r"(?<=[,;.])\s+")


@dataclass(frozen=True, slots=True)
class Fact:
    """A figure with its label, unit and doubt, as printed."""

    label: str
    figure: str
    unit: str = ""
    doubt: str = ""


def facts(
    formula: Formula, *, total_g: float, dial_c: float | None, units: str = "c"
) -> tuple[Fact, ...]:
    """Tin, oven and eggs; the batch and its density where there is neither tin nor oven.

    `units` says how temperatures are printed: `c`, `f` or `both`.
    """
    found = [_tin(formula.tin), _oven(formula, dial_c, units), _eggs(formula)]
    if formula.tin is None and formula.oven is None:
        found = [Fact("batch", grams(total_g), "g"), _density(formula), _eggs(formula)]
    return tuple(fact for fact in found if fact is not None)


def tin_text(tin: Tin) -> str:
    """A tin in figures: shape, Ø or length × width, height.

    >>> tin_text(Tin("round 20 x 7 cm", "round", diameter_cm=20, height_cm=7))
    'round Ø 20 × 7 cm'
    """
    sizes = _sizes(tin)
    if not sizes:
        return tin.read.strip() or tin.shape
    count = "" if tin.count == 1 else f"{tin.count} × "
    return f"{count}{tin.shape} {sizes} cm"


def _sizes(tin: Tin) -> str:
    height = () if tin.height_cm is None else (as_text(tin.height_cm, 1),)
    if tin.diameter_cm is not None:
        return "Ø " + " × ".join((as_text(tin.diameter_cm, 1), *height))
    if tin.length_cm is None:
        return ""
    width = tin.length_cm if tin.width_cm is None else tin.width_cm
    return " × ".join((as_text(tin.length_cm, 1), as_text(width, 1), *height))


def _tin(tin: Tin | None) -> Fact | None:
    if tin is None:
        return None
    bare = ", not greased" if "not greased" in tin.read.casefold() else ""
    hole = "" if tin.hole_cm is None else f", hole {as_text(tin.hole_cm, 1)} cm"
    typed = f" ({tin.read.strip()})" if _INCHES.search(tin.read) else ""
    return Fact(f"tin{typed}{hole}{bare}", tin_text(tin))


def _oven(formula: Formula, dial_c: float | None, units: str) -> Fact | None:
    oven = formula.oven
    if oven is None:
        return None
    fan = {True: ", fan", False: ", no fan", None: ""}[oven.fan]
    if oven.temp_c is None:
        return Fact(f"oven{fan}", oven.read.strip() or "not known")
    true = oven.temp_c if oven.temp_interval_c is None else oven.temp_interval_c
    stages = _stages(formula, units)
    if dial_c is None:
        return Fact(f"oven{fan}{stages}", *heat(true, units))
    return Fact(f"dial (oven {heat_text(true, units)}{fan}){stages}", *heat(dial_c, units))


def _stages(formula: Formula, units: str) -> str:
    stages = () if formula.oven is None else formula.oven.stages
    texts = (
        f", then {heat_text(temp, units)}"
        + ("" if after is None else f" after {as_text(after)} min")
        for temp, after in stages
    )
    return "".join(texts)


def _density(formula: Formula) -> Fact | None:
    if formula.density_g_ml is None:
        return None
    return Fact("density, planned", as_text(formula.density_g_ml, 2), "g/ml")


def _eggs(formula: Formula) -> Fact | None:
    lines = [line for line in formula.lines if line.basis == "egg"]
    if not lines:
        return None
    counts = listed(tuple(_count(line) for line in lines))
    sizes = {key for line in lines if (key := line.egg_size or formula.egg_size)}
    label = f"{counts} {listed(tuple(egg_size(key).label for key in sorted(sizes)))}".strip()
    masses = [line.mass_g for line in lines if line.mass_g is not None]
    if len(masses) < len(lines):
        return Fact(label, "size not known")
    doubt = _doubt(lines)
    return Fact(f"{label}, shelled", grams(sum(masses)), "g", doubt)


def _count(line: Line) -> str:
    word = {"yolk": "yolk", "white": "white"}.get(line.part or "", "egg")
    if not isinstance(line.amount, int | float):
        return f"{word}s"
    return f"{as_text(line.amount, 2)} {word}{'' if line.amount == 1 else 's'}"


def _doubt(lines: list[Line]) -> str:
    halves = [line.mass_interval_g.half_width for line in lines if line.mass_interval_g is not None]
    if len(halves) < len(lines):
        return ""
    return f"± {as_text(sum(halves), 0)}"


def _family(formula: Formula) -> Family | None:
    try:
        return None if formula.family is None else family(formula.family)
    except NotFoundError:
        return None


def clocks(formula: Formula, *, units: str = "c") -> tuple[Fact, ...]:
    """The clocks of the foam, the formula's own minutes, and the core."""
    found = _family(formula)
    out: list[Fact] = []
    if found is not None and found.whites_min is not None:
        out.append(Fact("use whites within", as_text(found.whites_min), "min"))
    if found is not None and found.batter_min is not None and _is_foam(formula, found):
        out.append(Fact("last whisk stroke to door", as_text(found.batter_min), "min at most"))
    if formula.bake_min is not None:
        out.append(Fact("first check, latest out", span(formula.bake_min), "min"))
    core = _core(formula, found, units)
    return tuple(out) if core is None else (*out, core)


def _is_foam(formula: Formula, found: Family) -> bool:
    return found.whites_min is not None or any(_WHISKED.search(step) for step in formula.steps)


def _core(formula: Formula, found: Family | None, units: str) -> Fact | None:
    if formula.core_c is not None:
        return Fact("core", *heat(formula.core_c, units, 1))
    if found is None or found.core_low_c is None or found.core_high_c is None:
        return None
    low, high = found.core_low_c, found.core_high_c
    return Fact("core, usual", *heat(Interval(low, (low + high) / 2, high), units, 1))


def origin(formula: Formula) -> str:
    """Whose word the minutes, the core and the clocks are."""
    found = _family(formula)
    own = [
        word
        for word, value in (("minutes", formula.bake_min), ("core", formula.core_c))
        if value is not None
    ]
    said = [f"{' and '.join(own)}: the formula's own"] if own else []
    if found is not None:
        usual = _usual(formula, found)
        said += [f"{usual}: {found.status} for a {found.label}"] if usual else []
    text = "; ".join(said)
    return f"{text[:1].upper()}{text[1:]}." if text else ""


def _usual(formula: Formula, found: Family) -> str:
    clocks_told = found.batter_min is not None and _is_foam(formula, found)
    core_told = formula.core_c is None and found.core_low_c is not None
    words = [w for w, told in (("clocks", clocks_told), ("core", core_told)) if told]
    return " and ".join(words)


def cooling(formula: Formula, *, by_model: str = "") -> str:
    """How it cools: the formula's own words, else the usual of its family; then the model's."""
    own, found = _own_cooling(formula), _family(formula)
    if own:
        said = f"Cooling, the formula's own: {own}"
    else:
        said = "" if found is None else f"Cooling, as usual: {found.cooling}"
    if not by_model:
        return said
    text = f"{by_model[:1].lower()}{by_model[1:]}"
    model = f"By the cooling model, compared with no cake: {text}."
    return f"{said} {model}" if said else model


def _own_cooling(formula: Formula) -> str:
    steps = formula.steps
    start = next((i for i, step in enumerate(steps) if _BAKE.search(step)), None)
    is_baked = formula.tin is not None or formula.oven is not None
    if start is None and is_baked:
        return ""
    for step in steps[start or 0 :]:
        if _COOL.search(step):
            return _from_cooling(step) if _BAKE.search(step) else step.strip()
    return ""


def _from_cooling(step: str) -> str:
    pieces = _AND.split(step.strip())
    first = next(i for i, piece in enumerate(pieces) if _COOL.search(piece))
    text = " ".join(pieces[first:])
    return f"{text[:1].upper()}{text[1:]}"
