"""What every command takes: --json, --book, --answer, --on."""

from collections.abc import Callable
from datetime import date, datetime
from functools import wraps
from pathlib import Path
from typing import Any, TypeVar

import click

from krume.cli.output import typed_text
from krume.usecases import Asked

F = TypeVar("F", bound=Callable[..., Any])
JSON_KEY = "krume.json"


def common(function: F) -> F:
    """Give a command the options every command has, as one `asked` argument."""

    @wraps(function)
    def wrapped(
        *,
        as_json: bool,
        book: Path | None,
        answer: tuple[str, ...],
        on: date | None,
        **rest: object,
    ) -> object:
        click.get_current_context().meta[JSON_KEY] = as_json
        typed = typed_text(str(rest.get("file", "")))
        return function(asked=Asked(book=book, answers=answer, on=on, typed=typed), **rest)

    decorated: Any = wrapped
    for option in reversed(_OPTIONS):
        decorated = option(decorated)
    result: F = decorated
    return result


file_argument = click.argument("file", metavar="FILE")
explain_option = click.option(
    "--explain",
    metavar="KEY",
    help="Where one figure comes from: how it was worked out, its status, source and doubt.",
)


def wants_json() -> bool:
    """Whether the command now running was asked for its JSON object."""
    return bool(click.get_current_context().meta.get(JSON_KEY))


def _answers(ctx: click.Context, _: click.Parameter, value: tuple[str, ...]) -> tuple[str, ...]:
    for text in value:
        if "=" not in text:
            raise click.BadParameter(
                f"'{text}' names no place. Write the place, =, and the line: "
                '"line 4=5 eggs, EU M".',
                ctx=ctx,
                param_hint="--answer",
            )
    return value


class Day(click.ParamType[date]):
    """A day as year-month-day."""

    name = "day"

    def convert(
        self, value: object, param: click.Parameter | None, ctx: click.Context | None
    ) -> date:
        """The day, or the refusal that shows how one is typed."""
        typed = str(value).strip()
        try:
            return datetime.strptime(typed, "%Y-%m-%d").date()  # noqa: DTZ007
        except ValueError:
            self.fail(f"'{typed}' is no day. Type it as 2027-06-10.", param, ctx)


_OPTIONS = (
    click.option("--json", "as_json", is_flag=True, help="One JSON object instead of text."),
    click.option(
        "--book",
        metavar="PATH",
        type=click.Path(path_type=Path),
        help="The book's folder [default: KRUME_BOOK, else your data folder].",
    ),
    click.option(
        "--answer",
        metavar="PLACE=LINE",
        multiple=True,
        callback=_answers,
        help='Answer a question for this call: "line 4=5 eggs, EU M". Repeatable.',
    ),
    click.option(
        "--on",
        metavar="DATE",
        type=Day(),
        help="Judge as of this day, 2027-06-10 [default: the book's day, else today].",
    ),
)
