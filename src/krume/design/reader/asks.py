"""What is asked about a name and an amount: which good, how heavy, below nothing."""

from krume.base import as_text
from krume.design.reader.asking import Asking, left_out
from krume.design.reader.items import Item
from krume.design.reader.naming import (
    Named,
)
from krume.design.reader.settings import limit
from krume.design.reader.weights import Weight
from krume.pantry import Found

_NUT_SIGNS = ("🥜", "🌰")


_NUTS = ("almonds", "hazelnuts", "walnuts", "peanuts")


_SEVERAL_BOWLS = "in several bowls"


def ask_name(item: Item, name: Named, found: Found, asking: Asking) -> None:
    """Ask what a name means, where it means several goods, looks like one, or is unknown."""
    if any(sign in item.name for sign in _NUT_SIGNS):
        _ask_nut(item, asking)
        return
    if name.instead:
        asking.note(
            "alternative",
            f"'{name.phrase.head}' is planned; the text allows {name.instead} instead",
        )
    if found.notice:
        asking.note("ingredient-assumed", found.notice)
    if found.kind in ("known", "good"):
        return
    if item.amount.value is None and found.kind == "ask":
        asking.note("which-ingredient", f"{found.question} It has no amount, so it is not asked")
        return
    code = {
        "ask": "which-ingredient",
        "close": "which-ingredient-close",
        "lookalike": "lookalike",
    }.get(found.kind, "ingredient-unknown")
    if code == "ingredient-unknown":
        asking.note(
            code,
            f"'{name.phrase.head}' is unknown to the table: its mass counts, its composition is "
            f"unknown",
        )
        if item.amount.value is None or not name.phrase.head:
            return
    options = tuple(
        (
            choice.label,
            renamed(item, name.phrase.head, choice.words.replace(", as a ", " as a "), asking),
        )
        for choice in found.choices[:4]
    )
    if len(options) == 1 and item.start <= len(asking.source) - len(asking.source.lstrip()) + 8:
        options = (*options, ("something else: leave it out for now", left_out(asking.source)))
    asking.ask(code, found.question, *options)


def _ask_nut(item: Item, asking: Asking) -> None:
    sign = next(s for s in _NUT_SIGNS if s in item.name)
    at = asking.source.find(sign, item.start)
    options = tuple(
        (f"ground {nut}", asking.edit(item.name_start, item.end, f"ground {nut}")) for nut in _NUTS
    )
    asking.ask("which-ingredient-nut", f"Which nut is {sign if at >= 0 else 'meant'}?", *options)


def renamed(item: Item, head: str, words: str, asking: Asking) -> str:
    """The source line with an ingredient's name replaced and the rest kept."""
    at = asking.source.find(head, item.name_start, item.name_end) if head else -1
    if at < 0:
        return asking.edit(item.name_start, item.name_end, words)
    return asking.edit(at, at + len(head), words)


def ask_amount(item: Item, weight: Weight, name: Named, asking: Asking) -> None:
    """Say that a mass is unknown or nothing, or ask about one that no bowl holds."""
    if weight.mass_g is None:
        _note_no_mass(item, name, asking)
        return
    if weight.mass_g == 0:
        asking.note("amount-zero", f"0 of {name.phrase.head or 'this'}: it counts as nothing")
    if weight.mass_g > limit("heaviest-line") and _SEVERAL_BOWLS not in asking.source:
        _ask_heavy(item, weight.mass_g, asking)


def _note_no_mass(item: Item, name: Named, asking: Asking) -> None:
    if item.amount.value is None:
        asking.note(
            "amount-missing",
            f"no amount is written for {name.phrase.head or 'this'}: its mass is unknown",
        )
    else:
        unit = item.amount.unit.name if item.amount.unit else "each"
        asking.note(
            "mass-unknown",
            f"no table says what one {unit} of {name.phrase.head} weighs: type grams",
        )


def _ask_heavy(item: Item, mass_g: float, asking: Asking) -> None:
    start, end = item.amount.start, item.amount.end
    options = [
        (f"{as_text(mass_g / d)} g", asking.edit(start, end, f"{as_text(mass_g / d)} g"))
        for d in (1e3, 1e4, 1e6, 1e7)
        if limit("heaviest-line") >= mass_g / d >= 1
    ]
    kept = asking.edit(item.end, item.end, f", {_SEVERAL_BOWLS}")
    asking.ask(
        "amount-heavy",
        f"{as_text(mass_g / 1000)} kg is heavier than any bowl here. Is it "
        f"{as_text(mass_g / 1000)} kg?",
        (f"{as_text(mass_g / 1000)} kg, {_SEVERAL_BOWLS}", kept),
        *options[:3],
    )


def negative(source: str, start: int, asking: Asking) -> None:
    """A negative amount cannot be used."""
    asking.ask(
        "negative-amount",
        "A mass cannot be negative. Type the amount that goes in, or leave the line out.",
        ("leave it out", left_out(source)),
        (
            "without the minus sign",
            source[:start] + source[start:].replace("-", "", 1).replace("−", "", 1).lstrip(),
        ),
    )
