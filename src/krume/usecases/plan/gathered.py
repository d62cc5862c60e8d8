"""From the names of orders to what must be made: promises, formulas, and all that is asked."""

from dataclasses import dataclass, field, replace
from datetime import datetime, timedelta

from krume.base import Infeasible, Interval, Notice, Option, Problem
from krume.build import (
    ComponentFormula,
    HandOver,
    Order,
    OrderLine,
    Torte,
    read_clock,
    read_order,
    working,
)
from krume.design import Formula, Line, family
from krume.plan import CreamUse, PlannedFormula, PlannedTorte, Promise, usual
from krume.size import tin_text
from krume.store import book_at
from krume.usecases.asking.answer import Asked, QuestionError, clash_problems
from krume.usecases.asking.kind import PROMISES, answers_for, kind_of, text_inside
from krume.usecases.asking.read import FormulaRead, formula_of
from krume.usecases.asking.text import PLACE, Text, text_of
from krume.usecases.bake.bake import bake_formula
from krume.usecases.bake.own_cooling import own_cooling_min
from krume.usecases.bake.wish import BakeWish
from krume.usecases.formula.size import density_of
from krume.usecases.plan.cooling import cooling_notices
from krume.usecases.torte.build import component, parts_of, torte_of


@dataclass(frozen=True, slots=True)
class ReadOrder:
    """An order as read, with its text and the name it goes by."""

    name: str
    order: Order
    source: Text
    ready: datetime | None


@dataclass(slots=True)
class Gathered:
    """Everything the orders come to, gathered line by line."""

    asked: Asked
    promises: list[Promise] = field(default_factory=list)
    orders: list[ReadOrder] = field(default_factory=list)
    formulas: dict[str, PlannedFormula] = field(default_factory=dict)
    read: dict[str, FormulaRead] = field(default_factory=dict)
    needs_g: dict[str, float] = field(default_factory=dict)
    cakes: dict[str, int] = field(default_factory=dict)
    used_by: dict[str, list[str]] = field(default_factory=dict)
    problems: list[Problem] = field(default_factory=list)
    notices: list[Notice] = field(default_factory=list)
    is_possible: bool = True


def gather(names: tuple[str, ...], asked: Asked, now: datetime) -> Gathered:
    """Read the orders and everything in them."""
    gathered = Gathered(asked)
    several = len(names) > 1
    for name in names:
        found = _order(name, asked, gathered, now, prefix=f"{name} " if several else "")
        if found is None:
            continue
        if any(found.name.casefold() == other.name.casefold() for other in gathered.orders):
            ask = f"There are two orders called {found.name}. Name each order once."
            gathered.problems.append(Problem("order-twice", "ORDER", name, ask))
            continue
        gathered.orders.append(found)
        _add_lines(found, gathered)
    return gathered


def _order(
    name: str, asked: Asked, gathered: Gathered, now: datetime, *, prefix: str
) -> ReadOrder | None:
    within = answers_for(name, asked) if prefix else _own(asked)
    source = text_of(name, within)
    kind = source.kind or kind_of(source.text)
    if kind not in PROMISES:
        ask = f"{source.name} is no order, it is a text of kind {kind}. Name an order."
        raise QuestionError(Problem("no-order", PLACE, name, ask))
    read = read_order(source.text)
    order = read.value
    problems = (*source.problems, *read.problems, *_missing(order), *_past(order, now))
    gathered.problems += [replace(p, where=f"{prefix}{p.where}") for p in problems]
    gathered.notices += [
        replace(n, where=f"{prefix}{n.where}".strip()) for n in (*source.notices, *read.notices)
    ]
    ready = _ready(order)
    title = source.name if source.kind else order.name or source.name
    return ReadOrder(title, order, source, ready)


def _own(asked: Asked) -> Asked:
    """Answers to the order's own lines, not to the texts inside it."""
    own = tuple(a for a in asked.answers if a.startswith(("line ", "after line ", "-", PLACE)))
    return replace(asked, answers=own)


def _missing(order: Order) -> tuple[Problem, ...]:
    if order.hand_over is not None:
        return ()
    ask = "At what time is it handed over? Type a line such as: Hand-over: 14:00, pick-up"
    return (Problem("time-missing", "after line 1", order.name or "", ask, _ends(order)),)


