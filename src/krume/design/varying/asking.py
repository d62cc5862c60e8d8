"""From a person's words to changes: which line goes, what comes, and every question about it."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from krume.base import Option, Problem, Read, as_text
from krume.design.balance import balance
from krume.design.formula import Formula, Line
from krume.design.reader.settings import limit
from krume.design.varying.drafting import Change
from krume.design.varying.matching import Said, lines_named, role_of, said_of
from krume.design.varying.parts_of import is_blank, known, maybe
from krume.design.varying.rules import carrier_of
from krume.pantry import Found, Ingredient, find

_DUST_G = 1e-9
_GROUND = "ground "
_PASTES = ("paste", "butter", "tahini")


@dataclass(frozen=True, slots=True)
class Limit:
    """A line that no swap here is known for: what it is, why, and where it stands."""

    line: Line
    text: str
    wish: str


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a person's words come to: the changes, their own plain texts, the lines nothing is for.

    `texts` has one entry for each change, as it is written into a child.
    """

    changes: tuple[Change, ...] = ()
    texts: tuple[str, ...] = ()
    limits: tuple[Limit, ...] = ()


@dataclass(frozen=True, slots=True)
class _Asking:
    formula: Formula
    where: str
    said: str
    own: tuple[Ingredient, ...]


def swap_wanted(
    formula: Formula, text: str, *, where: str = "--swap", own: tuple[Ingredient, ...] = ()
) -> Read[Wanted]:
    r"""What `A=B` asks of a formula; A may have grams in front, and so may B.

    >>> from krume.design.reader import read
    >>> sponge = read("Sponge\n\n40 g ground hazelnuts\n60 g rice starch\n").value
    >>> swap_wanted(sponge, "hazelnut = sunflower").value.texts
    ('ground hazelnuts = ground sunflower kernels',)
    >>> swap_wanted(sponge, "walnut=pecans").problems[0].code
    'no-such-line'
    """
    asking = _Asking(formula, where, text, own)
    goes, sign, comes = text.partition("=")
    if not (sign and goes.strip() and comes.strip()):
        ask = "A swap is typed as A=B: a line of the formula, =, and what comes in for it."
        return _asked(Problem("swap-unread", asking.where, asking.said, ask))
    found = _line(asking, said_of(goes), lambda name: f"{name}={comes.strip()}")
    if isinstance(found, Problem):
        return _asked(found)
    place, mass_g = found
    new = _thing(asking, said_of(comes), lambda name: f"{goes.strip()}={name}")
    if isinstance(new, Problem):
        return _asked(new)
    return _swap(asking, place, mass_g, new)


def cut_wanted(formula: Formula, text: str, *, where: str = "--cut") -> Read[Wanted]:
    r"""What `sugar 20 %` or `sugar -25 g` asks of a formula.

    >>> from krume.design.reader import read
    >>> sponge = read("Sponge\n\n100 g caster sugar\n60 g rice starch\n").value
    >>> cut_wanted(sponge, "sugar 20 %").value.changes[0].mass_g
    20.0
    """
    asking = _Asking(formula, where, text, ())
    said = said_of(text)
    if said.mass_g is None and said.share_pct is None:
        ask = "How much less? Type a share or grams: sugar 20 %, or sugar -25 g."
        return _asked(Problem("cut-unread", asking.where, asking.said, ask))
    found = _line(asking, said, lambda name: text.replace(said.name, name))
    if isinstance(found, Problem):
        return _asked(found)
    place, mass_g = found
    if role_of(formula.lines[place]) == "egg":
        return Read(Wanted(limits=(_egg_limit(formula, place, "No egg is taken out"),)))
    name = formula.lines[place].name
    share = f"{as_text(said.share_pct, 3)} %" if said.share_pct is not None else ""
    words = f"{name} {share or f'{as_text(mass_g, 3)} g'}"
    return Read(Wanted((Change(place, mass_g),), (words,)))


