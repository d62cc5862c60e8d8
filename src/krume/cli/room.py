"""`krume room`: what wheat may come by in your own room, and how each thing stands."""

from typing import TYPE_CHECKING

import click

from krume.cli.options import common
from krume.cli.page import Page
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from krume.usecases import RoomListResult, RoomThing


@click.command("room")
@click.option(
    "--say",
    "said",
    metavar="NAME=STATE",
    multiple=True,
    help='How one thing stands today: "sieve=own", "wheat day=shared". Repeatable.',
)
@common
def command(asked: Asked, said: tuple[str, ...]) -> int:
    """What wheat may come by in your own room, and how each thing stands.

    Each thing says what is asked, how it stands today, and what it needs before a gluten sentence
    may be printed. Without the list the cleaning record of the day alone speaks for the room;
    once it is begun, whatever is not answered shuts the gate. Local law decides.
    """
    from krume.usecases import room_list_of

    return tell("room", room_list_of(asked, said=said), _show)


def _show(page: Page, found: "RoomListResult") -> None:
    begun = f"{found.open_count} of {len(found.things)} open" if found.is_begun else "not begun"
    page.title(f"The room on {found.on}: {begun}")
    for written in found.written:
        page.line(f"Written down: {written}")
    page.line(_cleaned(found.cleaned))
    for each in found.things:
        page.head(f"{each.name}: {_word(each, is_begun=found.is_begun)}")
        page.line(each.text if found.is_begun else each.asks, indent=2)
        if not each.is_open:
            page.line(each.needs, indent=2)
            page.line(f"Say: {' or '.join(word for word, _ in each.states)}", indent=2)
    for said in found.unread:
        page.line()
        page.line(said)
    page.head("To write it down")
    page.whole('krume room --say "sieve=own" --say "cloths=cleaned"', indent=2)
    page.line("“Cleaned” counts on its own day, “own” and “none” for a year.", indent=2)
    page.line("Your local law and, where one exists, your licensing authority decide.")


def _word(each: "RoomThing", *, is_begun: bool) -> str:
    if not is_begun:
        return "not answered"
    return "open" if each.is_open else "shut"


def _cleaned(said: bool | None) -> str:  # noqa: FBT001
    if said is None:
        return "Cleaning of the day: not written yet."
    return "Cleaning of the day: yes." if said else "Cleaning of the day: no."
