"""The commands that the pages show can be typed as they stand."""

import os
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from tests.house.source import ROOT

COMMAND = re.compile(r"^(?:    |\$ )?(?:python3 run\.py )?(krume [a-z].*)$", re.MULTILINE)
STANDS_FOR = re.compile(r"\b(FILE|TIN|DIR|NAME|PATH|COMMAND|ORDER|KEY)\b|…|\.\.\.")
GENERATED = {"cli.md", "codes.md", "validation.md"}
PAGES = sorted(
    p for p in [*ROOT.glob("*.md"), *ROOT.glob("docs/**/*.md")] if p.name not in GENERATED
)

# The text behind every name of a file that pages use: one question is open, on its fourth line.
PLAIN = """\
Plain sponge
Tin: round 20 x 7 cm

5 eggs
130 g caster sugar
75 g white rice flour
30 g potato starch

Whisk eggs and sugar, fold in the flours.
Bake until the core is 95 C.
"""


def commands(text: str) -> list[str]:
    """The commands of a page, without those that hold a word for something else."""
    blocks = re.findall(r"^```(?:sh|console|text|bash)\n(.*?)^```", text, re.MULTILINE | re.DOTALL)
    shown = [line for line in text.splitlines() if line.startswith("    ")]
    lines = "\n".join([*shown, *blocks])
    # What stands after a gap of three spaces or more tells what the command is for.
    found = [re.split(r"\s{3,}", line)[0] for line in COMMAND.findall(lines)]
    return [line for line in found if not STANDS_FOR.search(line)]


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the plain text and a book with the demo studio."""
    made = tmp_path_factory.mktemp("typed")
    for page in PAGES:
        for name in re.findall(r"[\w-]+\.txt", "\n".join(commands(page.read_text("utf-8")))):
            (made / name).write_text(PLAIN, encoding="utf-8")
    (made / "plain-2.txt").unlink(missing_ok=True)
    done = typed("krume book demo", made)
    assert done.returncode == 0, done.stderr
    return made


def typed(line: str, folder: Path) -> subprocess.CompletedProcess[str]:
    """What a command does in a folder."""
    words = [sys.executable, "-m", "krume", *shlex.split(line, comments=True)[1:]]
    environ = os.environ | {"KRUME_BOOK": str(folder / "book")}
    return subprocess.run(words, cwd=folder, env=environ, capture_output=True, text=True)


def test_the_pages_show_commands() -> None:
    assert sum(len(commands(page.read_text(encoding="utf-8"))) for page in PAGES) >= 5


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(ROOT)))
def test_every_command_of_a_page_answers_or_asks(page: Path, folder: Path) -> None:
    wrong = {}
    for line in commands(page.read_text(encoding="utf-8")):
        done = typed(line, folder)
        if done.returncode not in (0, 3, 4):
            wrong[line] = (done.returncode, done.stderr or done.stdout)
    assert wrong == {}