def added_wanted(
    formula: Formula, text: str, *, where: str = "--add", own: tuple[Ingredient, ...] = ()
) -> Read[Wanted]:
    r"""What `60 g apple puree` asks to be added.

    >>> from krume.design.reader import read
    >>> sponge = read("Sponge\n\n100 g caster sugar\n").value
    >>> added_wanted(sponge, "60 g apple puree").value.changes[0].to_g
    60.0
    """
    asking = _Asking(formula, where, text, own)
    said = said_of(text)
    if said.mass_g is None:
        return _asked(
            Problem(
                "add-unread",
                asking.where,
                asking.said,
                "How many grams? Type it as: 60 g apple puree.",
            )
        )
    new = _thing(asking, said, lambda name: f"{as_text(said.mass_g or 0.0, 3)} g {name}")
    if isinstance(new, Problem):
        return _asked(new)
    if new.item.role == "egg":
        return _asked(Problem("egg-comes", asking.where, asking.said, _EGG_COMES))
    change = Change(None, 0.0, new.item.key, new.name, said.mass_g)
    return Read(Wanted((change,), (f"{as_text(said.mass_g, 3)} g {new.name}",)))


def _asked(problem: Problem) -> Read[Wanted]:
    return Read(Wanted(), (problem,))


def _swap(asking: _Asking, place: int, mass_g: float, new: "_Thing") -> Read[Wanted]:
    line = asking.formula.lines[place]
    if role_of(line) == "egg" and new.item.role != "egg" and _carries(asking.formula):
        return Read(
            Wanted(limits=(_egg_limit(asking.formula, place, "Nothing stands in for these eggs"),))
        )
    if new.item.role == "egg" and role_of(line) != "egg":
        return _asked(Problem("egg-comes", asking.where, asking.said, _EGG_COMES))
    old = maybe(line.ingredient, asking.own)
    if old is None or is_blank(old):
        why = "" if old is None else f" ({old.note})"
        ask = f"What {line.name} is made of is not known{why}: nothing can be brought near it."
        return _asked(Problem("composition-unknown", asking.where, asking.said, ask))
    name = _ground(line, new)
    to_g = mass_g if new.mass_g is None else new.mass_g
    part = "" if mass_g == line.mass_g else f"{as_text(mass_g, 3)} g "
    given = "" if new.mass_g is None else f"{as_text(new.mass_g, 3)} g "
    change = Change(place, mass_g, new.item.key, name, to_g)
    return Read(Wanted((change,), (f"{part}{line.name} = {given}{name}",)))


_EGG_COMES = "An egg comes whole, by its size: add its line to the formula itself, 1 egg, EU M."


def _carries(formula: Formula) -> bool:
    return carrier_of(balance(formula).family).kind != "bind"


def egg_text(formula: Formula) -> str:
    """What the eggs of a formula carry, and that nothing here is known to do it instead."""
    carrier = carrier_of(balance(formula).family)
    what = "hold that foam" if carrier.kind == "foam" else "do that"
    return (
        f"{carrier.carries}: no swap here is known to {what}. How another thing whips, sets and "
        "tastes is not known from composition. A small trial first, with one egg's worth."
    )


def _egg_limit(formula: Formula, place: int, wish: str) -> Limit:
    return Limit(formula.lines[place], egg_text(formula), wish)


def _line(
    asking: _Asking, said: Said, as_answer: Callable[[str], str]
) -> tuple[int, float] | Problem:
    """Place of the line that goes, and how much of it, or what is asked about it."""
    formula = asking.formula
    places = lines_named(formula, said.name)
    if len(places) != 1:
        offered = places or _alike(asking, said.name)
        names = dict.fromkeys(formula.lines[at].name for at in offered)
        listed = ", ".join(names if places else dict.fromkeys(x.name for x in formula.lines))
        if places:
            ask = f"“{said.name}” may be {listed}. Which line is it?"
        else:
            ask = f"{formula.name or 'The formula'} has no line “{said.name}”. Its lines: {listed}."
        options = tuple(Option(name, as_answer(name)) for name in names)
        if places:
            return Problem("which-line", asking.where, asking.said, ask, options)
        return Problem("no-such-line", asking.where, asking.said, ask, options)
    return _amount(asking, said, places[0])


def _alike(asking: _Asking, name: str) -> tuple[int, ...]:
    """Places of lines that do the same as the thing a name means."""
    key = find(name, own=asking.own).key
    role = None if key is None else known(key, asking.own).role
    lines = enumerate(asking.formula.lines)
    return tuple(at for at, line in lines if role is not None and role_of(line) == role)


