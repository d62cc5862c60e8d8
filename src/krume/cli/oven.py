"""`krume oven`: what is known of one's own oven, and what was written down of it."""

from datetime import date
from typing import TYPE_CHECKING

import click

from krume.cli.figures import number
from krume.cli.options import Day, common
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import OvenRecordShown, OvenResult, OvenShown

_SAME_PCT = 1


@click.command("oven")
@click.option(
    "--reading",
    "readings",
    metavar="TEXT",
    multiple=True,
    help='What a thermometer in it showed: "dial 160: 148, 152, 145". Repeatable.',
)
@click.option(
    "--bake",
    "bakes",
    metavar="TEXT",
    multiple=True,
    help='A cake that was done: "F1, round 20 cm, 540 g, dial 170, 38 min, core 95"; by skewer '
    '"34-38 min, skewer". Repeatable.',
)
@click.option("--list", "listed", is_flag=True, help="Every record with its number.")
@click.option("--forget", metavar="N", type=int, help="Take record N of the list out.")
@click.option(
    "--until",
    metavar="DATE",
    type=Day(),
    help="The oven was replaced or mended on this day: older records are of the old one.",
)
@click.option("--oven-name", metavar="NAME", help="Which oven [default: the studio's own].")
@common
def command(
    asked: Asked,
    readings: tuple[str, ...],
    bakes: tuple[str, ...],
    listed: bool,  # noqa: FBT001
    forget: int | None,
    until: date | None,
    oven_name: str | None,
) -> int:
    """What your oven is off its dial and how strong it is, by your own bakes.

    Say in a reading also: fan, no fan, low or top shelf, after 40 min (since switching on), 325 F.
    Say in a bake also: not done at 34 min, skewer, probe, colour, 0.48 g/ml, a day as 2027-06-10.
    """
    from krume.usecases import OvenWish, ovens_of

    day = None if until is None else until.isoformat()
    wish = OvenWish(readings, bakes, forget, day, oven_name)
    is_listed = listed or forget is not None
    return tell("oven", ovens_of(wish, asked), lambda p, found: _show(p, found, listed=is_listed))


def _show(page: Page, found: "OvenResult", *, listed: bool) -> None:
    if found.done:
        page.line(f"{found.done}.", style="bold")
    for oven in found.ovens:
        _show_oven(page, oven)
    if not listed:
        return
    page.head("Records")
    if not found.records:
        page.line("Nothing is written down yet.", indent=1)
    for record in found.records:
        _show_record(page, record)


def _show_oven(page: Page, oven: "OvenShown") -> None:
    page.head(f"{oven.name}, {'fan' if oven.fan else 'no fan'}, {oven.shelf} shelf")
    if oven.dial_c is not None:
        page.line(
            f"For {number(oven.at_c, 0)} °C turn the dial to {number(oven.dial_c, 0)} °C "
            f"({number(oven.dial_f, 0)} °F).",
            indent=1,
            style="bold",
        )
    page.line(oven.offset_text, indent=1)
    if oven.differs:
        read = ", ".join(f"{number(d.offset_c)} at dial {number(d.dial_c, 0)}" for d in oven.dials)
        page.line(f"Not the same at every setting: {read}.", indent=1)
    if oven.swing_c is not None:
        page.line(f"The thermostat swings it by {number(oven.swing_c)} °C either way.", indent=1)
    if oven.drift_c is not None:
        page.line(_drift(oven.drift_c), indent=1)
    page.line(oven.heat_text, indent=1)
    for flag in oven.flagged:
        if flag.code == "bake-invented":
            continue
        page.line(f"Not counted: {flag.key}: {flag.reason.rstrip('.')}.", indent=1)


def _drift(drift_c: float) -> str:
    """`It moved by 8 °C from the first reading to the last.`"""
    way = "up" if drift_c > 0 else "down"
    return (
        f"It went {way} by {number(abs(drift_c), 0)} °C from the first reading to the last. "
        "Was it mended? --until DATE begins anew."
    )


def _show_record(page: Page, record: "OvenRecordShown") -> None:
    day = f", {record.day}" if record.day else ""
    status = "" if record.status in ("", "measured") else f", {record.status}"
    page.line(f"{record.number}  {record.oven}{day}: {record.text}{status}", indent=1)
    if record.off_pct is not None and abs(record.off_pct) >= _SAME_PCT:
        side = "longer" if record.off_pct > 0 else "shorter"
        page.line(f"{number(abs(record.off_pct), 0)} % {side} than this oven's heat says", indent=4)
    if record.reason:
        page.line(f"does not count: {record.reason.rstrip('.')}.", indent=4)
