"""What must be bought or an order stops: shut gates, eggs, what the house has too little of."""

from dataclasses import dataclass

from krume.base import KrumeError, as_text
from krume.pantry import find
from krume.plan import EggsToBuy, ShoppingRow
from krume.store import book_at
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.remembering import Remembered, day_key
from krume.usecases.plan.gathered import Gathered, gather
from krume.usecases.plan.kitchen import plan_now
from krume.usecases.plan.shopping import list_eggs, list_shopping
from krume.usecases.sold.standing import OrderStanding


@dataclass(frozen=True, slots=True)
class ToBuy:
    """One thing to buy; what is not known of it is said in words.

    `is_urgent` is False for what the book only does not know the stock of.
    """

    what: str
    need: str
    need_unit: str
    house: str
    buy: str
    buy_unit: str
    stops: tuple[str, ...]
    is_urgent: bool


_LISTS: Remembered[tuple[ToBuy, ...]] = Remembered(8)


def to_buy(rows: tuple[OrderStanding, ...], asked: Asked) -> tuple[ToBuy, ...]:
    """What judged orders take beyond what the book says is in the house, what stops them first.

    One that cannot be read is left out: what is asked about it is said elsewhere.
    """
    book = book_at(asked.book)
    wanted = tuple(row for row in rows if row.day is not None and row.state != "past")
    if not wanted:
        return ()
    return _LISTS.of(book, day_key(book, asked, wanted), lambda: _list(wanted, asked))


def _list(rows: tuple[OrderStanding, ...], asked: Asked) -> tuple[ToBuy, ...]:
    found = _gathered(tuple(row.name for row in rows), asked)
    shopping = () if found is None else list_shopping(found, book_at(asked.book))
    eggs = () if found is None else list_eggs(found)
    return (
        *_lots_wanted(rows, shopping),
        *(_eggs(each, found) for each in eggs if found is not None),
        *sorted(map(_row, shopping), key=lambda each: not each.is_urgent),
    )


def _gathered(names: tuple[str, ...], asked: Asked) -> Gathered | None:
    """All orders together; where one of them cannot be read, those that can."""
    moment = plan_now(asked, book_at(asked.book), None)
    places = tuple(f"orders/{name}.txt" for name in names)
    try:
        return gather(places, asked, moment)
    except KrumeError:
        readable = tuple(name for name in names if _is_readable(name, asked))
    return _gathered(readable, asked) if readable and readable != names else None


def _is_readable(name: str, asked: Asked) -> bool:
    try:
        gather((f"orders/{name}.txt",), asked, plan_now(asked, book_at(asked.book), None))
    except KrumeError:
        return False
    return True


def _lots_wanted(
    rows: tuple[OrderStanding, ...], shopping: tuple[ShoppingRow, ...]
) -> tuple[ToBuy, ...]:
    """Goods whose lot has no good record where a guest must not eat gluten, each once."""
    need = {row.ingredient: row.need_g for row in shopping}
    found: dict[str, ToBuy] = {}
    for row in rows:
        for ingredient, house in row.shut:
            before = found.get(ingredient)
            stops = (row.name,) if before is None else (*before.stops, row.name)
            found[ingredient] = _lot(ingredient, house, need.get(find(ingredient).key), stops)
    return tuple(found.values())


def _lot(what: str, house: str, need_g: float | None, stops: tuple[str, ...]) -> ToBuy:
    return ToBuy(
        what=f"{what}, tested lot",
        need="not known" if need_g is None else as_text(need_g, 1),
        need_unit="" if need_g is None else "g",
        house=house,
        buy="1",
        buy_unit="pack",
        stops=stops,
        is_urgent=True,
    )


def _eggs(eggs: EggsToBuy, found: Gathered) -> ToBuy:
    """Eggs by count; the book does not say how many are in the house."""
    orders = [name for formula in eggs.formulas for name in found.used_by.get(formula, ())]
    return ToBuy(
        what=f"eggs, {eggs.label}",
        need=str(eggs.count),
        need_unit="",
        house="not said",
        buy=str(eggs.count),
        buy_unit="",
        stops=tuple(sorted(set(orders))),
        is_urgent=True,
    )


def _row(row: ShoppingRow) -> ToBuy:
    """A thing by its grams; it is urgent where the book says that there is too little."""
    if row.packs is not None:
        buy, unit = str(row.packs), "pack" if row.packs == 1 else "packs"
    else:
        buy, unit = ("not known", "") if row.buy_g is None else (as_text(row.buy_g, 1), "g")
    return ToBuy(
        what=row.name,
        need="not known" if row.need_g is None else as_text(row.need_g, 1),
        need_unit="" if row.need_g is None else "g",
        house="not said" if row.stock_g is None else f"{as_text(row.stock_g, 1)} g",
        buy=buy,
        buy_unit=unit,
        stops=row.stops,
        is_urgent=row.stock_g is not None,
    )
