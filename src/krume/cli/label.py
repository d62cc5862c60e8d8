"""`krume label`: what the buyer must be told, and what may not be said yet."""

from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.figures import number
from krume.cli.folders import Folder
from krume.cli.options import Day, common, file_argument
from krume.cli.page import Page
from krume.cli.panel import nutrition_options, show_nutrition
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import LabelOf, LabelResult, NutritionWish


@click.command("label")
@file_argument
@click.option(
    "--market",
    type=click.Choice(["us", "eu"]),
    help="In whose words and by whose rules [default: the book's market, else eu].",
)
@click.option(
    "--made",
    metavar="DATE",
    type=Day(),
    help="Day of making, day 1 of the use-by date [default: a blank to write in].",
)
@click.option(
    "--out",
    metavar="DIR",
    type=Folder(),
    help="Folder for the label sheet as PDF and HTML; made when it is not there.",
)
@click.option(
    "--labels",
    metavar="KEY",
    default="single-100x150",
    show_default=True,
    help="Size of the label, or the sheet of labels, a row of the packed table.",
)
@click.option(
    "--panel/--no-panel",
    "with_panel",
    default=True,
    help="Whether the nutrition panel stands on the label; your law says whether it must.",
)
@nutrition_options
@common
def command(
    asked: Asked,
    file: str,
    market: str | None,
    made: date | None,
    out: Path | None,
    labels: str,
    with_panel: bool,  # noqa: FBT001
    nutrition: "NutritionWish",
) -> int:
    """What the buyer must be told: ingredients, allergens, nutrition, gluten.

    FILE is a formula, a torte or an order: a text, a name of your book (T1), or - for standard
    input. Lots, the room's cleaning records and suppliers' sheets come from the book (lots.csv,
    cleaning.csv, suppliers/). A gluten sentence is printed only while every record is good on the
    day. No label is printed while something on it is not known.
    """
    from krume.usecases import LabelWish, label_of

    wish = LabelWish(market=market, made=made, with_panel=with_panel, nutrition=nutrition)
    if out is None:
        return tell("label", label_of(file, wish, asked), _show)
    from krume.usecases import label_sheets

    return tell("label", label_sheets(file, wish, asked, out=out, layout=labels), _show)


def _show(page: Page, result: "LabelResult") -> None:
    for index, each in enumerate(result.labels):
        if index:
            page.line()
        _show_one(page, each)
    if result.pointers:
        page.head("Where to look")
        for said in result.pointers:
            page.line(said, indent=2)
    if result.files:
        page.line()
        for file in result.files:
            page.whole(file.path)


def _show_one(page: Page, each: "LabelOf") -> None:
    page.title(f"{each.name}, {each.title}")
    page.head("Ingredients, by mass at mixing")
    page.line(each.ingredients, indent=2)
    page.line(f"Allergens in it: {_allergens(each)}", indent=2)
    for said in each.sentences:
        page.line(said, indent=2)
    page.line(each.durability.text, indent=2)
    _show_gluten(page, each)
    if each.nutrition is not None:
        show_nutrition(page, each.nutrition)
    if each.open_items:
        page.head("Not known")
        for item in each.open_items:
            page.line(f"{item.of}: {item.what}. {item.opens} (closes the {item.closes})", indent=2)


def _allergens(each: "LabelOf") -> str:
    """What is in it; where part of it is not known that is said beside, and never read as none."""
    found = ", ".join(each.contains)
    if each.ingredients and all(item.closes != "label" for item in each.open_items):
        return found or "none that is declared"
    return f"{found}; of the rest not known, see below" if found else "not known"


def _show_gluten(page: Page, each: "LabelOf") -> None:
    gate = each.gluten
    if gate.claim_allowed:
        page.head("Gluten gate: open")
    elif gate.open_on_ingredients:
        page.head("Gluten gate: open on ingredients; no sentence is printed yet")
    else:
        page.head("Gluten gate: closed; no sentence is printed")
    for said in gate.opens:
        page.line(said, indent=2)
    if gate.most_ppm is not None:
        page.line(f"at most {number(gate.most_ppm)} mg/kg by the records", indent=2)
    rows = [(r.lot or "no lot", r.ingredient, r.state) for r in gate.records]
    page.rows(rows, indent=2)
