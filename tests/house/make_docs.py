"""Write docs/cli.md from the commands' help: `python3 run.py python -m tests.house.make_docs`."""

from collections.abc import Iterator

import click

from krume.base import errors
from krume.cli import krume_command
from tests.house.source import ROOT

PAGE = ROOT / "docs" / "cli.md"
WIDTH = 80

_HEAD = """\
# The command line

Written from the commands' own help by `python3 run.py python -m tests.house.make_docs`; a test
fails while it is stale.

With `--json`, standard output holds one JSON object and nothing else: `krume`, `command`, `ok`,
`result`, `problems`, `notices`, `sources`. `krume schema COMMAND` prints its schema.

| exit code | what it says |
|---:|---|
| 0 | answered |
| 1 | a fault of the program |
| 2 | wrong usage |
| 3 | the input needs an answer: see `problems`; nothing was changed |
| 4 | no answer exists within the limits given; the clashing ones are named |
| 5 | the book refused; nothing was lost |

"""


def commands(command: click.Command, words: tuple[str, ...]) -> Iterator[tuple[str, str]]:
    """Each command below one, itself first, with its help."""
    context = click.Context(
        command, info_name=" ".join(words), terminal_width=WIDTH, max_content_width=WIDTH
    )
    yield " ".join(words), command.get_help(context)
    if isinstance(command, click.Group):
        for name in command.list_commands(context):
            below = command.get_command(context, name)
            if below is not None:
                yield from commands(below, (*words, name))


def page() -> str:
    """The whole page."""
    parts = [
        f"## `{name}`\n\n```text\n{text}\n```\n"
        for name, text in commands(krume_command, ("krume",))
    ]
    return _HEAD + _errors() + "\n".join(parts)


def _errors() -> str:
    lines = ["| error code | exit code | HTTP status | what it says |", "|---|---:|---:|---|"]
    kinds = [kind for kind in vars(errors).values() if isinstance(kind, type)]
    for kind in kinds:
        if issubclass(kind, errors.KrumeError):
            told = (kind.__doc__ or "").splitlines()[0]
            lines.append(f"| `{kind.code}` | {kind.exit_code} | {kind.http_status} | {told} |")
    return "\n".join(lines) + "\n\n"


if __name__ == "__main__":
    PAGE.write_text(page(), encoding="utf-8")
