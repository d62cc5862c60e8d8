"""A variation: a formula with one thing for another, its fat, water and sugar brought back."""

from dataclasses import dataclass, replace

from krume.design.balance import Balance, balance
from krume.design.formula import Formula, Line
from krume.design.varying.closing import Closed, Mover, close
from krume.design.varying.drafting import Change, Draft, Wish, drafts_of, weighed
from krume.design.varying.matching import role_of
from krume.design.varying.moving import movers_of
from krume.design.varying.parts_of import HELD, NOTHING, Holding, known, maybe, per_gram
from krume.design.varying.rules import SwapRule, carrier_of, rule_of, unknowns_of
from krume.design.varying.weights import weights_g

_DUST_G = 1e-9
_AS_USUAL = Wish()
_UNUSUAL = "An unusual swap: what it does beside its composition is not known."


@dataclass(frozen=True, slots=True)
class VariedLine:
    """A line before and after; `line` is what stands in the child, None where it is gone."""

    before: Line | None
    line: Line | None
    why: str = ""

    @property
    def before_g(self) -> float | None:
        """Grams in the parent; a line that was not there had none."""
        return 0.0 if self.before is None else self.before.mass_g

    @property
    def after_g(self) -> float | None:
        """Grams in the child; a line that is gone has none."""
        return 0.0 if self.line is None else self.line.mass_g

    @property
    def is_changed(self) -> bool:
        """Whether it differs from the parent's."""
        return self.before != self.line


@dataclass(frozen=True, slots=True)
class Variation:
    """A child of a formula.

    `gaps` is what the parent has and the bare swap lacks (below 0: what it has too much), `left`
    what still lacks after the make-up. `made_up` is the line that makes up fat.
    """

    parent: Formula
    formula: Formula
    lines: tuple[VariedLine, ...]
    rules: tuple[SwapRule, ...]
    gaps: Holding
    left: Holding
    made_up: Line | None
    made_up_g: float
    before: Balance
    after: Balance
    unknown: tuple[str, ...]


def vary(formula: Formula, changes: tuple[Change, ...], wish: Wish = _AS_USUAL) -> Variation:
    r"""Make a variation: the changes weight for weight, then what may move brought nearest.

    The lines named in `changes` must have masses and compositions that are known.

    >>> from krume.design.reader import read
    >>> sponge = read("Sponge\n\n40 g ground hazelnuts\n60 g rice starch\n100 g sugar\n").value
    >>> made = vary(sponge, (Change(0, 40.0, "sunflower-kernels-dried", "sunflower", 40.0),))
    >>> [(line.name, line.mass_g) for line in made.formula.lines][-1], round(made.gaps.fat_g, 2)
    (('sunflower oil', 3.7), 3.72)
    """
    changes = tuple(change for change in changes if not _is_nothing(formula, change))
    before = balance(formula, own=wish.own)
    rules = tuple(_rule(formula, change, wish) for change in changes)
    gaps = _gaps(formula, changes, wish)
    drafts = drafts_of(formula, changes, rules)
    movers = movers_of(drafts, rules, gaps, before, wish)
    closed = _closed(gaps, movers, before, wish.step_g)
    moved = _moved(drafts, movers, closed)
    lines = tuple(line for line in moved if line.before or line.line)
    child = replace(
        formula, lines=tuple(each.line for each in lines if each.line is not None), uses=()
    )
    fat = next((at for at, mover in movers if mover.name == "fat"), None)
    return Variation(
        parent=formula,
        formula=child,
        lines=lines,
        rules=rules,
        gaps=gaps,
        left=_left(gaps, movers, closed, drafts, wish),
        made_up=None if fat is None else moved[fat].line,
        made_up_g=0.0 if fat is None else (moved[fat].after_g or 0) - (moved[fat].before_g or 0),
        before=before,
        after=balance(child, own=wish.own),
        unknown=_unknown(formula, changes, before, wish, rules),
    )


def _is_nothing(formula: Formula, change: Change) -> bool:
    """Whether a thing stands in for itself."""
    return change.line is not None and change.key == formula.lines[change.line].ingredient


def _rule(formula: Formula, change: Change, wish: Wish) -> SwapRule:
    from_role = "none" if change.line is None else role_of(formula.lines[change.line])
    to_role = "none" if change.key is None else known(change.key, wish.own).role
    return rule_of(from_role, to_role)


