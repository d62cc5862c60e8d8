"""The timetable and the shopping list of one order, as files, or which limits forbid them."""

from itertools import groupby

from krume.base import Notice, as_text
from krume.pantry import Lot, find
from krume.plan import ShoppingRow
from krume.publish import (
    Fact,
    Hold,
    Imprint,
    Leaf,
    LeafPart,
    LeafTable,
    missing_leaf_signs,
    missing_timetable_signs,
)
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.plan.plan import PlanWish, plan_orders
from krume.usecases.plan.result import PlanResult
from krume.usecases.plan.sheet import timetable_files, timetable_sheet
from krume.usecases.sheets.order_files import leaf_files
from krume.usecases.sheets.result import Files, SheetCheck
from krume.usecases.sold.papers import papers_of

_HEAD = ("buy", "what", "in the house", "for")


def plan_sheets(
    name: str, hold: Hold | None, asked: Asked, imprint: Imprint, paper: str
) -> tuple[Files, tuple[SheetCheck, ...], tuple[Notice, ...]]:
    """Timetable and shopping list of an order; a plan that cannot be is a check that says why."""
    answer = plan_orders((name,), PlanWish(), asked)
    files: Files = {}
    notices: tuple[Notice, ...] = ()
    if answer.is_answered:
        sheet = timetable_sheet(answer.result, imprint, hold=hold)
        made = timetable_files(sheet, "order", paper)
        files |= {file: (("timetable", sheet.title), data) for file, data in made.items()}
        notices = missing_timetable_signs(sheet)
    leaf = shopping_leaf(answer.result, papers_of(asked).lots, imprint, hold)
    if leaf is not None:
        large = "letter" if paper == "letter" else "a4"
        files |= leaf_files(leaf, "shopping-list", ("shopping-list", _title(answer.result)), large)
        notices = (*notices, *missing_leaf_signs(leaf))
    return files, (_check(answer),), notices


def _title(plan: PlanResult) -> str:
    return ", ".join(order.title for order in plan.orders)


def _check(answer: Answer[PlanResult]) -> SheetCheck:
    plan = answer.result
    if answer.is_answered and plan.tightest is not None:
        return SheetCheck("timetable", True, f"Timetable: {plan.tightest.text}")  # noqa: FBT003
    asks = " ".join(dict.fromkeys(problem.ask for problem in answer.problems))
    return SheetCheck("timetable", None if answer.is_possible else False, f"No timetable. {asks}")


def shopping_leaf(
    plan: PlanResult, lots: tuple[Lot, ...], imprint: Imprint, hold: Hold | None
) -> Leaf | None:
    """The shopping list of a plan, by place, what stops an order first; None with nothing to buy.

    What the house has is the stock the book says, and the lots without a word on their grams.
    """
    places = [
        LeafPart(where or "Where it is bought is not said", table=_table(list(rows), lots))
        for where, rows in groupby(plan.shopping, key=lambda row: row.where)
    ]
    if plan.eggs:
        places.insert(0, LeafPart("Eggs", table=_eggs(plan)))
    if not places:
        return None
    spares = tuple(spare.text for spare in plan.spare_eggs)
    return Leaf(
        kind="shopping list",
        name=f"{_title(plan)}: shopping list",
        facts=tuple(Fact("for", each.what, f"ready {each.ready:%Y-%m-%d}") for each in plan.orders),
        parts=(
            LeafPart("What stops an order if it is missing", _stops(plan), boxed=True),
            *places,
            *((LeafPart("Eggs left over", spares),) if spares else ()),
        ),
        cautions=("A new bag has its own lot and paper: write both down before it is opened.",),
        hold=hold,
        imprint=imprint,
    )


def _stops(plan: PlanResult) -> tuple[str, ...]:
    unknown = [row.name for row in plan.shopping if row.buy_g is None]
    told = f"How much is not known: {', '.join(unknown)}." if unknown else ""
    orders = ", ".join(dict.fromkeys(order for row in plan.shopping for order in row.stops))
    every = f"Each line of this list stops {orders or 'the order'}." if plan.shopping else ""
    return tuple(text for text in (told, every) if text)


def _table(rows: list[ShoppingRow], lots: tuple[Lot, ...]) -> LeafTable:
    cells = tuple(
        (_amount(row), row.name, _in_house(row, lots), ", ".join(row.formulas)) for row in rows
    )
    return LeafTable(_HEAD, cells, right=(0,), wide=1)


def _amount(row: ShoppingRow) -> str:
    if row.buy_g is None:
        return "not known"
    if row.packs is not None and row.pack_g is not None:
        return f"{row.packs} × {as_text(row.pack_g, 1)} g"
    return f"{as_text(row.buy_g, 1)} g"


def _in_house(row: ShoppingRow, lots: tuple[Lot, ...]) -> str:
    stock = "" if row.stock_g is None else f"{as_text(row.stock_g, 1)} g"
    of = [lot.key for lot in lots if _is_of(lot, row)]
    named = f"{', '.join(of)}, grams not said" if of and not stock else ", ".join(of)
    return ", ".join(text for text in (stock, named) if text) or "not said"


def _is_of(lot: Lot, row: ShoppingRow) -> bool:
    if lot.ingredient.casefold() == row.name.casefold():
        return True
    return row.ingredient is not None and find(lot.ingredient).key == row.ingredient


def _eggs(plan: PlanResult) -> LeafTable:
    rows = tuple(
        (str(each.count), f"eggs {each.label}", "not said", ", ".join(each.formulas))
        for each in plan.eggs
    )
    return LeafTable(_HEAD, rows, right=(0,), wide=1)
