"""What one line of a formula costs: grams by the kilogram, eggs by the piece, parts by the half."""

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from krume.base import Interval, Notice, as_text, exact
from krume.cost.planned import figure
from krume.design import Line
from krume.pantry import (
    Price,
    PriceList,
    egg_price,
    egg_size,
    is_shell_egg,
    price_of,
)

G_PER_KG = 1000
_PARTS = ("yolk", "white")


@dataclass(frozen=True, slots=True)
class LineCost:
    """One line with what a whole batch of it costs, not rounded; None is not known.

    `count` are whole eggs or pieces paid for: a yolk or a white alone counts as half an egg.
    """

    read: str
    number: int
    name: str
    mass_g: float | None
    count: Fraction | None = None
    price: Price | None = None
    cost: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Missing:
    """A price that is not on the list: what to write there, per what, and for which line."""

    item: str
    per: str
    read: str


@dataclass(frozen=True, slots=True)
class Costed:
    """A line's cost, or the price it wants; `rivals` are prices that fit equally and differ."""

    line: LineCost
    missing: Missing | None = None
    rivals: tuple[Price, ...] = ()
    notices: tuple[Notice, ...] = ()


def line_cost(line: Line, prices: PriceList, *, usual_egg: str | None = None) -> Costed:
    """Cost of a line at these prices; `usual_egg` is the size that eggs given in grams have."""
    if is_shell_egg(line.ingredient):
        size = line.egg_size or usual_egg
        whole = _whole_eggs(line, size)
        by_piece = None if size is None else egg_price(prices, size)
        if whole is not None and by_piece is not None:
            return _at(line, by_piece, whole, _by_grams(line, size))
        if price_of(prices, line.name, line.ingredient) is None:
            return Costed(_bare(line), _egg_missing(line, size))
    return _by_list(line, prices)


def _bare(line: Line) -> LineCost:
    return LineCost(line.read, line.number, line.name, line.mass_g)


def _egg_missing(line: Line, size: str | None) -> Missing | None:
    if size is None and line.basis == "egg":
        return None
    item = "eggs" if size is None else f"eggs, {egg_size(size).label}"
    return Missing(item, "each" if size is not None else "kg", line.read)


def _whole_eggs(line: Line, size: str | None) -> Fraction | None:
    """Whole eggs that a line is paid as; grams are counted by the shelled mass of the size."""
    part = exact(figure("egg-part").value) if line.part in _PARTS else Fraction(1)
    if line.basis == "egg" and line.amount is not None:
        amount = line.amount
        return exact(amount.best if isinstance(amount, Interval) else amount) * part
    if size is None or line.mass_g is None:
        return None
    return exact(line.mass_g) / exact(egg_size(size).part_g(line.part).best) * part


def _by_grams(line: Line, size: str | None) -> tuple[Notice, ...]:
    if line.basis == "egg" or size is None:
        return ()
    each_g = as_text(egg_size(size).part_g(line.part).best)
    text = f"“{line.read}” is paid as eggs, {egg_size(size).label}, {each_g} g each."
    return (Notice("egg-by-grams", text, f"line {line.number}"),)


def _at(line: Line, price: Price, count: Fraction, notices: tuple[Notice, ...] = ()) -> Costed:
    cost = count * exact(price.amount)
    made = LineCost(line.read, line.number, line.name, line.mass_g, count, price, cost)
    return Costed(made, notices=notices)


def _by_list(line: Line, prices: PriceList) -> Costed:
    """By its own price on the list: per kg, or each where the line counts pieces."""
    found = price_of(prices, line.name, line.ingredient)
    if found is None:
        return Costed(_bare(line), Missing(line.name, "kg", line.read))
    if found.others:
        return Costed(_bare(line), rivals=(found.price, *found.others))
    notices = () if found.is_same_name else (_renamed(line, found.price),)
    if found.price.per == "kg":
        return Costed(_by_kg(line, found.price), notices=notices)
    if found.price.per == "each" and line.unit == "each" and line.amount is not None:
        amount = line.amount
        count = exact(amount.best if isinstance(amount, Interval) else amount)
        return _at(line, found.price, count, notices)
    return Costed(_bare(line), Missing(line.name, "kg", line.read))


def _by_kg(line: Line, price: Price) -> LineCost:
    mass = None if line.mass_g is None else exact(line.mass_g)
    cost = None if mass is None else mass * exact(price.amount) / G_PER_KG
    return LineCost(line.read, line.number, line.name, line.mass_g, None, price, cost)


def _renamed(line: Line, price: Price) -> Notice:
    text = f"{line.name} is paid as {price.item}, {_spelled(price.amount)} per {price.per}."
    return Notice("price-of-other-name", text, f"line {line.number}")


def _spelled(amount: Decimal) -> str:
    return f"{amount:.2f}" if amount == amount.quantize(Decimal("0.01")) else str(amount)
