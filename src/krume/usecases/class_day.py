"""A class on its day: seats with a health note, kits, loads, foams, creams and what clashes."""

import math
import re
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from krume.base import Infeasible, as_text
from krume.build import Order, Torte, read_clock, read_order, working
from krume.design import Formula, egg_lines, family
from krume.evidence import figures
from krume.label import Diet, DietFinding, read_diets
from krume.pantry import EggSize, egg_size_named
from krume.store import book_at
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import formula_of
from krume.usecases.asking.remembering import Remembered
from krume.usecases.asking.text import book_text
from krume.usecases.eggs.eggs import EggsWish, eggs_of
from krume.usecases.formula.size import scale_step_g
from krume.usecases.sheets.blend_card import blend_lines
from krume.usecases.sold.gluten_words import gluten_of_all
from krume.usecases.sold.order import NUT_DIETS, judge_order, spoken
from krume.usecases.sold.product import sold_of
from krume.usecases.torte.build import torte_of

_NUMBERS = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8}
_COUNT = rf"(\d+|{'|'.join(_NUMBERS)})"
_PER_LOAD = re.compile(rf"\b{_COUNT}\s+\w+\s+(?:a|per)\s+load\b", re.IGNORECASE)
_MINUTES = re.compile(r"(\d+(?:\s*\+\s*\d+)*)\s*min\b", re.IGNORECASE)
_LOADS = re.compile(rf"\b{_COUNT}\s+loads?\b", re.IGNORECASE)
_WHOLE = re.compile(r"\d+")
_SENTENCE = re.compile(r"(?<=[.!?])\s+")
_EGG_WORDS = re.compile(
    r"\b((?:US|EU)\s+(?:extra[- ]large|XL|large|medium|small|[SML]))\b", re.IGNORECASE
)
_OWN_SHEET = "teacher"
_HELD = ("contains", "caution")
_NOTHING_MADE = "It was held against nothing: the class names no formula or torte of the book."


@dataclass(frozen=True, slots=True)
class SeatNote:
    """What one learner said of themselves, what it means here, and what opens it."""

    said: str
    text: str
    opens: str
    is_against: bool


@dataclass(frozen=True, slots=True)
class KitLine:
    """One line of a kit's bag, and of the blend for all kits."""

    name: str
    each_g: float
    all_g: float


@dataclass(frozen=True, slots=True)
class ClassKits:
    """The dry bags: one for each kit, weighed out of one blend; eggs are not in the bag."""

    of: str
    count: int
    lines: tuple[KitLine, ...]
    portion_g: float
    all_g: float
    dust_pct: float
    weigh_g: float
    eggs: str
    egg_words: str


@dataclass(frozen=True, slots=True)
class ClassLoads:
    """The loads of the class, one after another, and when each foam begins."""

    per_load: int
    count: int
    parts_min: tuple[float, ...]
    each_min: float
    total_min: float
    foams: tuple[str, ...]
    has_own_sheet: bool


@dataclass(frozen=True, slots=True)
class ClassCream:
    """One cream or syrup for all learners: grams, and how many batches that is."""

    name: str
    title: str
    each_g: float
    all_g: float
    batch_g: float | None
    batches: float | None


@dataclass(frozen=True, slots=True)
class ClassDay:
    """A class as its own text says it, worked out; None or empty is not said."""

    day: date | None
    begins: time | None
    ends: time | None
    learners: int | None
    formula: str
    torte: str
    seats: tuple[SeatNote, ...]
    kits: ClassKits | None
    loads: ClassLoads | None
    creams: tuple[ClassCream, ...]
    clashes: tuple[str, ...]
    gluten: tuple[tuple[str, str], ...]


_DAYS: Remembered[ClassDay] = Remembered(16)


def class_day(text: str, asked: Asked) -> ClassDay:
    """The day of a class, from its text and the formulas and tortes it names."""
    return _DAYS.of(book_at(asked.book), (text, asked), lambda: _class_day(text, asked))


def _class_day(text: str, asked: Asked) -> ClassDay:
    order = read_order(text).value
    formula = next((line.what for line in order.lines), "")
    made = _formula(formula, asked)
    torte_name, torte = _torte(order, asked)
    learners = _first(order.keys.get("learners", ""))
    begins, ends = _hours(order)
    kits = _kits(order, made, asked)
    loads = _loads(order, learners, begins)
    creams = _creams(torte, learners)
    return ClassDay(
        day=order.date,
        begins=begins,
        ends=ends,
        learners=learners,
        formula=formula if made is not None else "",
        torte=torte_name,
        seats=_seats(order, made, _places(order, made, torte_name, torte), asked),
        kits=kits,
        loads=loads,
        creams=creams,
        clashes=(
            *_not_in_bag(made, kits),
            *_clashes(order, learners, kits, loads, creams, (begins, ends), asked),
        ),
        gluten=tuple(gluten_of_all(f"tortes/{torte_name}.txt", asked).items())
        if torte_name
        else (),
    )