def _ends(order: Order) -> tuple[Option, ...]:
    """A class says its hours: what is made in it is ready when it ends."""
    end = order.keys.get("time", "").rpartition(" to ")[2]
    clock = read_clock(end)
    if clock is None:
        return ()
    return (Option(f"{clock:%H:%M}, when it ends", f"Hand-over: {clock:%H:%M}, pick-up"),)


def _ready(order: Order) -> datetime | None:
    """When it must stand boxed: at the hand-over, or before the drive of a delivery."""
    over: HandOver | None = order.hand_over
    if order.date is None or over is None or over.time is None:
        return None
    moment = datetime.combine(order.date, over.time)
    drive = over.drive_min if over.way == "delivery" else None
    return moment - timedelta(minutes=drive or 0.0)


def _past(order: Order, now: datetime) -> tuple[Problem, ...]:
    ready = _ready(order)
    if ready is None or ready > now.replace(tzinfo=None):
        return ()
    line = next((line for line in order.source_lines if line.key == "date"), None)
    ask = (
        f"It had to stand ready on {ready:%A %Y-%m-%d at %H:%M}, and it is "
        f"{now:%Y-%m-%d %H:%M} now. Correct the date, or plan as of an earlier day with --on."
    )
    where = "after line 1" if line is None else line.where
    return (Problem("order-past", where, "" if line is None else line.text, ask),)


def _add_lines(found: ReadOrder, gathered: Gathered) -> None:
    tortes: list[tuple[PlannedTorte, int]] = []
    for line in found.order.lines:
        torte = _line(line, found.source, gathered)
        if torte is not None:
            tortes.append((torte, line.count))
            for name, count in torte.cakes:
                gathered.cakes[name] = gathered.cakes.get(name, 0) + count * line.count
            for use in torte.creams:
                more = use.mass_g * line.count
                gathered.needs_g[use.formula] = gathered.needs_g.get(use.formula, 0.0) + more
            for name in dict.fromkeys(
                (*(n for n, _ in torte.cakes), *(u.formula for u in torte.creams))
            ):
                users = gathered.used_by.setdefault(name, [])
                if found.name not in users:
                    users.append(found.name)
    if found.ready is not None and tortes:
        gathered.promises.append(Promise(found.name, found.ready, _merged(tortes)))


def _merged(tortes: list[tuple[PlannedTorte, int]]) -> tuple[tuple[PlannedTorte, int], ...]:
    """Lines that name the same torte, together."""
    counts: dict[str, int] = {}
    first: dict[str, PlannedTorte] = {}
    for torte, count in tortes:
        first.setdefault(torte.name, torte)
        counts[torte.name] = counts.get(torte.name, 0) + count
    return tuple((first[name], count) for name, count in counts.items())


def _line(line: OrderLine, source: Text, gathered: Gathered) -> PlannedTorte | None:
    within = answers_for(line.what, gathered.asked)
    found = text_inside(line.what, source, book_at(gathered.asked.book))
    if found is None:
        ask = (
            f"The book has no text called {line.what}. Add it to the book's tortes or formulas, "
            "or correct the name."
        )
        gathered.problems.append(Problem("not-found", f"line {line.number}", line.read, ask))
        return None
    if found.kind == "torte":
        return _torte(line, found.place, within, gathered)
    read = formula_of(found.place, within)
    _add_formula(line.what, read, component(line.what, read.formula), gathered)
    return PlannedTorte(line.what, read.formula.name or line.what, "plain", ((line.what, 1),))


def _torte(line: OrderLine, place: str, within: Asked, gathered: Gathered) -> PlannedTorte | None:
    made = torte_of(place, within)
    gathered.problems += [replace(p, where=f"{line.what} {p.where}") for p in made.problems]
    if isinstance(made.torte, Infeasible):
        gathered.problems += clash_problems(made.torte, line.what)
        gathered.is_possible = False
        return None
    torte: Torte = made.torte
    parts = parts_of(made.formulas)
    for name, read in made.formulas.items():
        is_cake = any(batch.name == name and batch.kind == "cake" for batch in torte.batches)
        _add_formula(name, read, parts[name], gathered, is_cake=is_cake)
    cakes = tuple(
        (batch.name, round(batch.batches or 1.0)) for batch in torte.batches if batch.kind == "cake"
    )
    return PlannedTorte(line.what, torte.name or line.what, torte.kind, cakes, tuple(_uses(torte)))


