"""Which bowl a line goes into: what the steps say first, else the kind of ingredient."""

import re
from dataclasses import dataclass, replace

from krume.base import NotFoundError, Notice
from krume.design.formula import Formula, Line, Use
from krume.design.moves import Move, kinds_in, move_of
from krume.pantry import Ingredient, egg_size, ingredient

# In the order a person works: what is dry or takes time first, eggs after that, the sugar that
# waits for the whites last.
BOWLS = {
    "nut": "Nut bowl",
    "dry": "Dry bowl",
    "fat": "Fat pot",
    "gelatine": "Gelatine cup",
    "pot": "Pot",
    "chocolate": "Chocolate bowl",
    "fruit": "Fruit bowl",
    "liquid": "Liquid cup",
    "other": "Side bowl",
    "butter": "Butter bowl",
    "dairy": "Dairy bowl",
    "cream": "Cream bowl",
    "egg": "Egg bowl",
    "yolk": "Yolk bowl",
    "white": "White bowl",
    "sugar": "Sugar cup",
}

DRY = frozenset(("flour", "starch", "binder", "leavening", "cocoa"))
_WET = ("acid", "dairy", "flavour", "fruit", "liquid", "salt", "spirit", "sugar", "water")

_SEPARATED = re.compile(r"\bseparat|\bgetrennt", re.IGNORECASE)
_MELTED = re.compile(r"\b(?:melted|geschmolzen|zerlassen)", re.IGNORECASE)

_NAME_WORD = re.compile(r"[^\W\d_]{4,}")
# Words of a name that say how a thing is, not what it is.
_PLAIN_WORDS = frozenset(
    "white dark fine ground whole soft cold melted sweet thick plain fresh large medium powder"
    " powdered caster icing extract pure dried warm toasted sifted baking".split()
)
_EXTRACT = re.compile(r"extract|essence|paste|fresh", re.IGNORECASE)
_POWDER = re.compile(r"^(?!cheese)(?:.*-)?(?:dry|dried|powder|instant|matcha|ground-ciqual)\b")
_THICK_CREAMS = ("cream-cheese", "cream-sour")
# For a name the pantry does not know: the word in it that says what it is.
_WORDS = tuple(
    (role, re.compile(words))
    for role, words in (
        ("flour", r"flour|starch|mehl|stärke|\bhusk"),
        ("sugar", r"sugar|zucker"),
        ("salt", r"\bsalt|salz\b"),
        ("nut", r"nuts?\b|almond|seeds?\b|kernels?\b|mandel|nüsse"),
        ("liquid", r"milk|water|juice|extract|milch|wasser|saft|\boil\b|öl\b"),
        ("fat", r"butter|margarine"),
    )
)

_TAKES: dict[str, dict[str, str]] = {
    "soak": dict.fromkeys(("gel", "water", "liquid"), "gelatine"),
    "warm whites": dict.fromkeys(_WET, "white"),
    "whites": {**dict.fromkeys(_WET, "white"), "leavening": "white", "sugar": "sugar"},
    "yolks": {**dict.fromkeys(_WET, "yolk"), "fat": "yolk"},
    "cream butter": dict.fromkeys(("fat", "sugar", "flavour", "salt"), "butter"),
    "rub": {"fat": "butter", "sugar": "dry", "salt": "dry"},
    "melt": dict.fromkeys(("fat", "chocolate"), "fat"),
    "whip cream": dict.fromkeys(("dairy", "sugar", "flavour"), "cream"),
    "boil": dict.fromkeys((*DRY, *_WET, "fat", "chocolate", "nut", "other"), "pot"),
    "nuts": {"nut": "nut", "sugar": "nut"},
    "sift": dict.fromkeys(("sugar", "salt", "flavour"), "dry"),
    "eggs": dict.fromkeys(("sugar", "salt", "flavour", "acid"), "egg"),
}


@dataclass(frozen=True, slots=True)
class Share:
    """What one bowl gets of one line; `mass_g` None is unknown, `part` is that of split eggs."""

    line: int
    bowl: str
    mass_g: float | None
    part: str | None = None
    remark: str = ""


@dataclass(frozen=True, slots=True)
class Kind:
    """What a line is, as far as its bowl depends on it."""

    role: str
    part: str | None = None
    is_liquid: bool = False
    is_oil: bool = False
    is_whipped: bool = False


@dataclass(frozen=True, slots=True)
class Plan:
    """The formula with what its steps are about, looked at once."""

    formula: Formula
    uses: tuple[Use, ...]
    kinds: tuple[Kind, ...]
    moves: dict[Use, Move]
    is_separated: bool

    def said(self, *kinds: str) -> bool:
        """Whether a mention is about one of these moves."""
        return any(move.kind in kinds for move in self.moves.values())


def shares(formula: Formula) -> tuple[tuple[Share, ...], tuple[Notice, ...]]:
    """Every line of a formula in its bowl or bowls, each gram once, with what was assumed."""
    plan = _plan(formula)
    found: list[Share] = []
    notices: list[Notice] = []
    for number, line in enumerate(formula.lines):
        if plan.kinds[number].role == "egg":
            placed, said = _egg(plan, number, line)
        else:
            placed, said = _line(plan, number, line)
        found.extend(placed)
        notices.extend(said)
    return _settled(plan, tuple(found)), tuple(notices)


