"""Additives in a list: their class with their name or number, where the market wants it."""

import math
import re
from collections.abc import Iterable, Iterator

from krume.label.market_rules import MarketRule
from krume.label.parts import Opened
from krume.pantry import (
    Additive,
    additive_kinds,
    additive_named,
    additive_of,
    parts_listed,
    without_share,
)
from krume.properties import constants

_SWEETENER = "sweetener"
_WITH_SWEETENER = "With sweetener."
_LAXATIVE = "Excessive consumption may produce laxative effects."

_OPENED = re.compile(r"^(?P<outer>[^([]+?)\s*(?:[(\[](?P<inner>.*)[)\]]|:\s*(?P<after>.+))$")


def additive_text(additive: Additive, name: str, rule: MarketRule, *, by_number: bool) -> str:
    """One additive as listed: `thickener: xanthan gum`, `thickener: E415`, or its plain name.

    >>> from krume.label.market_rules import market_rule
    >>> from krume.pantry import additive_of
    >>> xanthan = additive_of("xanthan-gum")
    >>> [additive_text(xanthan, "xanthan gum", market_rule(m), by_number=True)
    ...     for m in ("eu", "au-nz", "us")]
    ['thickener: E415', 'thickener (415)', 'xanthan gum']
    """
    if not rule.has_classes:
        return name
    told = _numbers(additive.number, rule) if by_number else name
    return f"{additive.kind}: {told}" if rule.number_mark else f"{additive.kind} ({told})"


def _numbers(number: str, rule: MarketRule) -> str:
    return number if rule.number_mark else number.replace("E", "")


def part_text(part: str, rule: MarketRule, *, by_number: bool) -> str:
    """A part of a composite in the words of its bag, an additive in it with its class.

    A part that opens its own list keeps it.
    """
    plain = " ".join(without_share(part).split())
    additive = additive_named(plain)
    if additive is not None:
        return additive_text(additive, _name(additive, plain), rule, by_number=by_number)
    opened = _OPENED.match(plain)
    if opened is None:
        return plain
    return _opened_text(opened, rule, by_number=by_number)


def _name(additive: Additive, plain: str) -> str:
    """The bag's own word; a number stays a number."""
    return additive.number if additive.name == additive.number else plain


def _opened_text(opened: re.Match[str], rule: MarketRule, *, by_number: bool) -> str:
    outer = opened["outer"].strip()
    inside = parts_listed(opened["inner"] or opened["after"])
    if outer.casefold() not in additive_kinds():
        told = [part_text(each, rule, by_number=by_number) for each in inside]
        return f"{outer} ({', '.join(told)})"
    named = [_inside(each, rule, by_number=by_number) for each in inside]
    return f"{outer} ({', '.join(named)})"


def _inside(part: str, rule: MarketRule, *, by_number: bool) -> str:
    """An additive that stands under its class already."""
    additive = additive_named(part)
    if additive is None:
        return part
    is_number = additive.name == additive.number
    if not rule.has_classes or not (by_number or is_number):
        return part
    return _numbers(additive.number, rule)


def must_say_of(
    found: Iterable[Opened], finished_g: float | None, rule: MarketRule
) -> tuple[str, ...]:
    """Sentences that the additives of a product want on its label, where the market has them."""
    if rule.number_mark != "E":
        return ()
    held = [(each.used, additive) for each in found for additive in _additives(each)]
    told = [additive.must_say for _, additive in held]
    if any(additive.kind == _SWEETENER for _, additive in held):
        told.append(_WITH_SWEETENER)
    if _is_laxative([used.mass_g for used, a in held if a.kind == _SWEETENER], finished_g):
        told.append(_LAXATIVE)
    return tuple(dict.fromkeys(text for text in told if text))


def _additives(each: Opened) -> Iterator[Additive]:
    own = additive_named(each.used.name) if each.used.key is None else additive_of(each.used.key)
    if own is not None:
        yield own
    for part in each.parts:
        yield from _additives_said(part)


def _additives_said(part: str) -> Iterator[Additive]:
    plain = " ".join(without_share(part).split())
    additive = additive_named(plain)
    opened = None if additive is not None else _OPENED.match(plain)
    if additive is not None:
        yield additive
    for each in parts_listed(opened["inner"] or opened["after"]) if opened is not None else ():
        yield from _additives_said(each)


def _is_laxative(masses: list[float | None], finished_g: float | None) -> bool:
    """Whether polyols are above the share the law warns at; a mass not known counts as above."""
    if not masses:
        return False
    known = [mass for mass in masses if mass is not None]
    if len(known) < len(masses) or not finished_g:
        return True
    return 100 * math.fsum(known) / finished_g > constants("declared.csv")["laxative-above-pct"]
