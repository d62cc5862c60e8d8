"""Where errors become exit codes, one sentence for a person, or one envelope for a program."""

import sys
import traceback
from collections.abc import Sequence
from types import TracebackType
from typing import Self

import click

from krume.base import KrumeError, Problem
from krume.usecases import QuestionError

INTERRUPTED = 130
"""What a shell expects of a program that was stopped by its user."""


class Guard:
    """Runs a command line; whatever comes out of it becomes an exit code.

    This is the only place of the command line that meets every error, faults included.
    """

    def __init__(self, words: Sequence[str]) -> None:
        self.wants_json = "--json" in words
        self.command = next((word for word in words if not word.startswith("-")), "")
        self.code = 0

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, _: type[BaseException] | None, error: BaseException | None, __: TracebackType | None
    ) -> bool:
        if error is None or isinstance(error, SystemExit | GeneratorExit):
            return False
        try:
            self.code = self._report(error)
        except KrumeError as silent:
            self.code = self._complain(problem_of(silent), silent.exit_code)
        return True

    def _report(self, error: BaseException) -> int:
        if isinstance(error, click.Abort | KeyboardInterrupt):
            return INTERRUPTED
        if isinstance(error, click.UsageError):
            return self._usage(error)
        if isinstance(error, KrumeError):
            return self._say(problem_of(error), error.exit_code)
        return self._fault(error)

    def _usage(self, error: click.UsageError) -> int:
        if not self.wants_json:
            error.show()
            return 2
        option = getattr(error, "param_hint", None) or getattr(error, "option_name", None)
        where = str(option or self.command or "krume").strip("'\"")
        return self._say(Problem("usage", where, "", error.format_message()), 2)

    def _say(self, problem: Problem, code: int) -> int:
        if not self.wants_json:
            return self._complain(problem, code)
        from krume.cli.envelope import failure
        from krume.cli.output import write_json

        write_json(failure(self.command, problem))
        return code

    def _complain(self, problem: Problem, code: int) -> int:
        from krume.cli.page import answer_words, visible

        if sys.stderr is not None:
            click.echo(visible(problem.ask), err=True)
            for option in problem.options:
                words = answer_words(problem, option)
                click.echo(f"  {visible(option.label)}\n    {words}", err=True)
        return code

    def _fault(self, error: BaseException) -> int:
        frames = traceback.extract_tb(error.__traceback__)
        place = f"{frames[-1].name}, line {frames[-1].lineno}" if frames else "krume"
        said = f"A fault in krume itself, not in your text ({type(error).__name__} in {place})."
        if sys.stderr is not None:
            traceback.print_exception(error, file=sys.stderr)
        ask = f"{said} Nothing was changed. Report it with the words you typed."
        return self._say(Problem("fault", place, "", ask), 1)


def problem_of(error: KrumeError) -> Problem:
    """An error of krume's own tree, as a problem a person can read."""
    if isinstance(error, QuestionError):
        return error.problem
    return Problem(error.code, error.where or error.field or "krume", error.got, error.message)