def _uses(torte: Torte) -> list[CreamUse]:
    """Grams of each cream, what goes on at the end apart from what goes in."""
    grams: dict[tuple[str, bool], float] = {}
    for layer in torte.layers:
        if layer.role != "piece" and layer.mass_g is not None:
            key = (layer.of, layer.role in ("coat", "top", "decoration"))
            grams[key] = grams.get(key, 0.0) + layer.mass_g
    return [CreamUse(name, mass, is_last=last) for (name, last), mass in grams.items()]


def _add_formula(
    name: str,
    read: FormulaRead,
    part: ComponentFormula,
    gathered: Gathered,
    *,
    is_cake: bool = True,
) -> None:
    if name in gathered.formulas:
        return
    formula = read.formula
    gathered.read[name] = read
    gathered.notices += [replace(n, where=f"{name} {n.where}".strip()) for n in read.notices]
    if part.is_goods:
        bought = PlannedFormula(name, part.title, None, part.total_g, is_bought=True)
        gathered.formulas[name] = bought
        return
    is_cream = part.family is not None and family(part.family).kind == "cream"
    if is_cream or not is_cake:
        of = part.family if is_cream else None
        kind = working(of)
        gathered.formulas[name] = PlannedFormula(
            name, part.title, of, part.total_g, use_min=kind.use_min, set_h=kind.set_h
        )
        return
    bake = formula.bake_min or _modelled(name, read, gathered)
    own = own_cooling_min(formula)
    if own is None:
        gathered.notices += cooling_notices(name, part.family, formula)
    density = density_of(formula).value_g_ml
    batter = None if part.total_g is None or not density else part.total_g / density
    gathered.formulas[name] = PlannedFormula(
        name,
        part.title,
        part.family,
        part.total_g,
        bake,
        None if formula.oven is None else formula.oven.temp_c,
        _eggs(formula),
        batter,
        _white_ml(formula),
        "" if formula.tin is None else tin_text(formula.tin),
        cool_min=own,
    )


def _modelled(name: str, read: FormulaRead, gathered: Gathered) -> Interval | None:
    """Minutes by the bake model, where the formula says none of its own."""
    path = read.source.path
    within = answers_for(name, gathered.asked)
    answer = None if path is None else bake_formula(str(path), BakeWish(), within)
    if answer is not None and answer.result.minutes is not None:
        text = f"{name} says no minutes of its own: those of the bake model are taken."
        gathered.notices.append(Notice("bake-modelled", text, name))
        return answer.result.minutes
    ask = f"How long does {name} bake? Add a step to it, such as: Bake 34 to 40 minutes."
    gathered.problems.append(Problem("bake-minutes-missing", f"{name} after line 1", name, ask))
    return None


def _eggs(formula: Formula) -> float:
    """Eggs that are cracked for one cake."""
    counts: dict[str, float] = {}
    for line in formula.lines:
        if line.basis == "egg" and isinstance(line.amount, int | float):
            part = line.part or "whole"
            counts[part] = counts.get(part, 0.0) + float(line.amount)
    return counts.get("whole", 0.0) + max(counts.get("yolk", 0.0), counts.get("white", 0.0))


def _white_ml(formula: Formula) -> float | None:
    """Room of the foam of whites of one cake."""
    from krume.pantry import egg_size

    grams = 0.0
    for line in formula.lines:
        if line.basis != "egg" or line.egg_size is None or not _is_counted(line):
            continue
        if line.part in (None, "whole", "white"):
            grams += float(line.amount) * egg_size(line.egg_size).white_g.best  # type: ignore[arg-type]
    return grams / usual("white-foam").value if grams else None


def _is_counted(line: Line) -> bool:
    return isinstance(line.amount, int | float)