def _plan(formula: Formula) -> Plan:
    uses = (*formula.uses, *_overlooked(formula))
    moves = {use: _move(formula, use) for use in uses}
    return Plan(
        formula=formula,
        uses=uses,
        kinds=tuple(_kind(line) for line in formula.lines),
        moves=moves,
        is_separated=_is_separated(formula),
    )


def _overlooked(formula: Formula) -> tuple[Use, ...]:
    """First mention of a line no amount is named for, by a word only that line has."""
    named = {use.line for use in formula.uses}
    words = [set(_NAME_WORD.findall(line.name.casefold())) - _PLAIN_WORDS for line in formula.lines]
    steps = [set(_NAME_WORD.findall(step.casefold())) for step in formula.steps]
    found: list[Use] = []
    for number in (n for n in range(len(words)) if n not in named):
        others: set[str] = set().union(*words[:number], *words[number + 1 :])
        own = words[number] - others
        step = next((at for at, said in enumerate(steps) if own & said), None)
        if step is not None:
            found.append(Use(step, number, None, min(own & steps[step])))
    return tuple(found)


def _is_separated(formula: Formula) -> bool:
    if any(_SEPARATED.search(f"{line.read} {line.note or ''}") for line in formula.lines):
        return True
    kinds = {kind for step in formula.steps for kind in kinds_in(step)}
    return {"yolks", "whites"} <= kinds and not any(line.part for line in formula.lines)


def _kind(line: Line) -> Kind:
    item = _ingredient(line)
    if line.part in ("yolk", "white", "whole") or line.basis == "egg":
        return Kind("egg", part=line.part)
    if line.part is not None:
        return Kind("flavour")
    if item is None:
        return Kind(_role_by_word(line.name))
    if item.role == "egg":
        return Kind("egg", part=_part_in(item.key))
    return Kind(
        role=_role(item),
        is_liquid=item.liquid,
        is_oil=item.key.startswith("oil-"),
        is_whipped=item.key.startswith("cream-") and not item.key.startswith(_THICK_CREAMS),
    )


def _role(item: Ingredient) -> str:
    """Role for the bowl: a dried milk is a dry thing, a ground spice goes where the salt goes."""
    if item.role in ("dairy", "flavour") and _POWDER.search(item.key):
        return "cocoa"
    if item.kind == "leavening":
        return "leavening"
    is_spice = item.role == "flavour" and item.kind == "spice"
    return "salt" if is_spice and not _EXTRACT.search(item.name) else item.role


def _part_in(key: str) -> str | None:
    return next((part for part in ("yolk", "white") if f"-{part}" in key), None)


def _role_by_word(name: str) -> str:
    text = name.casefold()
    return next((role for role, words in _WORDS if words.search(text)), "other")


def _ingredient(line: Line) -> Ingredient | None:
    try:
        return None if line.ingredient is None else ingredient(line.ingredient)
    except NotFoundError:
        return None


def _move(formula: Formula, use: Use) -> Move:
    name = formula.lines[use.line].name
    return move_of(formula.steps[use.step], words=use.words, name=name)


def _egg(plan: Plan, number: int, line: Line) -> tuple[list[Share], list[Notice]]:
    use = _first_use(plan, number)
    if use is not None and plan.moves[use].kind == "boil":
        return [Share(number, "pot", line.mass_g)], []
    part = plan.kinds[number].part
    if part in ("yolk", "white") or not plan.is_separated:
        return [Share(number, part if part in ("yolk", "white") else "egg", line.mass_g)], []
    return _split(plan, number, line)


def _split(plan: Plan, number: int, line: Line) -> tuple[list[Share], list[Notice]]:
    key = line.egg_size or plan.formula.egg_size
    if line.mass_g is None or key is None:
        said = "the eggs are separated, but not their size: weigh yolks and whites yourself"
        return [Share(number, "egg", line.mass_g)], [Notice("egg-split-unknown", said, line.read)]
    size = egg_size(key)
    yolk = size.yolk_g.best / (size.yolk_g.best + size.white_g.best) * line.mass_g
    return [
        Share(number, "yolk", yolk, "yolk"),
        Share(number, "white", line.mass_g - yolk, "white"),
    ], []


def _first_use(plan: Plan, number: int) -> Use | None:
    return next((use for use in plan.uses if use.line == number), None)


def _line(plan: Plan, number: int, line: Line) -> tuple[list[Share], list[Notice]]:
    if line.mass_g is None:
        return [_whole(plan, number, None)], []
    left = line.mass_g
    placed: list[Share] = []
    for use in (u for u in plan.uses if u.line == number and u.mass_g is not None):
        mass = min(use.mass_g or 0.0, left)
        if mass > 0:
            placed.append(Share(number, _bowl_of_use(plan, use), mass))
            left = max(0.0, line.mass_g - sum(share.mass_g or 0.0 for share in placed))
    if not placed or left > 1e-6:
        placed.append(_whole(plan, number, left))
        if len(placed) > 1 and _open_use(plan, number) is None:
            return placed, [_leftover(line, left, placed[-1].bowl)]
    return placed, []


