"""`krume trace`: what went into this cake, where that lot went, and writing it down."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.folders import Folder
from krume.cli.options import Day, common
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import TraceBatch, TraceCake, TraceLine, TraceRecall, TraceResult


@click.command("trace")
@click.argument("name", metavar="NAME")
@click.option(
    "--lot",
    "lots",
    metavar="INGREDIENT=LOT",
    multiple=True,
    help='Which bag went in: "ground hazelnuts=L-008", "F1 eggs=?" for not known, "L-1, L-2" for '
    "both. Repeatable.",
)
@click.option(
    "--batch",
    "batches",
    metavar="FORMULA=DAY|CODE",
    multiple=True,
    help="When a part was made, F1=2027-06-10, or which batch it is, F1=B270610-1, or F1=? for not "
    "known. Repeatable.",
)
@click.option(
    "--made", "made_on", metavar="DATE", type=Day(), help="The cake's day [default: today]."
)
@click.option("--write", "is_kept", is_flag=True, help="Write down what went in; gives lot codes.")
@click.option(
    "--ingredient",
    metavar="NAME",
    default="",
    help="What a lot is of, where the book does not say it.",
)
@click.option(
    "--out", metavar="DIR", type=Folder(), help="Write the list as PDF, page, CSV and JSON."
)
@click.option(
    "--paper",
    type=click.Choice(["a4", "letter", "a5"]),
    default="a4",
    show_default=True,
    help="Paper of the list.",
)
@common
def command(
    asked: Asked,
    name: str,
    lots: tuple[str, ...],
    batches: tuple[str, ...],
    made_on: date | None,
    *,
    is_kept: bool,
    ingredient: str,
    out: Path | None,
    paper: str,
) -> int:
    """Which lots went into which cake for whom, and where a lot went.

    One step back and one forward. NAME is a lot (L-008): then every cake is told that surely has
    it, and every one for which it cannot be ruled out. Or a cake's lot code (L270612-1), a batch
    (B270611-1), an order, a torte or a formula of your book: then what went in, or with --write
    what is to be written down. "lot L-008" or "order 101" says which is meant.
    """
    from krume.usecases import TraceWish, trace_lists, trace_of

    wish = TraceWish(lots, batches, made_on, is_kept, ingredient)
    if out is None:
        return tell("trace", trace_of(name, wish, asked), _show)
    return tell("trace", trace_lists(name, wish, asked, out=out, paper=paper), _show)


def _show(page: Page, found: "TraceResult") -> None:
    page.title(found.title if found.name in found.title else f"{found.name}: {found.title}")
    if found.recall is not None:
        _show_recall(page, found.recall)
    for code in found.written:
        page.line(f"Written down: {code}", style="bold")
    for cake in found.cakes:
        _show_cake(page, cake)
    for batch in found.batches:
        _show_batch(page, batch)
    if found.proposed:
        page.head("Which bags")
        for batch in found.proposed:
            _show_batch(page, batch)
    if found.not_known:
        page.head("Not known")
        for text in found.not_known:
            page.line(text, indent=2)
    if found.cautions:
        page.head("Care")
        for text in found.cautions:
            page.line(text, indent=2)
    for file in found.files:
        page.whole(file.path)


def _show_recall(page: Page, recall: "TraceRecall") -> None:
    page.line(recall.verdict, style="bold")
    since = recall.came or "a day that is not known"
    until = "" if recall.used_up is None else f" to {recall.used_up}"
    page.line(
        f"From {recall.supplier or 'a supplier that is not known'}; in the house {since}{until}."
    )
    groups = (
        ("Surely in it: call these first", recall.surely),
        ("Not ruled out: call these too", recall.not_ruled_out),
        ("Not made yet: take another bag", recall.to_come),
    )
    for heading, cakes in groups:
        if cakes:
            page.head(heading)
        for cake in cakes:
            page.line(f"{cake.code or 'not written down'}  {cake.pieces} {cake.what}", indent=2)
            page.line(_whom(cake), indent=4)
            for why in cake.why:
                page.line(why, indent=4)
    if recall.batches:
        page.head("In no cake yet: set aside")
    for batch in recall.batches:
        page.line(f"{batch.code}  {batch.formula} of {batch.made_on}", indent=2)
    if recall.ruled_out_by_days:
        page.line()
        page.line(
            f"{recall.ruled_out_by_days} ruled out by the days it was in the house, as the table "
            "of lots has them."
        )


def _whom(cake: "TraceCake") -> str:
    """`M. Tarrow, order 101, telephone not known, handed over 2027-06-12`."""
    told = [cake.customer or "for whom is not known"]
    told += [f"order {cake.order}"] if cake.order else []
    told += [f"telephone {cake.telephone or 'not known'}"] if cake.order else []
    return ", ".join([*told, f"handed over {cake.handed_on or 'not known'}"])


def _show_cake(page: Page, cake: "TraceCake") -> None:
    void = ", taken back: never made" if cake.state == "void" else ""
    page.head(f"{cake.code}  {cake.pieces} {cake.what}, {cake.title}{void}")
    page.line(f"made {cake.made_on}; {_whom(cake)}", indent=2)
    for batch in cake.batches:
        _show_batch(page, batch, indent=2)
    for change in cake.history:
        reason = f": {change.reason}" if change.reason else ""
        page.line(f"written {change.written_at[:10]}, {change.text}{reason}", indent=2)


def _show_batch(page: Page, batch: "TraceBatch", *, indent: int = 0) -> None:
    day = f", made {batch.made_on}" if batch.made_on else ", which batch is not known"
    code = f"{batch.code}  " if batch.code else ""
    page.line()
    page.line(f"{code}{batch.formula}{day}", indent=indent, style="bold")
    rows = [(line.ingredient, _lots(line)) for line in batch.lines]
    if page.is_wide:
        widest = max((len(ingredient) for ingredient, _ in rows), default=0)
        for ingredient, lots in rows:
            page.columns(ingredient, lots, widest, indent=indent + 2)
    else:
        for ingredient, lots in rows:
            page.line(f"{ingredient}: {lots}", indent=indent + 2)
    if batch.cakes:
        page.line(f"went into {', '.join(batch.cakes)}", indent=indent + 2)
    if batch.earlier:
        page.line(f"earlier ones: {', '.join(batch.earlier)}", indent=indent + 2)


def _lots(line: "TraceLine") -> str:
    """`L-008, from the mill at Orl`, or what is not known of it."""
    if line.lots:
        return ", ".join(line.lots) + (f", from {line.supplier}" if line.supplier else "")
    if len(line.in_house) > 1:
        return f"which of {', '.join(line.in_house)}?"
    return "not known"
