"""From names of orders, tortes and formulas to what they want of eggs, formula by formula."""

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date

from krume.base import Infeasible, Interval, NotFoundError, Notice, Option, Problem, as_text
from krume.build import ComponentFormula
from krume.design import Formula, Line, family
from krume.pantry import egg_size_named, ingredient
from krume.plan import EggNeed, Taker, batches_made, each_g, egg_good
from krume.store import book_at, list_texts, studio_of
from krume.usecases.asking.answer import Asked, clash_problems
from krume.usecases.asking.kind import answers_for
from krume.usecases.asking.read import formula_of
from krume.usecases.sold.product import Sold, SoldRead, sold_of
from krume.usecases.torte.build import component, torte_of

_TIMES = re.compile(r"^(?P<name>.+?)\s*[*×]\s*(?P<count>\d{1,4}(?:\.\d{1,3})?)$")
_CREAM_STEP = 0.5


@dataclass(frozen=True, slots=True)
class EggFormula:
    """A formula of the request: how often it is made, and of that how much goes into tortes.

    `goes_in` is the share of the batches that goes in; `day` is the order's day.
    """

    name: str
    formula: Formula
    part: ComponentFormula
    batches: float
    goes_in: float
    day: date | None

    @property
    def is_cream(self) -> bool:
        """Whether it is a cream, made in halves too."""
        return self.part.family is not None and family(self.part.family).kind == "cream"


@dataclass(frozen=True, slots=True)
class EggsAsked:
    """What a request comes to: titles, formulas, and all that is asked or was taken as read."""

    titles: tuple[str, ...]
    formulas: tuple[EggFormula, ...]
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]
    sources: tuple[str, ...]
    is_possible: bool

    @property
    def first_day(self) -> date | None:
        """The first day that is known."""
        return min((f.day for f in self.formulas if f.day is not None), default=None)

    def day_number(self, day: date | None) -> int:
        """Days after the first; a formula without a day is made on the first."""
        return 0 if day is None or self.first_day is None else (day - self.first_day).days


def eggs_asked(names: tuple[str, ...], asked: Asked) -> EggsAsked:
    """Read every name, `F1*12` twelve times, and put the batches of a formula and day together."""
    reads = [_read(name, asked, several=len(names) > 1) for name in names]
    found: dict[tuple[str, date | None], EggFormula] = {}
    creams_g: dict[tuple[str, date | None], float] = {}
    problems = [*_twice(reads), *(p for read, _, _ in reads for p in read.problems)]
    possible = True
    for read, times, _ in reads:
        day = read.order.date if read.order is not None else None
        possible = possible and read.is_possible
        for sold in read.sold:
            clashes = _add(sold, times * sold.count, day, asked, (found, creams_g))
            problems += clashes
            possible = possible and not clashes
    notices = [
        replace(n, where=f"{name} {n.where}".strip() if len(names) > 1 else n.where)
        for read, _, name in reads
        for n in read.notices
    ]
    return EggsAsked(
        tuple(_title(read, times) for read, times, _ in reads),
        tuple(_poured(each, creams_g.get(key)) for key, each in found.items()),
        tuple(dict.fromkeys(problems)),
        tuple(dict.fromkeys(notices)),
        tuple(dict.fromkeys(s for read, _, _ in reads for s in read.sources)),
        possible,
    )


def _read(said: str, asked: Asked, *, several: bool) -> tuple[SoldRead, float, str]:
    found = _TIMES.match(said.strip())
    name, times = (said, 1.0) if found is None else (found["name"], float(found["count"]))
    read = sold_of(name, answers_for(name, asked) if several else asked)
    if several:
        problems = tuple(replace(p, where=f"{name} {p.where}") for p in read.problems)
        read = replace(read, problems=problems)
    return read, times, name