def _formula(name: str, asked: Asked) -> Formula | None:
    found = book_text(name, book_at(asked.book)) if name else None
    if found is None or found.kind != "formula":
        return None
    return formula_of(f"formulas/{found.name}.txt", asked).formula


def _torte(order: Order, asked: Asked) -> tuple[str, Torte | None]:
    """The torte that each learner makes, where the text names one of the book."""
    for word in re.findall(r"[\w-]+", order.keys.get("each makes", "")):
        found = book_text(word, book_at(asked.book))
        if found is not None and found.kind == "torte":
            torte = torte_of(f"tortes/{found.name}.txt", asked).torte
            return found.name, None if isinstance(torte, Infeasible) else torte
    return "", None


def _first(text: str) -> int | None:
    found = _WHOLE.search(text)
    return None if found is None else int(found[0])


def _count(text: str) -> int:
    return int(text) if text.isdigit() else _NUMBERS[text.casefold()]


def _hours(order: Order) -> tuple[time | None, time | None]:
    start, _, end = order.keys.get("time", "").partition(" to ")
    return (read_clock(start) if start else None), (read_clock(end) if end else None)


def _kits(order: Order, formula: Formula | None, asked: Asked) -> ClassKits | None:
    """The bags by the order's own count; a line without grams stays out, and that is said."""
    line = next(iter(order.lines), None)
    if formula is None or line is None:
        return None
    rows = [row for row, _ in blend_lines(formula, scale_g=scale_step_g(asked))]
    known = [(row.name, row.mass_g) for row in rows if row.mass_g is not None]
    portion = math.fsum(mass for _, mass in known)
    dust = figures("blend.csv")["dust"].value
    eggs = eggs_of((f"{line.what}*{line.count}",), EggsWish(), asked).result
    whole = portion * line.count
    return ClassKits(
        of=line.what,
        count=line.count,
        lines=tuple(KitLine(n, mass, mass * line.count) for n, mass in known),
        portion_g=portion,
        all_g=whole,
        dust_pct=dust,
        weigh_g=whole * (1 + dust / 100),
        eggs=", ".join(f"{each.count} {each.label}" for each in eggs.buy),
        egg_words=" ".join(each.text for each in eggs.spread),
    )


def _not_in_bag(formula: Formula | None, kits: ClassKits | None) -> tuple[str, ...]:
    """What the bags are without because nobody knows its grams."""
    open_ = [line.name for line in formula.lines if line.mass_g is None] if formula else []
    if kits is None or not open_:
        return ()
    return (f"The bags are without {', '.join(open_)}: no grams are known. Add them in {kits.of}.",)


def _loads(order: Order, learners: int | None, begins: time | None) -> ClassLoads | None:
    said = order.keys.get("oven", "")
    per, minutes = _PER_LOAD.search(said), _MINUTES.search(said)
    if per is None or minutes is None or learners is None:
        return None
    per_load = _count(per[1])
    parts = tuple(float(n) for n in _WHOLE.findall(minutes[1]))
    count, each = math.ceil(learners / per_load), math.fsum(parts)
    start = datetime.combine(date.min, begins) if begins is not None else None
    foams = () if start is None else tuple(
        f"{start + timedelta(minutes=each * n):%H:%M}" for n in range(count)
    )  # fmt: skip
    return ClassLoads(
        per_load, count, parts, each, each * count, foams,
        _OWN_SHEET in order.keys.get("kits", "").casefold(),
    )  # fmt: skip


def _creams(torte: Torte | None, learners: int | None) -> tuple[ClassCream, ...]:
    if torte is None or learners is None:
        return ()
    found = []
    for batch in torte.batches:
        if batch.kind == "cake" or batch.needed_g is None:
            continue
        whole = batch.needed_g * learners
        batches = whole / batch.batch_g if batch.batch_g else None
        found.append(
            ClassCream(batch.name, batch.title, batch.needed_g, whole, batch.batch_g, batches)
        )
    return tuple(found)


def _seats(
    order: Order, formula: Formula | None, places: list[str], asked: Asked
) -> tuple[SeatNote, ...]:
    """Each diet that was told, held against all that is made; and eggs that are brought along."""
    judged = [judge_order(sold_of(place, asked), order, asked) for place in places]
    findings = [finding for each in judged for finding in each.findings]
    kitchen = [line for each in judged for line in each.kitchen]
    notes = []
    for diet in read_diets(spoken(order)):
        beside = kitchen if diet.key in NUT_DIETS else []
        notes.append(_seat(diet, findings, beside if places else [_NOTHING_MADE]))
    return (*notes, *_own_eggs(order, formula))


