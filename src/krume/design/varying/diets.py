"""A formula for somebody who avoids something: each line swapped, or named as the limit."""

from collections.abc import Iterable

from krume.base import Notice, Read
from krume.design.balance import balance
from krume.design.formula import Formula, Line
from krume.design.varying.asking import Limit, Wanted, egg_text
from krume.design.varying.drafting import Change
from krume.design.varying.matching import role_of
from krume.design.varying.parts_of import is_blank, known, maybe
from krume.design.varying.rules import DietWish, carrier_of, diet_swap
from krume.pantry import Ingredient, allergens, find

_NUT_WORDS = ("nuts (", "peanut")


def diet_wanted(
    formula: Formula, wish: DietWish, *, own: tuple[Ingredient, ...] = ()
) -> Read[Wanted]:
    r"""Changes for a wish, the lines nothing is known for, and what nobody knows of the others.

    >>> from krume.design.reader import read
    >>> from krume.design.varying.rules import diet_wish
    >>> sponge = read("Sponge\n\n100 g rice flour, white\n20 g butter\n").value
    >>> diet_wanted(sponge, diet_wish("dairy-free")).value.texts
    ('butter = sunflower oil',)
    """
    changes: list[Change] = []
    texts: list[str] = []
    limits: list[Limit] = []
    notices: list[Notice] = []
    for at, line in enumerate(formula.lines):
        held = avoided(line, wish.avoids, own)
        if held is None:
            text = f"“{line.read.strip()}”: whether it holds anything to avoid is not known."
            notices.append(Notice("diet-unknown", text, f"line {line.number}"))
        for word in (held or ())[:1]:
            found = _stand_in(formula, at, word, wish, own)
            if isinstance(found, Limit):
                limits.append(found)
            else:
                changes.append(found)
                notices.append(_told(line, word))
                texts.append(f"{line.name} = {found.name}")
    return Read(Wanted(tuple(changes), tuple(texts), tuple(limits)), (), tuple(notices))


def avoided(
    line: Line, avoids: Iterable[str], own: tuple[Ingredient, ...] = ()
) -> tuple[str, ...] | None:
    """Which of the things to avoid a line holds; None where only the supplier could say."""
    if role_of(line) == "egg":
        return tuple(word for word in avoids if word == "egg")
    item = maybe(line.ingredient, own)
    if item is None:
        return None
    said = allergens(item.key, own=own)
    declared = [told for each in said for told in each.words("eu")]
    held = tuple(word for word in avoids if _holds(item, word, declared))
    if not held and any(a.presence == "unknown" for a in said):
        return None
    return held


def _holds(item: Ingredient, word: str, declared: list[str]) -> bool:
    if word == "gelatine":
        return item.role == "gel" and item.key.startswith("gelatin")
    if word == "honey":
        return item.key.startswith("honey")
    if word == "nuts":
        return any(each.startswith(_NUT_WORDS) for each in declared)
    return word in declared


def _stand_in(
    formula: Formula, at: int, word: str, wish: DietWish, own: tuple[Ingredient, ...]
) -> Change | Limit:
    line = formula.lines[at]
    is_egg = word == "egg" and role_of(line) == "egg"
    if is_egg and carrier_of(balance(formula).family).kind != "bind":
        return Limit(line, egg_text(formula), wish.label)
    found = diet_swap(word, f"{role_of(line)}:{line.ingredient}")
    item = maybe(line.ingredient, own)
    if found.to_key is None or line.mass_g is None or item is None or is_blank(item):
        return Limit(line, f"{found.text[:1].upper()}{found.text[1:]}.", wish.label)
    new = known(found.to_key, own)
    return Change(at, line.mass_g, new.key, _name(line, new), line.mass_g)


def _told(line: Line, word: str) -> Notice:
    """What stands in for a line, in the words of its row."""
    text = diet_swap(word, f"{role_of(line)}:{line.ingredient}").text
    return Notice("diet-swap", f"{text[:1].upper()}{text[1:]}.", f"line {line.number}")


def _name(line: Line, new: Ingredient) -> str:
    ground = f"ground {new.label_name}"
    if line.name.casefold().startswith("ground ") and find(ground).key == new.key:
        return ground
    return new.label_name