def _twice(reads: Iterable[tuple[SoldRead, float, str]]) -> Iterator[Problem]:
    """An order is promised once; a formula may be named again."""
    seen = set()
    for read, _, name in reads:
        if read.kind == "order" and read.title.casefold() in seen:
            ask = f"There are two orders called {read.title}. Name each order once."
            yield Problem("order-twice", "ORDER", name, ask)
        seen.add(read.title.casefold())


def _title(read: SoldRead, times: float) -> str:
    lines = "" if read.order is None else ", ".join(f"{x.count} {x.what}" for x in read.order.lines)
    title = f"{read.title}: {lines}" if lines else read.title
    return title if times == 1 else f"{as_text(times, 3)} × {title}"


def _add(
    sold: Sold,
    times: float,
    day: date | None,
    asked: Asked,
    into: tuple[dict[tuple[str, date | None], EggFormula], dict[tuple[str, date | None], float]],
) -> tuple[Problem, ...]:
    """Add what one thing is made of; the clashes of a torte that cannot be."""
    found, creams_g = into
    if sold.product.kind != "torte":
        (formula,) = sold.formulas.values()
        _count(found, (sold.name, day), formula, times)
        return ()
    torte = torte_of(sold.source or sold.name, answers_for(sold.name, asked)).torte
    if isinstance(torte, Infeasible):
        return clash_problems(torte, sold.name)
    for batch in torte.batches:
        key, formula = (batch.name, day), sold.formulas[batch.name]
        cakes = batch.batches if batch.kind == "cake" else 0.0
        _count(found, key, formula, (cakes or 0.0) * times)
        if batch.kind != "cake" and batch.needed_g is not None:
            creams_g[key] = creams_g.get(key, 0.0) + batch.needed_g * times
    return ()


def _count(
    found: dict[tuple[str, date | None], EggFormula],
    key: tuple[str, date | None],
    formula: Formula,
    times: float,
) -> None:
    before = found.get(key)
    if before is None:
        part = component(key[0], formula)
        found[key] = EggFormula(key[0], formula, part, times, 1.0, key[1])
    else:
        found[key] = replace(before, batches=before.batches + times)


def _poured(each: EggFormula, needed_g: float | None) -> EggFormula:
    """A cream of several tortes of one day is made together, beside what is asked for itself."""
    batch_g = each.part.total_g
    if needed_g is None or not batch_g:
        return each
    made = batches_made(needed_g, batch_g)
    share = (needed_g / batch_g + each.batches) / (made + each.batches)
    return replace(each, batches=each.batches + made, goes_in=share)


def egg_needs(asked: EggsAsked, size: str | None) -> tuple[EggNeed, ...]:
    """What is cracked for each formula; eggs written in grams are of the size given, if any."""
    return tuple(
        need
        for each in asked.formulas
        for line in each.formula.lines
        if (need := _need(each, line, size, asked.day_number(each.day))) is not None
    )


def _need(each: EggFormula, line: Line, size: str | None, day: int) -> EggNeed | None:
    bare = EggNeed(
        each.name, "whole", 0.0, each.batches, family=each.part.family, day=day,
        sugar_g=_sugar_g(each.formula),
    )  # fmt: skip
    good = egg_good(line.ingredient)
    if each.batches <= 0 or good is None or good[1] != "shell":
        return None
    part = line.part or good[0]
    if line.basis == "egg" and line.amount is not None:
        count = line.amount.high if isinstance(line.amount, Interval) else float(line.amount)
        if line.egg_size is None or count <= 0:
            return None
        mass_g = count * each_g(line.egg_size, part)
        return replace(bare, part=part, mass_g=mass_g, size=line.egg_size, count=count)
    if not line.mass_g:
        return None
    share = None if size is None else line.mass_g / each_g(size, part)
    return replace(bare, part=part, mass_g=line.mass_g, size=size, count=share)


def _sugar_g(formula: Formula) -> float:
    return sum(line.mass_g or 0.0 for line in formula.lines if _role(line) == "sugar")


def _role(line: Line) -> str:
    try:
        return "" if line.ingredient is None else ingredient(line.ingredient).role
    except NotFoundError:
        return ""