def _places(order: Order, made: Formula | None, torte_name: str, torte: Torte | None) -> list[str]:
    """What is made: the torte, and the formula of the kits where it is no part of it."""
    places = [f"tortes/{torte_name}.txt"] if torte_name else []
    parts = () if torte is None else tuple(batch.name for batch in torte.batches)
    if made is not None and order.lines[0].what not in parts:
        places.append(f"formulas/{order.lines[0].what}.txt")
    return places


def _seat(diet: Diet, findings: list[DietFinding], beside: list[str]) -> SeatNote:
    """One diet with all that stands against it, may, or is not known; `beside` is said as well."""
    mine = [each for each in findings if each.diet.key == diet.key]
    held = [each for each in mine if each.verdict in _HELD]
    is_against = any(each.verdict == "contains" for each in held)
    said = [f"{each.piece} holds {', '.join(each.what)}." for each in held]
    said += [each.text for each in mine if each not in held]
    opens = [_opens(diet.key)] if is_against else []
    opens += [f"Open: {each.opens}" for each in mine if each not in held and each.opens]
    text = " ".join(dict.fromkeys((*said, *beside, diet.caution))).strip()
    return SeatNote(diet.words, text, " ".join(dict.fromkeys(opens)), is_against)


def _opens(key: str) -> str:
    if key == "vegetarian":
        return (
            "Open: which cream sets without gelatine? Write it into the book, or ask the learner."
        )
    return "Open: what is made in its place? Ask before the day."


def _own_eggs(order: Order, formula: Formula | None) -> list[SeatNote]:
    """Eggs of another size that are brought along, against the grams that are planned."""
    eggs = () if formula is None else egg_lines(formula)
    if len(eggs) != 1 or eggs[0].count is None:
        return []
    plan = eggs[0].count * eggs[0].each_g
    notes = []
    for note in order.notes:
        for sentence in _SENTENCE.split(note):
            size = _size_in(sentence)
            if size is None:
                continue
            mass = eggs[0].count * size.whole_g.best
            off = 100 * (mass / plan - 1)
            side = "under" if off < 0 else "over"
            text = (
                f"{as_text(eggs[0].count)} {size.label} are {as_text(mass, 1)} g shelled, "
                f"{as_text(abs(off), 1)} % {side} the {as_text(plan, 1)} g that are planned: "
                "weigh them."
            )
            notes.append(SeatNote(sentence.rstrip("."), text, "", is_against=False))
    return notes


def _size_in(sentence: str) -> EggSize | None:
    found = _EGG_WORDS.search(sentence)
    sizes = () if found is None else egg_size_named(found[1])
    return sizes[0] if len(sizes) == 1 else None


def _clashes(
    order: Order,
    learners: int | None,
    kits: ClassKits | None,
    loads: ClassLoads | None,
    creams: tuple[ClassCream, ...],
    hours: tuple[time | None, time | None],
    asked: Asked,
) -> tuple[str, ...]:
    """What does not agree: with itself, with the oven, with the hours."""
    said: list[str] = []
    told = [int(n) for n in _WHOLE.findall(order.keys.get("kits", ""))]
    if kits is not None and told and sum(told) != kits.count:
        said.append(f"The kits come to {sum(told)}, and {kits.count} {kits.of} are to be made.")
    length = _minutes(*hours)
    if learners is None:
        said.append("How many learners come? Type a line such as: Learners: 8")
    if loads is not None:
        stated = _LOADS.search(order.keys.get("oven", ""))
        if stated is not None and _count(stated[1]) != loads.count:
            said.append(
                f"{learners} learners are {loads.count} loads of {loads.per_load}; "
                f"the text says {stated[1]}."
            )
        if length is not None and loads.total_min > length:
            said.append(
                f"The loads take {as_text(loads.total_min)} min, the class {as_text(length)}."
            )
    return (*said, *(_sets(each, length, asked) for each in creams if _set_h(each, asked)))


def _minutes(begins: time | None, ends: time | None) -> float | None:
    if begins is None or ends is None:
        return None
    day = date.min
    passed = datetime.combine(day, ends) - datetime.combine(day, begins)
    return passed.total_seconds() / 60


def _set_h(cream: ClassCream, asked: Asked) -> float | None:
    found = _formula(cream.name, asked)
    known = None if found is None else found.family
    if known is None or family(known).kind != "cream":
        return None
    return working(known).set_h


def _sets(cream: ClassCream, length: float | None, asked: Asked) -> str:
    hours = as_text(_set_h(cream, asked) or 0.0)
    lasts = "" if length is None else f", and the class lasts {as_text(length / 60)} h"
    return (
        f"{cream.name} wants {hours} h cold before it is cut{lasts}: the cakes go home uncut in a "
        "cold bag, and the card says “cut tomorrow”."
    )
