"""The command `krume`: its commands are imported when they are called, not before."""

from collections.abc import Sequence
from importlib import import_module
from typing import Any

import click

from krume.cli.errors import Guard

COMMANDS: dict[str, tuple[str, str]] = {
    "read": ("read", "What a written formula says, line by line, and what it leaves open."),
    "check": ("check", "Percentages against the usual bands."),
    "blend": ("blend", "The nearest blend of the flours at hand, within the limits you type."),
    "size": ("size", "The formula in other tins, with whole eggs."),
    "vary": (
        "vary",
        "One thing for another: the grams that follow, allergens first, and what nobody knows.",
    ),
    "slip": ("slip", "Too much in the bowl: every exact way out, least change first."),
    "bake": ("bake", "How long in this tin and oven: when to start looking, and the doubt."),
    "load": ("load", "Several tins in one oven: how much later each is done, who is last."),
    "oven": ("oven", "What your oven is off its dial and how strong it is, by your own bakes."),
    "build": ("build", "How a torte stands: heights, grams, slices, what to make of each cream."),
    "fill": ("fill", "How much of a cream fills a ring, in grams and whole cartons."),
    "fridge": ("fridge", "The fridge was off: what is kept, what stops, what is made anew."),
    "keep": ("keep", "How long it keeps, and what must be said with it."),
    "plan": ("plan", "A timetable for one or more orders, and what to buy."),
    "eggs": ("eggs", "The fewest eggs to buy and crack, and which formula takes what is left."),
    "label": ("label", "What the buyer must be told: ingredients, allergens, nutrition, gluten."),
    "gluten": ("gluten", "Can somebody with coeliac disease eat it: a true answer, lot by lot."),
    "room": ("room", "What wheat may come by in your own room, and how each thing stands."),
    "cost": ("cost", "What it costs, what to ask for it, how many pay the fixed costs."),
    "sheet": ("sheet", "Bench cards, torte plans, order sheets and more, as PDF, HTML and JSON."),
    "trace": ("trace", "Which lots went into which cake for whom, and where a lot went."),
    "calc": ("calc", "Quick sums: tins, eggs, gelatine, rolls, the dial."),
    "book": ("book", "Where your texts live, and the care of them."),
    "serve": ("serve", "The web app on 127.0.0.1, until you stop it with Ctrl-C."),
    "schema": ("schema", "The JSON Schema of a command's --json answer."),
}
"""Each command's module and its one line, in the order of the work."""


class KrumeGroup(click.Group):
    """A group that imports a command when it is asked for, and owns the exit codes."""

    def list_commands(self, _: click.Context) -> list[str]:
        """Commands in the order of the work."""
        return list(COMMANDS)

    def get_command(self, _: click.Context, cmd_name: str) -> click.Command | None:
        """Command of a name, its module imported now."""
        if cmd_name not in COMMANDS:
            return None
        module = import_module(f"krume.cli.{COMMANDS[cmd_name][0]}")
        command = module.command
        return command if isinstance(command, click.Command) else None

    def format_commands(self, _: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands without importing any of them."""
        with formatter.section("Commands"):
            formatter.write_dl([(name, line) for name, (_, line) in COMMANDS.items()])

    def main(self, args: Sequence[str] | None = None, *_: Any, **extra: Any) -> Any:
        """Run the words of a command line and leave with the contract's exit code."""
        raise SystemExit(run(self, args, str(extra.get("prog_name") or "krume")))


def run(group: KrumeGroup, args: Sequence[str] | None, prog_name: str) -> int:
    """Exit code of the words of a command line."""
    from sys import argv

    words = list(argv[1:] if args is None else args)
    with Guard(words) as guard:
        code = click.Group.main(group, words, prog_name=prog_name, standalone_mode=False)
        guard.code = code if isinstance(code, int) else 0
    return guard.code


def _print_version(ctx: click.Context, _: click.Parameter, value: bool) -> None:  # noqa: FBT001
    if value and not ctx.resilient_parsing:
        from krume import __version__
        from krume.usecases import data_version

        click.echo(f"krume {__version__}, data {data_version()}")
        ctx.exit()


@click.command(
    "krume",
    cls=KrumeGroup,
    context_settings={"help_option_names": ["-h", "--help"]},
    epilog="Every command takes --json, --book, --answer and --on. `krume COMMAND --help` says "
    "what it reads and what it answers.",
)
@click.option(
    "--version",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=_print_version,
    help="Version of the program and of its data.",
)
def krume_command() -> None:
    """The sums of a gluten-free cake maker's whole job, from a written formula to a bench card."""


def main(words: Sequence[str] | None = None) -> int:
    """Run a command line; the exit code."""
    return run(krume_command, words, "krume")