def _leftover(line: Line, left: float, bowl: str) -> Notice:
    where = BOWLS.get(bowl, BOWLS["dry"]).lower()
    text = f"the steps do not say where {left:g} g of {line.name} go: weighed into the {where}"
    return Notice("share-not-in-steps", text, line.read)


def _open_use(plan: Plan, number: int) -> Use | None:
    uses = (u for u in plan.uses if u.line == number and u.mass_g is None)
    return next(uses, None)


def _whole(plan: Plan, number: int, mass_g: float | None) -> Share:
    use = _open_use(plan, number) or (_first_use(plan, number) if mass_g is None else None)
    bowl = _home(plan, number) if use is None else _bowl_of_use(plan, use)
    return Share(number, bowl, mass_g)


def _bowl_of_use(plan: Plan, use: Use) -> str:
    move, kind = plan.moves[use], plan.kinds[use.line]
    bowl = _TAKES.get(move.kind, {}).get(kind.role)
    if bowl == "yolk" and move.is_late:
        return "liquid" if kind.role != "fat" or kind.is_oil else _home(plan, use.line)
    if bowl == "yolk" and kind.role == "fat" and not kind.is_oil:
        return _home(plan, use.line)
    if bowl is None and kind.role in _WET and _stands_with_dairy(plan, move):
        return "dairy"
    return bowl or _home(plan, use.line)


def _stands_with_dairy(plan: Plan, move: Move) -> bool:
    return move.kind == "other" and any(
        other.sentence == move.sentence and _is_thick_dairy(plan.kinds[use.line])
        for use, other in plan.moves.items()
    )


def _is_thick_dairy(kind: Kind) -> bool:
    return kind.role == "dairy" and not kind.is_liquid and not kind.is_whipped


def _home(plan: Plan, number: int) -> str:
    kind, line = plan.kinds[number], plan.formula.lines[number]
    if kind.role in DRY or kind.role == "nut":
        return "dry"
    if kind.role == "fat" and _MELTED.search(f"{line.read} {line.note or ''}"):
        return "fat"
    if kind.role == "sugar":
        return _sugar_home(plan)
    if kind.role == "water" and any(k.role == "gel" for k in plan.kinds):
        return "gelatine"
    return _BY_KIND.get(kind.role) or _wet_home(kind)


_BY_KIND = {
    "gel": "gelatine",
    "chocolate": "chocolate",
    "fruit": "fruit",
    "other": "other",
    "salt": "salt",
    "flavour": "liquid",
    "spirit": "liquid",
    "acid": "liquid",
    "liquid": "liquid",
    "water": "liquid",
}


def _wet_home(kind: Kind) -> str:
    if kind.role == "fat":
        return "liquid" if kind.is_oil else "butter"
    if kind.is_whipped:
        return "cream"
    return "liquid" if kind.is_liquid else "dairy"


def _sugar_home(plan: Plan) -> str:
    if plan.said("cream butter") and not plan.is_separated:
        return "butter"
    if plan.formula.family == "tart":
        return "dry"
    only_syrup = all(kind.role in ("sugar", *_WET) and kind.role != "dairy" for kind in plan.kinds)
    return "pot" if only_syrup and not plan.formula.steps else "sugar"


def _settled(plan: Plan, found: tuple[Share, ...]) -> tuple[Share, ...]:
    """Salt without a place of its own goes where the dry things are, else into the first bowl."""
    used = {share.bowl for share in found}
    order = [bowl for bowl in BOWLS if bowl in used]
    home = "dry" if "dry" in used or not order else _salt_home(plan, found, order)
    in_one_pot = "pot" in used and not plan.formula.steps
    return tuple(_remarked(_settle(share, home, in_one_pot=in_one_pot), found) for share in found)


def _settle(share: Share, salt_home: str, *, in_one_pot: bool) -> Share:
    if share.bowl == "salt":
        return replace(share, bowl=salt_home)
    if share.bowl == "liquid" and in_one_pot:
        return replace(share, bowl="pot")
    return share


def _salt_home(plan: Plan, found: tuple[Share, ...], order: list[str]) -> str:
    free = [bowl for bowl in order if bowl != "liquid" and not _has_shelled(plan, found, bowl)]
    return next((bowl for bowl in ("pot", "white") if bowl in free), (*free, order[0])[0])


def _has_shelled(plan: Plan, found: tuple[Share, ...], bowl: str) -> bool:
    return any(share.bowl == bowl and _is_from_shell(plan, share) for share in found)


def _is_from_shell(plan: Plan, share: Share) -> bool:
    return plan.formula.lines[share.line].basis in ("egg", "count")


def _remarked(share: Share, found: tuple[Share, ...]) -> Share:
    shared = any(o.line == share.line and o.bowl != share.bowl for o in found)
    if share.bowl == "sugar" and shared and any(o.bowl == "white" for o in found):
        return replace(share, remark="for the whites")
    return share