def ranges_taken(asked: EggsAsked) -> Iterator[Notice]:
    """Counts written as a range: the larger number is bought."""
    for each in asked.formulas:
        for line in each.formula.lines:
            if line.basis == "egg" and isinstance(line.amount, Interval):
                text = f"{line.read}: {as_text(line.amount.high, 2)} are taken, so it is enough."
                yield Notice("egg-range", text, f"{each.name} line {line.number}")


def unsized(asked: EggsAsked) -> tuple[Problem, ...]:
    """Egg lines whose grams nobody knows, where the reader asked nothing of its own."""
    found = []
    for each in asked.formulas:
        for line in each.formula.lines:
            good = egg_good(line.ingredient)
            if good is not None and line.mass_g is None:
                where = f"{each.name} line {line.number}"
                ask = f"How much egg is '{line.read}' of {each.name}? Type a count and a size."
                options = (Option("EU M", "1 egg, EU M"), Option("US Large", "1 egg, US Large"))
                found.append(Problem("egg-size-missing", where, line.read, ask, options))
    return tuple(found)


def size_in_play(asked: EggsAsked, within: Asked) -> str | None:
    """Size that eggs in grams are taken from: the only one written, else the studio's."""
    sizes = {line.egg_size for each in asked.formulas for line in each.formula.lines}
    sizes.discard(None)
    if len(sizes) == 1:
        return sizes.pop()
    studio = studio_of(book_at(within.book))
    named = egg_size_named(studio.egg_size or "", studio.eggs_region)
    return named[0].key if len(named) == 1 else None


def liquids_wanted(each: EggFormula, form: str = "pasteurised") -> dict[str, float]:
    """Grams of white, yolk and whole egg out of a pack that one batch is written with."""
    grams: dict[str, float] = {}
    for line in each.formula.lines:
        good = egg_good(line.ingredient)
        if good is not None and good[1] == form and line.mass_g is not None:
            grams[good[0]] = grams.get(good[0], 0.0) + line.mass_g
    return grams


def own_takers(asked: EggsAsked) -> tuple[Taker, ...]:
    """The request's own formulas: what they are written to take out of a pack."""
    return tuple(_taker(each, asked.day_number(each.day)) for each in asked.formulas)


def _taker(each: EggFormula, day: int) -> Taker:
    wanted = liquids_wanted(each)
    made_g = {part: mass * each.batches for part, mass in wanted.items()}
    return Taker(
        formula=each.name,
        title=each.part.title,
        family=each.part.family or "",
        wants_g={part: mass * each.goes_in for part, mass in made_g.items()},
        made_g=made_g,
        is_ordered=True,
        batch_g=egg_parts_g(each.formula),
        step_batches=_CREAM_STEP if each.is_cream else 1.0,
        day=day,
    )


def egg_parts_g(formula: Formula) -> dict[str, float]:
    """Grams of white, yolk and whole egg in one batch, from the shell or from a pack."""
    grams: dict[str, float] = {}
    for line in formula.lines:
        good = egg_good(line.ingredient)
        if good is not None and line.mass_g is not None:
            part = line.part or good[0]
            grams[part] = grams.get(part, 0.0) + line.mass_g
    return grams


def book_takers(known: Iterable[str], within: Asked) -> Iterator[Taker]:
    """Formulas of the book that are not made already."""
    names = {name.casefold() for name in known}
    for text in list_texts(book_at(within.book)):
        if text.kind != "formula" or text.name.casefold() in names:
            continue
        formula = formula_of(str(text.path), Asked(book=within.book)).formula
        part = component(text.name, formula)
        if part.family is not None:
            step = _CREAM_STEP if family(part.family).kind == "cream" else 1.0
            yield Taker(
                text.name, part.title, part.family, {}, {},
                is_ordered=False, batch_g=egg_parts_g(formula), step_batches=step,
            )  # fmt: skip
