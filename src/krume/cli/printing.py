"""Options of a label on its way to paper, and the days its parts were made."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date
from functools import wraps
from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.folders import Folder
from krume.cli.options import Day

if TYPE_CHECKING:
    from krume.usecases import PrintWish


@dataclass(frozen=True, slots=True)
class Printing:
    """Where a label goes, on which paper, by whom it is made, and what it carries."""

    out: Path | None
    labels: str
    maker: str
    made_parts: tuple[tuple[str, date], ...]
    more: "PrintWish"


class PartDay(click.ParamType[tuple[str, date]]):
    """A part and its day of making: C1=2027-06-10."""

    name = "part and day"

    def convert(
        self, value: str, param: click.Parameter | None, ctx: click.Context | None
    ) -> tuple[str, date]:
        """The part's name before the last equals sign, its day behind it."""
        part, is_said, day = value.rpartition("=")
        if not (is_said and part.strip()):
            self.fail(f"'{value}': type a part, = and its day: C1=2027-06-10.", param, ctx)
        return part.strip(), Day().convert(day.strip(), param, ctx)


def printing_options(function: Callable[..., int]) -> Callable[..., int]:
    """Options of print; the command gets them together as `printing`."""

    @click.option(
        "--out",
        metavar="DIR",
        type=Folder(),
        help="Folder for the label as PDF, page, text and JSON; made when it is not there.",
    )
    @click.option(
        "--labels",
        metavar="KEY",
        default="single-100x150",
        show_default=True,
        help="Size of the label, the sheet or the roll of labels, a row of the packed table.",
    )
    @click.option(
        "--made-part",
        "made_parts",
        metavar="PART=DATE",
        type=PartDay(),
        multiple=True,
        help="A part that was made before the whole, and its day; repeatable.",
    )
    @click.option(
        "--maker",
        metavar="TEXT",
        default="",
        help="Name and address on the label [default: name and address of studio.toml].",
    )
    @click.option("--net", metavar="G", type=float, help="Net weight [default: a blank].")
    @click.option(
        "--code",
        metavar="TEXT",
        default="",
        help="Lot of the cake, in words and as a code [default: as written down for an order].",
    )
    @click.option(
        "--link", metavar="ADDRESS", default="", help="An address of your own in the code."
    )
    @click.option(
        "--area",
        metavar="CM2",
        type=float,
        help="Largest face of the package; in the US all of it that can bear a label.",
    )
    @wraps(function)
    def wrapped(
        *,
        out: Path | None,
        labels: str,
        made_parts: tuple[tuple[str, date], ...],
        maker: str,
        net: float | None,
        code: str,
        link: str,
        area: float | None,
        **rest: object,
    ) -> int:
        from krume.usecases import PrintWish

        more = PrintWish(code=code, net_g=net, link=link, area_cm2=area)
        return function(printing=Printing(out, labels, maker, made_parts, more), **rest)

    return wrapped
