"""The command `krume`: its list, its help, its exit codes, what it loads."""

import subprocess
import sys

import click
import pytest

from krume import __version__
from krume.cli import krume_command, main
from krume.cli.group import COMMANDS
from tests.cli.conftest import Run


def test_help_lists_every_command_with_its_line(run: Run) -> None:
    said = run("--help")
    assert said.code == 0
    for name, (_, line) in COMMANDS.items():
        assert f"  {name} " in said.out
        assert line in " ".join(said.out.split())


@pytest.mark.parametrize("name", list(COMMANDS))
def test_the_line_in_the_list_is_the_commands_own_first_line(name: str) -> None:
    command = krume_command.get_command(click.Context(krume_command), name)
    assert command is not None
    assert command.name == name
    assert (command.help or "").partition("\n")[0] == COMMANDS[name][1]


@pytest.mark.parametrize("name", list(COMMANDS))
def test_every_command_has_help(run: Run, name: str) -> None:
    said = run(name, "--help")
    assert said.code == 0
    assert said.out.startswith(f"Usage: krume {name}")


def test_the_version_names_program_and_data(run: Run) -> None:
    said = run("--version")
    assert said.code == 0
    assert said.out.startswith(f"krume {__version__}, data ")


@pytest.mark.parametrize("words", [("cook",), ("slip", "F2"), ("read",), ("size", "F2"),
                                   ("read", "F2", "--colour"), ("size", "F2", "--tin", "a",
                                    "--depth", "deep"), ("book",), ("book", "burn")])  # fmt: skip
def test_wrong_usage_is_exit_2_on_the_error_stream(run: Run, words: tuple[str, ...]) -> None:
    said = run(*words)
    assert said.code == 2
    assert said.out == ""
    assert "Usage: krume" in said.err or "Usage:" in said.err


@pytest.mark.parametrize("words", [("cook",), ("read",), ("read", "F2", "--colour"), ("schema",)])
def test_wrong_usage_is_one_object_when_that_is_asked_for(run: Run, words: tuple[str, ...]) -> None:
    said = run(*words, "--json")
    assert said.code == 2
    (problem,) = said.json["problems"]
    assert problem["code"] == "usage"
    assert said.json["command"] == words[0]
    assert said.err == ""


def test_main_gives_its_exit_code_back(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--version"]) == 0
    assert main(["cook"]) == 2
    assert "No such command 'cook'" in capsys.readouterr().err


def test_the_package_runs_as_a_module() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "krume", "--version"], capture_output=True, text=True, check=False
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.startswith(f"krume {__version__}")


@pytest.mark.parametrize("words", [["--help"], ["read", "--help"], ["check", "--help"],
                                   ["size", "--help"], ["sheet", "--help"], ["calc", "--help"],
                                   ["book", "demo", "--help"]])  # fmt: skip
def test_help_reads_no_table_and_loads_no_stage_of_the_work(words: list[str]) -> None:
    code = (
        f"import sys; from krume.cli import main; main({words!r})\n"
        "print('LOADED', *[n for n in sys.modules if n.startswith('krume.')])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    loaded = set(done.stdout.partition("LOADED")[2].split())
    stages = {f"krume.{name}" for name in ("pantry", "design", "size", "calc", "publish", "build")}
    assert loaded & stages == set()
