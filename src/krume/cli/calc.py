"""`krume calc`: the quick sums."""

from typing import TYPE_CHECKING

import click

from krume.cli.figures import number
from krume.cli.options import common, explain_option
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import Json, SumList


@click.command("calc")
@click.argument("name", required=False)
@click.argument("inputs", metavar="[KEY=VALUE]...", nargs=-1)
@explain_option
@common
def command(asked: Asked, name: str | None, inputs: tuple[str, ...], explain: str | None) -> int:
    """Quick sums: tins, eggs, gelatine, rolls, the dial.

    Without NAME the sums are listed, each with an example. A value may carry its own unit
    (diameter=8in, temp=325F); a bare number is in the unit the list names. Lists are written with
    commas.
    """
    from krume.usecases import answer_sum, list_sums

    if name is None:
        return tell("calc", list_sums(), _show_list)
    return tell("calc", answer_sum(name, inputs, asked, explain=explain), _show)


def _show_list(page: Page, listed: "SumList") -> None:
    for each in listed.sums:
        page.line(each.name, style="bold")
        page.line(each.meaning, indent=2)
        for item in each.inputs:
            unit = f", {item.unit}" if item.unit else ""
            choices = f": {', '.join(item.choices)}" if item.choices else ""
            may = "" if item.required else " (may be left out)"
            page.line(f"{item.name}: {item.meaning}{unit}{choices}{may}", indent=4)
        page.whole(f"krume calc {each.example}", indent=2)
        page.line()


def _show(page: Page, values: "dict[str, Json]") -> None:
    rows = [(key, _shown(value)) for key, value in values.items() if key not in ("sum", "inputs")]
    page.rows(rows)


def _shown(value: "Json") -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if value is None or isinstance(value, int | float):
        return number(value, 4)
    if isinstance(value, dict):
        return ", ".join(f"{key} {_shown(item)}" for key, item in value.items())
    if isinstance(value, list):
        return ", ".join(_shown(item) for item in value) or "none"
    return value