def _amount(asking: _Asking, said: Said, place: int) -> tuple[int, float] | Problem:
    line = asking.formula.lines[place]
    if line.mass_g is None:
        ask = f"“{line.read}” has no mass: write its grams into the formula first."
        return Problem("mass-unknown", asking.where, asking.said, ask)
    mass_g = line.mass_g if said.mass_g is None else said.mass_g
    if said.share_pct is not None:
        mass_g = line.mass_g * said.share_pct / 100
    if not 0 < mass_g <= line.mass_g + _DUST_G:
        ask = f"{as_text(mass_g, 3)} g of {line.name}? The formula has {as_text(line.mass_g, 3)} g."
        return Problem("too-much", asking.where, asking.said, ask)
    return place, min(mass_g, line.mass_g)


@dataclass(frozen=True, slots=True)
class _Thing:
    """What comes: its row of the pantry, its name on a line, grams where they were given."""

    item: Ingredient
    name: str
    mass_g: float | None


def _thing(asking: _Asking, said: Said, as_answer: Callable[[str], str]) -> _Thing | Problem:
    """What comes in, or what is asked about it; a blank composition is named."""
    found = find(said.name, own=asking.own)
    if found.key is None:
        options = tuple(
            Option(choice.label, as_answer(choice.words)) for choice in found.choices if choice.key
        )
        return Problem(
            "what-comes", asking.where, asking.said, _question(said.name, found), options
        )
    item = known(found.key, asking.own)
    if is_blank(item):
        why = item.note or "no table has a row of it"
        ask = f"What {item.label_name} is made of is not known ({why}): it is not swapped blind."
        return Problem("composition-unknown", asking.where, asking.said, ask)
    grams = said.mass_g
    if said.share_pct is not None or (
        grams is not None and not 0 < grams <= limit("heaviest-line")
    ):
        return Problem(
            "what-comes",
            asking.where,
            asking.said,
            f"How many grams of {said.name}? Type grams, or none.",
        )
    return _Thing(item, _name(said.name, item), grams)


def _question(name: str, found: Found) -> str:
    if found.good is not None:
        return (
            f"{found.good.name} is known by name alone: what it is made of is not, so nothing can "
            "be brought near the parent. A supplier's sheet in the book opens it."
        )
    return found.question or f"“{name}” is not known to the pantry."


def _name(words: str, item: Ingredient) -> str:
    """A name that is read as the same thing: the person's, or the fuller one of the pantry."""
    if len(words.split()) == 1 and find(item.label_name).key == item.key:
        return item.label_name
    return words


def _ground(line: Line, new: _Thing) -> str:
    """What stands in for a ground nut is ground too."""
    name = f"{_GROUND}{new.name}"
    is_paste = any(word in _PASTES for word in new.item.key.split("-"))
    if is_paste or new.item.role != "nut" or not line.name.casefold().startswith(_GROUND):
        return new.name
    same = not new.name.casefold().startswith(_GROUND) and find(name).key == new.item.key
    return name if same else new.name


def together(reads: Iterable[Read[Wanted]]) -> Read[Wanted]:
    """Several wishes as one, with all their questions; a line is not given away twice."""
    kept = list(reads)
    problems = [problem for each in kept for problem in each.problems]
    changes = tuple(change for each in kept for change in each.value.changes)
    texts = tuple(text for each in kept for text in each.value.texts)
    limits = tuple(dict.fromkeys(limit for each in kept for limit in each.value.limits))
    return Read(Wanted(changes, texts, limits), tuple(problems))


def given_twice(formula: Formula, wanted: Wanted, where: str) -> tuple[Problem, ...]:
    """Questions about lines of which more is given away than they have."""
    gone: dict[int, float] = {}
    for change in wanted.changes:
        if change.line is not None:
            gone[change.line] = gone.get(change.line, 0.0) + change.mass_g
    return tuple(
        Problem(
            "too-much",
            where,
            formula.lines[at].read,
            f"{as_text(mass_g, 3)} g of {formula.lines[at].name} are given away; the formula has "
            f"{as_text(formula.lines[at].mass_g or 0.0, 3)} g.",
        )
        for at, mass_g in gone.items()
        if mass_g > (formula.lines[at].mass_g or 0.0) + _DUST_G
    )