def _goes(formula: Formula, change: Change, wish: Wish) -> Holding:
    """What a change takes out."""
    if change.line is None:
        return NOTHING
    found = maybe(formula.lines[change.line].ingredient, wish.own)
    held = Holding() if found is None else per_gram(found)
    return held.times(change.mass_g)


def _comes(change: Change, wish: Wish) -> Holding:
    return (
        NOTHING if change.key is None else per_gram(known(change.key, wish.own)).times(change.to_g)
    )


def _gaps(formula: Formula, changes: tuple[Change, ...], wish: Wish) -> Holding:
    gaps = NOTHING
    for change in (change for change in changes if not change.extra):
        gaps = gaps.plus(_goes(formula, change, wish)).minus(_comes(change, wish))
    return gaps


def _closed(
    gaps: Holding, movers: list[tuple[int, Mover]], before: Balance, step_g: float
) -> Closed:
    """Search over what is known; a quantity that is not known has no say."""
    off = tuple(-(value or 0.0) for value in gaps.values()[: len(HELD)])
    blind = {at for at, value in enumerate(gaps.values()[: len(HELD)]) if value is None}
    seeing = [
        replace(m, per_g=tuple(0.0 if at in blind else v for at, v in enumerate(m.per_g)))
        for _, m in movers
    ]
    return close(off, tuple(weights_g(before).values()), seeing, step_g)


def _moved(
    drafts: list[Draft], movers: list[tuple[int, Mover]], closed: Closed
) -> list[VariedLine]:
    masses = {at: mass for (at, _), mass in zip(movers, closed.masses_g, strict=True)}
    names = {at: mover.name for at, mover in movers}
    return [_varied(draft, masses.get(at), names.get(at, "")) for at, draft in enumerate(drafts)]


_WHYS = {
    "fat": ("makes up the fat", "takes off fat"),
    "liquid": ("makes up the water", "takes off water"),
    "sugar": ("makes up the sugar", "takes off sugar"),
}


def _varied(draft: Draft, mass_g: float | None, name: str) -> VariedLine:
    line = draft.line
    if mass_g is None or line is None or abs(mass_g - draft.mass_g) < _DUST_G:
        is_there = draft.mass_g > 0 or draft.before is not None
        return VariedLine(draft.before, line if is_there else None, draft.why)
    why = draft.why
    if name in _WHYS:
        more = _WHYS[name][0 if mass_g > draft.mass_g else 1]
        why = f"{why}; {more}" if why else more
    return VariedLine(draft.before, weighed(line, mass_g) if mass_g > 0 else None, why)


def _left(
    gaps: Holding,
    movers: list[tuple[int, Mover]],
    closed: Closed,
    drafts: list[Draft],
    wish: Wish,
) -> Holding:
    left = gaps
    for (at, mover), mass in zip(movers, closed.masses_g, strict=True):
        line = drafts[at].line
        found = None if line is None else maybe(line.ingredient, wish.own)
        if found is not None:
            left = left.minus(per_gram(found).times(mass - mover.start_g))
    return left


def _unknown(
    formula: Formula,
    changes: tuple[Change, ...],
    before: Balance,
    wish: Wish,
    rules: tuple[SwapRule, ...],
) -> tuple[str, ...]:
    facts = _facts(formula, before, wish)
    found = [_UNUSUAL for rule in rules if rule.key == "other"]
    for change in (change for change in changes if not change.extra):
        goes = "none:" if change.line is None else _what(formula.lines[change.line])
        comes = f"cut:{goes}" if change.key is None else _named(change.key, wish)
        found += unknowns_of(goes, comes, facts)
    return tuple(dict.fromkeys(found))


def _named(key: str, wish: Wish) -> str:
    return f"{known(key, wish.own).role}:{key}"


def _what(line: Line) -> str:
    return f"{role_of(line)}:{line.ingredient or line.name}"


def _facts(formula: Formula, before: Balance, wish: Wish) -> frozenset[str]:
    """What of the formula decides whether a remark applies to it."""
    facts = {before.family or ""} & {"butter", "tart"}
    if carrier_of(before.family).kind == "foam" and any(role_of(x) == "egg" for x in formula.lines):
        facts.add("foam")
    raised = (maybe(line.ingredient, wish.own) for line in formula.lines)
    if any(one is not None and one.leavening in ("soda", "baking-powder") for one in raised):
        facts.add("soda")
    return frozenset(facts)
