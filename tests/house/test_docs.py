"""The generated page of commands is current, and every command and option says what it is for."""

import click
import pytest

from krume.cli import krume_command
from tests.house import make_docs

EVERY = list(make_docs.commands(krume_command, ("krume",)))


def test_the_page_of_commands_is_current() -> None:
    kept = make_docs.PAGE.read_text(encoding="utf-8")
    assert kept == make_docs.page(), "stale: python3 run.py python -m tests.house.make_docs"


def test_every_command_of_the_contract_is_there() -> None:
    names = {name for name, _ in EVERY}
    assert {f"krume {word}" for word in "read check size sheet calc book schema".split()} <= names


def found(name: str) -> click.Command:
    """The command of a name with spaces."""
    command: click.Command | None = krume_command
    for word in name.split()[1:]:
        assert isinstance(command, click.Group)
        command = command.get_command(click.Context(command), word)
    assert command is not None
    return command


@pytest.mark.parametrize("name", [name for name, _ in EVERY])
def test_a_command_and_each_of_its_options_says_what_it_is_for(name: str) -> None:
    command = found(name)
    assert command.help
    silent = [o.name for o in command.params if isinstance(o, click.Option) and not o.help]
    assert silent == []
