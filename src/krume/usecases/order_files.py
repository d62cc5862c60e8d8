"""The sheets of an order beside its cards and plans, and what was checked about it."""

import json

from krume.build import Order
from krume.publish import Imprint, Leaf, leaf_dict, leaf_html, leaf_pdf
from krume.usecases.answer import Asked
from krume.usecases.as_json import plain
from krume.usecases.keep import keep_of
from krume.usecases.order import OrderJudgement
from krume.usecases.order_leaf import order_leaf
from krume.usecases.papers import papers_of
from krume.usecases.product import sold_of
from krume.usecases.sheet_result import Files, SheetCheck


def order_files(
    name: str, judged: OrderJudgement, asked: Asked, imprint: Imprint, paper: str
) -> Files:
    """The order sheet of a judged order, as PDF, page and JSON."""
    read = sold_of(name, asked)
    order = read.order or Order(None)
    keeping = keep_of(name, asked).result
    leaf = order_leaf(
        read, order, judged, papers_of(asked), imprint,
        cold=(*keeping.limits[:1], *keeping.reasons[:1]),
    )  # fmt: skip
    return leaf_files(leaf, "order", "order-sheet", read.title, paper)


def leaf_files(leaf: Leaf, stem: str, kind: str, of: str, paper: str) -> Files:
    """A leaf as PDF on A4 or Letter, as a page and as JSON."""
    data = json.dumps(plain(leaf_dict(leaf)), ensure_ascii=False, indent=1)
    sort = (kind, of)
    return {
        f"{stem}-sheet.pdf": (sort, leaf_pdf(leaf, "letter" if paper == "letter" else "a4")),
        f"{stem}-sheet.html": (sort, leaf_html(leaf).encode()),
        f"{stem}-sheet.json": (sort, f"{data}\n".encode()),
    }


def order_checks(judged: OrderJudgement) -> tuple[SheetCheck, ...]:
    """What was checked of the promise: diets, holds, hours out of the cold."""
    held = " ".join(hold.text for hold in judged.holds)
    return (
        SheetCheck("diet", not judged.holds, held or f"Diet: {judged.diet_box}."),
        SheetCheck("cold", judged.warm.is_within, judged.warm.text),
    )
