"""One page of text for a person: narrow or wide, plain where no terminal is."""

import io
import shlex
import shutil
import sys
import unicodedata
from collections.abc import Sequence
from typing import TYPE_CHECKING

from krume.base import Option, Problem

if TYPE_CHECKING:
    from rich.text import Text

WIDE = 72
"""Columns from which a row of figures stands on one line."""

_RIGHT_TO_LEFT = ("R", "AL", "AN")


def visible(text: str) -> str:
    r"""Text as it may go to a terminal: no control signs, right-to-left lines set apart.

    >>> visible("85 g \x1b[31mflour")
    '85 g \ufffd[31mflour'
    """
    shown = "".join("\ufffd" if _is_control(sign) else sign for sign in text)
    if any(unicodedata.bidirectional(sign) in _RIGHT_TO_LEFT for sign in shown):
        return f"\u2068{shown}\u2069"
    return shown


def _is_control(sign: str) -> bool:
    return unicodedata.category(sign) in ("Cc", "Cs") or sign in "\u202a\u202b\u202c\u202d\u202e"


class Page:
    """Collects what is shown, then gives it as one text."""

    def __init__(self, *, width: int, colour: bool) -> None:
        from rich.console import Console

        self.width = width
        self._file = io.StringIO()
        self._console = Console(
            file=self._file,
            width=width,
            force_terminal=colour,
            highlight=False,
            markup=False,
            emoji=False,
            legacy_windows=False,
        )

    @property
    def is_wide(self) -> bool:
        """Whether a row of figures fits on one line."""
        return self.width >= WIDE

    def text(self) -> str:
        """Everything shown so far."""
        lines = self._file.getvalue().split("\n")
        return "\n".join(line.rstrip() for line in lines)

    def line(self, text: str = "", *, style: str = "", indent: int = 0) -> None:
        """One paragraph, wrapped to the width."""
        from rich.padding import Padding

        if not text:
            self._console.print()
            return
        self._console.print(Padding(self._text(text, style), (0, 0, 0, indent), expand=False))

    def title(self, text: str) -> None:
        """The name of what is shown."""
        self.line(text, style="bold")

    def head(self, text: str) -> None:
        """A heading with an empty line above it."""
        self.line()
        self.line(text, style="bold")

    def whole(self, text: str, *, indent: int = 0) -> None:
        """A line that is never wrapped, so that it can be copied: a path, a command."""
        self._console.print(self._text(" " * indent + text, ""), soft_wrap=True)

    def rows(
        self, rows: Sequence[Sequence[str]], *, right: Sequence[int] = (), indent: int = 0
    ) -> None:
        """Rows of cells, the columns in `right` set to the right; long cells fold."""
        from rich.padding import Padding
        from rich.table import Table

        table = Table(box=None, show_header=False, pad_edge=False, padding=(0, 2, 0, 0))
        for index in range(max((len(row) for row in rows), default=0)):
            if index in right:
                table.add_column(justify="right", no_wrap=True)
            else:
                table.add_column(overflow="fold")
        for row in rows:
            table.add_row(*(self._text(cell, "") for cell in row))
        self._console.print(Padding(table, (0, 0, 0, indent), expand=False))

    def columns(self, left: str, right: str, left_width: int, *, indent: int = 0) -> None:
        """Two texts side by side, the left one in a column of its own width."""
        from rich.padding import Padding
        from rich.table import Table

        table = Table(box=None, show_header=False, pad_edge=False, padding=(0, 2, 0, 0))
        table.add_column(width=left_width, overflow="fold")
        table.add_column(overflow="fold")
        table.add_row(self._text(left, ""), self._text(right, ""))
        self._console.print(Padding(table, (0, 0, 0, indent), expand=False))

    def _text(self, text: str, style: str) -> "Text":
        from rich.text import Text

        return Text(visible(text), style=style)


def page_for_stdout() -> Page:
    """A page as wide as the terminal; 80 columns and no colour where there is none."""
    is_terminal = sys.stdout is not None and sys.stdout.isatty()
    return Page(width=max(20, shutil.get_terminal_size().columns), colour=is_terminal)


def show_problems(page: Page, problems: Sequence[Problem], *, clash: bool = False) -> None:
    """The questions, each with the words that answer it, ready to copy."""
    if not problems:
        return
    page.title(_count(problems, clash=clash))
    for number, problem in enumerate(problems, start=1):
        page.line()
        page.line(f"{number}. {problem.ask}")
        read = f"{problem.where}: {problem.read}" if problem.read else problem.where
        page.line(read, indent=3)
        for option in problem.options:
            page.line(option.label, indent=3)
            page.whole(answer_words(problem, option), indent=5)
    page.line()


def answer_words(problem: Problem, option: Option) -> str:
    """What to add to the command line to answer a problem with one of its options."""
    return f"--answer {visible(shlex.quote(f'{problem.where}={option.line}'))}"


def _count(problems: Sequence[Problem], *, clash: bool) -> str:
    if clash:
        return "No answer within these limits."
    questions = "1 question" if len(problems) == 1 else f"{len(problems)} questions"
    return f"{questions} first. Nothing was changed."
