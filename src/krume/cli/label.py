"""`krume label`: what the buyer must be told, and what may not be said yet."""

from dataclasses import replace
from datetime import date
from typing import TYPE_CHECKING

import click

from krume.cli.figures import number
from krume.cli.options import Day, common, file_argument, wants_json
from krume.cli.page import Page
from krume.cli.panel import nutrition_options, show_nutrition
from krume.cli.printing import Printing, printing_options
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import LabelOf, LabelResult, NutritionWish


@click.command("label")
@file_argument
@click.option(
    "--market",
    type=click.Choice(["us", "eu", "uk", "ca", "au-nz"]),
    help="In whose words and by whose rules [default: the book's market, else eu].",
)
@click.option(
    "--made",
    metavar="DATE",
    type=Day(),
    help="Day of making, day 1 of its date [default: as written down for an order, else a blank].",
)
@click.option(
    "--panel/--no-panel",
    "with_panel",
    default=True,
    help="Whether the nutrition panel stands on the label; your law says whether it must.",
)
@click.option(
    "--parts/--one-list",
    "by_part",
    default=None,
    help="A list for each part, or one list of all [default: as the book has it, else one].",
)
@click.option(
    "--additives",
    type=click.Choice(["names", "numbers"]),
    help="Additives by name or by number, where the law wants their class [default: names].",
)
@click.option(
    "--before-sale",
    is_flag=True,
    help="Only the text for a buyer who orders from afar: allergens, traces, what is not known.",
)
@nutrition_options
@printing_options
@common
def command(
    asked: Asked,
    file: str,
    market: str | None,
    made: date | None,
    with_panel: bool,  # noqa: FBT001
    by_part: bool | None,  # noqa: FBT001
    additives: str | None,
    before_sale: bool,  # noqa: FBT001
    nutrition: "NutritionWish",
    printing: Printing,
) -> int:
    """What the buyer must be told: ingredients, allergens, nutrition, gluten.

    FILE is a formula, a torte or an order: a text, a name of your book (T1), or - for standard
    input. Lots, the room's cleaning records and suppliers' sheets come from the book (lots.csv,
    cleaning.csv, suppliers/). A gluten sentence is printed only while every record is good on the
    day. No label is printed while something on it is not known.
    """
    from krume.usecases import LabelWish, label_of

    wish = LabelWish(
        market=market,
        made=made,
        with_panel=with_panel,
        nutrition=nutrition,
        by_part=by_part,
        by_number=None if additives is None else additives == "numbers",
        made_parts=printing.made_parts,
        maker=printing.maker,
    )
    if before_sale:
        told = label_of(file, wish, asked)
        # A text to paste somewhere else stands alone; another program gets the notices too.
        told = told if wants_json() else replace(told, notices=())
        return tell("label", told, _show_before_sale)
    if printing.out is None:
        return tell("label", label_of(file, wish, asked), _show)
    from krume.usecases import label_sheets

    answer = label_sheets(
        file, wish, asked, out=printing.out, layout=printing.labels, more=printing.more
    )
    return tell("label", answer, _show)


def _show_before_sale(page: Page, result: "LabelResult") -> None:
    for index, each in enumerate(result.labels):
        if index:
            page.line()
        for said in each.before_sale.splitlines():
            page.line(said)


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
    page.head("Ingredients, the heaviest first")
    if each.parts:
        for part in each.parts:
            page.line(part.line, indent=2)
    else:
        page.line(each.ingredients, indent=2)
    page.line(f"Allergens in it: {_allergens(each)}", indent=2)
    for said in each.sentences:
        page.line(said, indent=2)
    page.line(each.durability.text, indent=2)
    _show_gluten(page, each)
    if each.nutrition is not None:
        show_nutrition(page, each.nutrition)
    if each.beside:
        page.head("Beside the list, not printed")
        for said in each.beside:
            page.line(said, indent=2)
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
        page.line(
            f"Warning only: by its papers at most {number(gate.most_ppm)} mg/kg in the finished "
            "cake, a sum and no measurement; it stands on no label.",
            indent=2,
        )
    rows = [(r.lot or "no lot", r.ingredient, r.state) for r in gate.records]
    page.rows(rows, indent=2)
