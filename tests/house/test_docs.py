"""The generated pages are current, and every command and option says what it is for."""

import ast
from pathlib import Path

import click
import pytest

from krume.cli import krume_command
from tests.house import make_docs
from tests.house.codes import told
from tests.house.source import SRC, Module, modules
from tests.house.test_source import calls

EVERY = list(make_docs.commands(krume_command, ("krume",)))


@pytest.mark.parametrize("path", [make_docs.CLI, make_docs.CODES], ids=lambda path: path.name)
def test_a_generated_page_is_current(path: Path) -> None:
    kept = path.read_text(encoding="utf-8")
    assert kept == make_docs.pages()[path], "stale: python3 run.py python -m tests.house.make_docs"


def test_every_setting_is_on_the_page_of_commands() -> None:
    read = {
        str(node.args[0].value)
        for module in modules()
        for node, owner, _ in calls(module)
        if owner == "environ" and node.args and isinstance(node.args[0], ast.Constant)
    }
    assert read
    assert [name for name in read if f"`{name}`" not in make_docs.cli_page()] == []


def test_the_words_of_a_question_are_found_where_a_name_stands_for_them() -> None:
    text = "def f(n):\n    ask = f'{n} eggs: which size?'\n    Problem('egg-size', 'x', 'y', ask)"
    module = Module("m", SRC / "m.py", text, ast.parse(text))
    assert [(one.code, one.words) for one in told(module)] == [("egg-size", "… eggs: which size?")]


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
