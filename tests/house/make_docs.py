"""Write docs/cli.md and docs/codes.md: `python3 run.py python -m tests.house.make_docs`."""

from collections.abc import Iterator
from pathlib import Path

import click

from krume.base import errors
from krume.cli import krume_command
from tests.house.codes import every_code
from tests.house.source import ROOT

CLI = ROOT / "docs" / "cli.md"
CODES = ROOT / "docs" / "codes.md"
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

_SETTINGS = """\
| setting | what it is |
|---|---|
| `KRUME_BOOK` | the folder of the book, where no `--book` is given |

"""

_CODES_HEAD = """\
# Codes of questions and notices

Written from the source by `python3 run.py python -m tests.house.make_docs`; a test fails while it
is stale. A question is a problem of the answer: it closes what depends on it and carries the lines
to type. A notice says what was taken for granted. Three dots stand where a value is put in.

| code | kind | words | asked in |
|---|---|---|---|
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


def cli_page() -> str:
    """The page of commands."""
    parts = [
        f"## `{name}`\n\n```text\n{text}\n```\n"
        for name, text in commands(krume_command, ("krume",))
    ]
    return _HEAD + _errors() + _SETTINGS + "\n".join(parts)


def codes_page() -> str:
    """The page of codes."""
    lines = (
        f"| `{one.code}` | {one.kind} | {one.words.replace('|', '/')} | `{one.module}` |\n"
        for one in every_code()
    )
    return _CODES_HEAD + "".join(lines)


def pages() -> dict[Path, str]:
    """Each generated page with its text."""
    return {CLI: cli_page(), CODES: codes_page()}


def _errors() -> str:
    lines = ["| error code | exit code | HTTP status | what it says |", "|---|---:|---:|---|"]
    kinds = [kind for kind in vars(errors).values() if isinstance(kind, type)]
    for kind in kinds:
        if issubclass(kind, errors.KrumeError):
            told = (kind.__doc__ or "").splitlines()[0]
            lines.append(f"| `{kind.code}` | {kind.exit_code} | {kind.http_status} | {told} |")
    return "\n".join(lines) + "\n\n"


if __name__ == "__main__":
    for path, text in pages().items():
        path.write_text(text, encoding="utf-8")
