"""`krume cost`: what it costs, what to ask for it, how many a month pay the fixed costs."""

from decimal import Decimal
from typing import TYPE_CHECKING

import click

from krume.base import as_text, money_text
from krume.cli.figures import number
from krume.cli.options import common, file_argument
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import CostComponent, CostResult

_BASES = {
    "given": "the price you gave",
    "agreed": "the price agreed in the order",
    "margin": "the price for the margin",
}
_PLANS = {
    "fixed_a_month": "fixed costs a month",
    "tortes_a_month": "tortes a month",
    "own_work_h": "hours of own work",
    "own_work_rate": "for one hour of it",
    "energy_kwh": "kWh",
}


@click.command("cost")
@file_argument
@click.option("--price", metavar="X", help="The price asked, or agreed: 96.00 or 96.00 EUR.")
@click.option(
    "--margin",
    metavar="PCT",
    help="Share of the price to be left after the full cost, in percent [default: 30].",
)
@click.option("--slices", metavar="N", help="How many slices [default: the text's own, the most].")
@common
def command(
    asked: Asked, file: str, price: str | None, margin: str | None, slices: str | None
) -> int:
    """What it costs, what to ask for it, how many pay the fixed costs.

    FILE is a formula, a torte or an order: a text, a name of your book (T1, 101), or - for
    standard input. Prices are those of the book's prices.csv, or of one beside FILE; hours, power
    and fixed costs are the planned ones of studio.toml below [cost]. A cake is paid whole, what is
    cut away too; creams, syrup and coat by the grams that go in. A margin is a share of the price,
    a markup one of the cost.
    """
    from krume.usecases import CostWish, cost_of

    return tell("cost", cost_of(file, CostWish(price, margin, slices), asked), _show)


def _show(page: Page, cost: "CostResult") -> None:
    page.title(cost.name or "No name on the first line")
    if cost.kind == "order":
        page.line(", ".join(f"{item.count} {item.name}" for item in cost.items))
    if cost.price is not None:
        basis = _BASES[cost.price_basis]
        page.line(f"{money_text(cost.price, cost.currency)}, {basis}", style="bold")
        page.line(f"an hour of your work brings {_money(cost.per_hour)}")
    _show_heads(page, cost)
    _show_price(page, cost)
    _show_material(page, cost)
    _show_plan(page, cost)


def _show_heads(page: Page, cost: "CostResult") -> None:
    page.line()
    rows = [
        ("material", cost.material),
        ("labour", cost.labour),
        ("energy", cost.energy),
        ("packaging", cost.packaging),
        ("direct", cost.direct),
        ("share of fixed", cost.fixed_share),
        ("full", cost.full),
    ]
    page.rows([(_money(amount), name) for name, amount in rows], right=(0,))
    page.line(_said(cost))


def _said(cost: "CostResult") -> str:
    money = f" {cost.currency}" if cost.currency else ""
    return f"({cost.status}{'; in' + money if money else ''})"


def _show_price(page: Page, cost: "CostResult") -> None:
    page.head("Price")
    asked, markup = _pct(cost.margin_asked_pct), cost.markup
    page.rows(
        [
            (_money(cost.price_for_margin), f"{asked} margin: a share of the price"),
            (
                _money(markup.price),
                f"{asked} markup: a share of the cost, and a margin of {_pct(markup.margin_pct)}",
            ),
        ],
        right=(0,),
    )
    if cost.price is None:
        return
    page.head(f"At {money_text(cost.price, cost.currency)}")
    page.line(f"margin on full cost: {_pct(cost.margin_pct)}", indent=2)
    page.line(cost.text, indent=2)
    for each in cost.slices:
        page.line(f"{each.count} slices: {_money(each.price)} each", indent=2)


def _show_material(page: Page, cost: "CostResult") -> None:
    if not cost.components:
        return
    page.head("Material")
    for each in cost.components:
        page.line(f"{_money(each.cost)}  {each.name}, {each.title}", style="bold")
        page.line(_paid(each), indent=2)
        rows = [(_four(line.cost), line.read) for line in each.lines]
        page.rows(rows, right=(0,), indent=2)


def _paid(each: "CostComponent") -> str:
    if each.kind == "cake":
        count = "unknown" if each.batches is None else as_text(float(each.batches), 2)
        return f"whole, × {count}"
    return f"{number(each.used_g)} g go in"


def _show_plan(page: Page, cost: "CostResult") -> None:
    if not cost.tortes:
        return
    page.head("Planned for one torte, until records exist")
    rows = [
        ("unknown" if plan.value is None else as_text(float(plan.value), 2), plan.name, plan.status)
        for plan in cost.planned
    ]
    page.rows([(value, _PLANS.get(name, name)) for value, name, _ in rows], right=(0,), indent=2)
    page.line(f"({', '.join(dict.fromkeys(status for _, _, status in rows))})", indent=2)


def _money(amount: Decimal | None) -> str:
    return money_text(amount)


def _four(amount: Decimal | None) -> str:
    return "unknown" if amount is None else f"{amount:.3f}"


def _pct(value: Decimal | None) -> str:
    return "unknown" if value is None else f"{as_text(float(value), 1)} %"
