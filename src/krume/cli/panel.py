"""A nutrition panel on a terminal: its columns side by side, and the carbohydrate of a slice."""

from collections.abc import Callable
from functools import wraps
from typing import TYPE_CHECKING

import click

from krume.cli.figures import span
from krume.cli.page import Page

if TYPE_CHECKING:
    from krume.usecases import LabelNutrition, LabelPanel, LabelRow


def nutrition_options(function: Callable[..., int]) -> Callable[..., int]:
    """Options of a panel; the command gets them together as `nutrition`."""

    @click.option(
        "--slices",
        metavar="N",
        type=int,
        help="Slices it is cut into, for the portion and its carbohydrate [default: the plan's].",
    )
    @click.option(
        "--by-slice",
        is_flag=True,
        help="A US panel of one slice that is sold on its own.",
    )
    @click.option(
        "--per-100-g",
        "per_100_g",
        is_flag=True,
        help="A further column per 100 g on a US panel; it is free.",
    )
    @click.option(
        "--spread",
        "with_spread",
        is_flag=True,
        help="How far lots of the goods may lie from the tables, beside each figure.",
    )
    @wraps(function)
    def wrapped(
        *,
        slices: int | None,
        by_slice: bool,
        per_100_g: bool,
        with_spread: bool,
        **rest: object,
    ) -> int:
        from krume.usecases import NutritionWish

        wish = NutritionWish(slices, per_100_g, with_spread, by_slice)
        return function(nutrition=wish, **rest)

    return wrapped


def show_nutrition(page: Page, nutrition: "LabelNutrition") -> None:
    """The columns of a panel, what stands below them, and the slice's own line."""
    if nutrition.panel is not None:
        _show_columns(page, (nutrition.panel, *nutrition.beside))
        intake = (nutrition.intake,) if nutrition.intake else ()
        for said in (*intake, *nutrition.notes, *nutrition.left_out):
            page.line(said, indent=2)
        _show_spread(page, nutrition.panel)
    eaten = nutrition.carbohydrate
    if eaten is not None:
        page.head("Carbohydrate, for those who dose by it")
        for text in [each.text for each in eaten.slices] or [eaten.text]:
            page.line(text, indent=2)
        if eaten.per_100_g is not None and not eaten.slices:
            page.line("Of a slice: --slices and how many it is cut into.", indent=2)
        page.line(eaten.caution, indent=2)


def _show_columns(page: Page, columns: "tuple[LabelPanel, ...]") -> None:
    first = columns[0]
    if page.is_wide and len(columns) > 1:
        said = f"{first.servings}, serving size {first.serving_size}" if first.servings else ""
        page.head(f"Nutrition, {said}" if said else "Nutrition")
        heads = ["", *(cell for each in columns for cell in (each.head.lower(), ""))]
        body = [_across(columns, index) for index in range(len(first.rows))]
        page.rows([heads, *body], right=range(1, len(heads)), indent=2)
    else:
        for each in columns:
            page.head(f"Nutrition, {each.basis}")
            page.rows([(_name(r), *_cells(r)) for r in each.rows], right=(1, 2), indent=2)


def _across(columns: "tuple[LabelPanel, ...]", index: int) -> list[str]:
    cells = [cell for each in columns for cell in _cells(each.rows[index])]
    return [_name(columns[0].rows[index]), *cells]


def _name(row: "LabelRow") -> str:
    return f"{'  ' * row.level}{row.label}"


def _cells(row: "LabelRow") -> tuple[str, str]:
    return row.text or "not known", "" if row.percent is None else f"{row.percent:g} %"


def _show_spread(page: Page, panel: "LabelPanel") -> None:
    rows = [
        (_name(row), f"{span(row.spread.low, row.spread.high, _digits(row))} {_unit(row)}")
        for row in panel.rows
        if row.spread is not None
    ]
    if rows:
        page.head(f"As lots of the goods differ, {panel.head.lower()}")
        page.rows(rows, right=(1,), indent=2)


def _digits(row: "LabelRow") -> int:
    return 2 if row.key == "salt" else 0 if row.unit in ("kJ", "kcal") else 1


def _unit(row: "LabelRow") -> str:
    return "mcg" if row.unit == "ug" else row.unit
