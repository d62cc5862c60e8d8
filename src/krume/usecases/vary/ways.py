"""Rules in use that differ, side by side: cocoa for flour."""

from collections.abc import Callable

from krume.design import Formula, varying
from krume.pantry import ingredient
from krume.usecases.vary.result import VaryWay, line_rows


def ways_of(
    formula: Formula, wanted: varying.Wanted, made_with: varying.Wish
) -> tuple[VaryWay, ...]:
    """Both rules in use for cocoa, side by side."""
    cocoa = [
        change
        for change in wanted.changes
        if change.line is not None
        and change.key is not None
        and varying.role_of(formula.lines[change.line]) in ("flour", "starch")
        and ingredient(change.key, own=made_with.own).role == "cocoa"
    ]
    if not cocoa:
        return ()
    grams = sum(change.to_g for change in cocoa)
    ways = []
    for rule in varying.cocoa_rules():
        extra = _extras(formula, rule, grams)
        made = varying.vary(formula, (*wanted.changes, *extra), made_with)
        ways.append(VaryWay(rule.key, rule.label, rule.status, rule.note, line_rows(made.lines)))
    return tuple(ways)


def _extras(formula: Formula, rule: varying.CocoaRule, grams: float) -> tuple[varying.Change, ...]:
    """More liquid and more sugar, in lines that are there; a liquid that is not is water."""
    found = []
    liquid = _first(formula, lambda role: role in ("water", "liquid", "dairy"))
    sugar = _first(formula, lambda role: role == "sugar")
    if rule.liquid_per_g:
        key, name = liquid or (varying.WATER, "water")
        why = "cocoa takes up more water than flour"
        found.append(varying.Change(None, 0.0, key, name, rule.liquid_per_g * grams, why))
    if rule.sugar_per_g and sugar is not None:
        why = "cocoa is bitter"
        found.append(varying.Change(None, 0.0, *sugar, rule.sugar_per_g * grams, why))
    return tuple(found)


def _first(formula: Formula, fits: Callable[[str], bool]) -> tuple[str, str] | None:
    lines = (x for x in formula.lines if x.ingredient and fits(varying.role_of(x)))
    heaviest = max(lines, key=lambda line: line.mass_g or 0.0, default=None)
    return None if heaviest is None else (heaviest.ingredient or "", heaviest.name)
