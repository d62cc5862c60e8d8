"""A price list: money per kg, each or kWh, read strictly, and the price of what a line names."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from decimal import Decimal

from krume.base import Notice, Option, Problem, Read
from krume.pantry.eggs import EggSize, egg_size_named
from krume.pantry.finding import Found, find
from krume.pantry.price_rows import FILE, PriceRow, price_rows
from krume.pantry.words import spelled

_EGGS = ("egg", "egg yolk", "egg white")


@dataclass(frozen=True, slots=True)
class Price:
    """What something costs: per kg, each or kWh, with its papers.

    `ingredient` is None for what the pantry does not know (a box), `also` are goods that go by the
    same name; `egg_size` is set for eggs bought by the piece. `item` is the name as written,
    `line` its line of the list.
    """

    item: str
    line: int
    amount: Decimal
    per: str
    status: str
    currency: str = ""
    day: date | None = None
    ingredient: str | None = None
    also: tuple[str, ...] = ()
    egg_size: str | None = None


@dataclass(frozen=True, slots=True)
class PriceList:
    """All prices that could be read, and how a line is added to their list.

    `lines` is how many lines it has, `columns` its head, `mark` what stands between the cells.
    """

    prices: tuple[Price, ...] = ()
    lines: int = 1
    columns: tuple[str, ...] = ("item", "price", "per", "status")
    mark: str = ","

    @property
    def currency(self) -> str:
        """The one currency of the list; empty where none is said."""
        return next((price.currency for price in self.prices if price.currency), "")


@dataclass(frozen=True, slots=True)
class PriceFound:
    """The price that serves a name; `others` are prices that fit as well and differ.

    `is_same_name` is False where the list has the good under another name.
    """

    price: Price
    is_same_name: bool = True
    others: tuple[Price, ...] = ()


def read_prices(text: str, *, eggs_region: str | None = None) -> Read[PriceList]:
    r"""Read a price list; every row that cannot be used is asked, and then has no price.

    >>> read = read_prices("item,price,per\nwhole milk,1.20,kg\nbutter,-1,kg\n")
    >>> [price.item for price in read.value.prices], read.problems[0].where
    (['whole milk'], 'prices.csv line 3')
    """
    rows = price_rows(text)
    problems, notices = list(rows.problems), list[Notice]()
    prices: list[Price] = []
    for row in rows.rows:
        price, asked, noted = _price(row, eggs_region)
        problems.extend(asked)
        notices.extend(noted)
        prices.extend([] if price is None else [price])
    kept, twice = _once(prices)
    kept, mixed = _one_currency(kept)
    found = PriceList(kept, rows.lines, rows.columns, rows.mark)
    return Read(found, (*problems, *twice, *mixed), tuple(notices))


def _price(
    row: PriceRow, region: str | None
) -> tuple[Price | None, tuple[Problem, ...], tuple[Notice, ...]]:
    found = find(row.item)
    if found.key is None and "egg" in spelled(row.item).tokens and egg_size_named(row.item, region):
        found = find("egg")
    if found.kind == "ask" or (row.per == "kg" and found.kind in ("close", "lookalike")):
        return None, (_name_asked(row, found),), ()
    price = Price(
        item=row.item,
        line=row.line,
        amount=row.amount,
        per=row.per,
        status=row.status,
        currency=row.currency,
        day=row.day,
        ingredient=found.key,
        also=found.others,
    )
    if row.per == "each" and found.key == find("egg").key:
        return _egg_price(price, row, region)
    return price, (), _noted(price, found)


def _noted(price: Price, found: Found) -> tuple[Notice, ...]:
    """A price of what the pantry does not know serves only a line of the same words."""
    if found.kind == "known" or price.per != "kg":
        return ()
    text = f"{price.item} is unknown to the pantry: its price serves a line of the same words."
    return (Notice("price-by-words", text, f"{FILE} line {price.line}"),)


def _name_asked(row: PriceRow, found: Found) -> Problem:
    options = tuple(row.option(choice.label, item=choice.words) for choice in found.choices)
    ask = f"Which ingredient is priced here? {found.question}"
    return Problem("price-name-open", row.where, row.read, ask, options)


def _egg_price(
    price: Price, row: PriceRow, region: str | None
) -> tuple[Price | None, tuple[Problem, ...], tuple[Notice, ...]]:
    sizes = egg_size_named(row.item, region)
    if len(sizes) != 1:
        options = tuple(row.option(s.label, item=f"eggs, {s.label}") for s in _offered(sizes))
        ask = "Eggs of which size cost this? Type the size beside them."
        return None, (Problem("price-egg-size", row.where, row.read, ask, options),), ()
    return replace(price, egg_size=sizes[0].key), (), ()


def _offered(sizes: tuple[EggSize, ...]) -> tuple[EggSize, ...]:
    return sizes or (*egg_size_named("EU M"), *egg_size_named("EU L"), *egg_size_named("US large"))


def _name(price: Price) -> tuple[object, ...]:
    """What makes two prices prices of one name; a percent belongs to it."""
    words = spelled(price.item)
    return ("egg", price.egg_size) if price.egg_size else (*words.tokens, words.percent)


def _once(prices: list[Price]) -> tuple[tuple[Price, ...], tuple[Problem, ...]]:
    """Prices whose name stands once; a name that stands twice has none until it is settled."""
    named: dict[tuple[object, ...], list[Price]] = {}
    for price in prices:
        named.setdefault(_name(price), []).append(price)
    kept = [of[0] for of in named.values() if len(of) == 1]
    return tuple(kept), tuple(_twice(of) for of in named.values() if len(of) > 1)


def _twice(of: list[Price]) -> Problem:
    lines = " and ".join(str(price.line) for price in of)
    amounts = " and ".join(f"{price.amount} per {price.per}" for price in of)
    ask = f"{of[-1].item} stands on lines {lines}: {amounts}. Which holds? Take the other line out."
    out = Option(f"Take line {of[-1].line} out", "")
    return Problem("price-twice", f"{FILE} line {of[-1].line}", of[-1].item, ask, (out,))


def _one_currency(
    prices: tuple[Price, ...],
) -> tuple[tuple[Price, ...], tuple[Problem, ...]]:
    """All prices, or those without a currency where two are mixed: they cannot be added up."""
    said = list(dict.fromkeys(price.currency for price in prices if price.currency))
    if len(said) < 2:
        return prices, ()
    odd = next(price for price in prices if price.currency not in ("", said[0]))
    ask = (
        f"The list has prices in {' and '.join(said)}, and they cannot be added up. "
        "Write all prices in one currency."
    )
    asked = Problem("currency-mixed", f"{FILE} line {odd.line}", odd.item, ask)
    return (), (asked,)


def price_of(prices: PriceList, name: str, ingredient: str | None) -> PriceFound | None:
    r"""Price of an ingredient: by its key first, then by its words; None is not on the list.

    Where several prices have the key, the one of the very name serves; else they are all given.

    >>> prices = read_prices("item,price,per\nwhole milk,1.20,kg\n").value
    >>> found = price_of(prices, "milk", find("milk").key)
    >>> found.price.item, found.is_same_name
    ('whole milk', False)
    """
    words = set(spelled(name).tokens)
    by_weight = [p for p in prices.prices if p.egg_size is None]
    fitting = [p for p in by_weight if _fits(p, name, ingredient)]
    fitting = fitting or [p for p in by_weight if ingredient in p.also]
    if not fitting:
        return None
    inside = [p for p in fitting if set(spelled(p.item).tokens) <= words]
    named = [p for p in inside if set(spelled(p.item).tokens) == words] or inside
    best = named or fitting
    others = tuple(p for p in best[1:] if (p.amount, p.per) != (best[0].amount, best[0].per))
    return PriceFound(best[0], bool(inside), others)


def _fits(price: Price, name: str, ingredient: str | None) -> bool:
    if price.ingredient is not None and ingredient is not None:
        return price.ingredient == ingredient
    return spelled(price.item).tokens == spelled(name).tokens


def egg_price(prices: PriceList, size: str) -> Price | None:
    """Price of one egg of a size, by the piece."""
    return next((price for price in prices.prices if price.egg_size == size), None)


def is_shell_egg(ingredient: str | None) -> bool:
    """Whether an ingredient is hens' egg out of its shell, or its white or yolk."""
    return ingredient is not None and ingredient in {find(word).key for word in _EGGS}


def old_prices(prices: Iterable[Price], today: date, most_days: int) -> tuple[Price, ...]:
    """Prices with a date that lies further back than so many days."""
    return tuple(p for p in prices if p.day is not None and (today - p.day).days > most_days)
