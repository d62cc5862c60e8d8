"""The sheets of an order beside its cards and plans, and what was checked about it."""

import json

from krume.base import as_text, money_text
from krume.build import Order
from krume.publish import Hold, Imprint, Leaf, LeafPart, leaf_dict, leaf_html, leaf_pdf
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.as_json import plain
from krume.usecases.asking.kind import own_answers
from krume.usecases.asking.text import text_of
from krume.usecases.cost.cost import CostWish, cost_of
from krume.usecases.keep.keep import keep_of
from krume.usecases.keep.lines import freezing_line
from krume.usecases.label.label import LabelWish, labelled
from krume.usecases.label.paper import drawn_labels
from krume.usecases.sheets.order_batches import OrderBatch
from krume.usecases.sheets.order_leaf import order_leaf
from krume.usecases.sheets.result import Files, SheetCheck
from krume.usecases.sold.order import OrderJudgement
from krume.usecases.sold.papers import papers_of
from krume.usecases.sold.product import SoldRead, sold_of
from krume.usecases.trace.codes import lot_codes


def order_files(
    name: str,
    judged: OrderJudgement,
    asked: Asked,
    imprint: Imprint,
    paper: str,
    found: tuple[OrderBatch, ...] = (),
    oven: LeafPart | None = None,
) -> Files:
    """The order sheet of a judged order, as PDF, page and JSON."""
    read = sold_of(name, asked)
    order = read.order or Order(None)
    keeping = keep_of(name, asked).result
    leaf = order_leaf(
        read, order, judged, papers_of(asked), imprint,
        cold=(*keeping.limits[:1], *keeping.reasons[:1], *_freezing(read)), found=found, oven=oven,
        codes=lot_codes(name, asked),
    )  # fmt: skip
    return leaf_files(leaf, "order-sheet", ("order-sheet", read.title), _large(paper))


def _freezing(read: SoldRead) -> tuple[str, ...]:
    return (line,) if (line := freezing_line(read)) else ()


def _large(paper: str) -> str:
    return "letter" if paper == "letter" else "a4"


def leaf_files(leaf: Leaf, stem: str, kind: tuple[str, str], paper: str) -> Files:
    """A leaf as PDF, as a page and as JSON; `kind` says what it is and what it is of."""
    data = json.dumps(plain(leaf_dict(leaf)), ensure_ascii=False, indent=1)
    return {
        f"{stem}.pdf": (kind, leaf_pdf(leaf, paper)),
        f"{stem}.html": (kind, leaf_html(leaf).encode()),
        f"{stem}.json": (kind, f"{data}\n".encode()),
    }


def order_checks(name: str, judged: OrderJudgement, asked: Asked) -> tuple[SheetCheck, ...]:
    """What was checked of the promise: diets, holds, hours out of the cold, price."""
    held = " ".join(hold.text for hold in judged.holds)
    return (
        SheetCheck("diet", judged.is_diet_clear, held or _diet_said(judged)),
        SheetCheck("cold", judged.warm.is_within, judged.warm.text),
        price_check(name, asked),
    )


def _diet_said(judged: OrderJudgement) -> str:
    look = " Nobody has read it as a diet: look yourself." if judged.is_diet_clear is None else ""
    told = f" {' '.join(judged.kitchen)}" if judged.kitchen else look
    return f"Diet: {judged.diet_box}.{told}"


def price_check(name: str, asked: Asked) -> SheetCheck:
    """The agreed price against the full cost; not judged while a price or a cost is not known."""
    if text_of(name, own_answers(asked)).kind == "class":
        text = "No price is checked: a class is paid by the seat, and seats are not priced here."
        return SheetCheck("price", None, text)
    answer = cost_of(name, CostWish(), asked)
    cost = answer.result
    if cost.direct is None or cost.full is None:
        why = " ".join(dict.fromkeys(problem.ask for problem in answer.problems))
        return SheetCheck("price", None, f"What it costs is not known. {why}".strip())
    direct, full = (money_text(each, cost.currency) for each in (cost.direct, cost.full))
    costs = f"direct cost {direct}, full cost {full}"
    if cost.price is None or cost.price_basis != "agreed":
        asks = cost.price_for_margin
        wanted = "" if asks is None else f"; {money_text(asks, cost.currency)} leaves "
        wanted += "" if asks is None else f"{as_text(float(cost.margin_asked_pct), 1)} % of it"
        return SheetCheck("price", None, f"No price is agreed: {costs}{wanted}.")
    margin = "not known" if cost.margin_pct is None else f"{as_text(float(cost.margin_pct), 1)} %"
    price = money_text(cost.price, cost.currency)
    text = f"Price {price} as agreed: {costs}, margin {margin} of the price."
    return SheetCheck("price", cost.price >= cost.full, text)


def label_files(name: str, hold: Hold | None, asked: Asked) -> tuple[Files, SheetCheck]:
    """The labels of an order, or what keeps them from print; a held order has none."""
    if hold is not None:
        text = f"No label while the order is held: {hold.text} {hold.opens}".strip()
        return {}, SheetCheck("label", False, text)  # noqa: FBT003
    made = labelled(name, LabelWish(), asked)
    drawn = drawn_labels(made, LabelWish(), asked, formats=("pdf", "html"))
    if drawn.problems:
        asks = " ".join(dict.fromkeys(problem.ask for problem in drawn.problems))
        return {}, SheetCheck("label", False, f"No label yet. {asks}")  # noqa: FBT003
    files = {file: (("label", of), data) for file, (of, data) in drawn.files.items()}
    names = ", ".join(dict.fromkeys(of for of, _ in drawn.files.values()))
    return files, SheetCheck("label", True, f"Labels printed: {names}.")  # noqa: FBT003
