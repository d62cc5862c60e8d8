"""Questions and notices about one tin text, gathered while it is read."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace

from krume.base import Notice, Option, Problem, Read
from krume.size.tin import Tin

_SHOWN = 80
_EXAMPLES = ("round 20 x 5 cm", "sheet 13 x 9 x 1 in")


@dataclass(slots=True)
class Asking:
    """The text being read, where it stands, and what has been asked and noted so far.

    `lead` and `tail` are what every option keeps of the text: how many tins, the material, greased
    or not.
    """

    text: str
    where: str
    prefix: str = ""
    lead: str = ""
    tail: str = ""
    problems: list[Problem] = field(default_factory=list)
    notices: list[Notice] = field(default_factory=list)

    def ask(
        self, code: str, question: str, *lines: str | tuple[str, str], whole: bool = False
    ) -> None:
        """Ask; each line is an answer to type, or a label with its line; `whole` lines stand."""
        pairs = [(line, line) if isinstance(line, str) else line for line in lines]
        lead, tail = ("", "") if whole else (self.lead, self.tail)
        options = tuple(Option(label, f"{self.prefix}{lead}{line}{tail}") for label, line in pairs)
        self.problems.append(Problem(code, self.where, self.shown(), question, options))

    def note(self, code: str, text: str) -> None:
        """Note something that was assumed."""
        self.notices.append(Notice(code, text, self.where))

    def shown(self) -> str:
        """What was read, cut where it is long."""
        text = " ".join(self.text.split())
        return text if len(text) <= _SHOWN else text[: _SHOWN - 1] + "…"

    def answer(
        self, tin: Tin | None, *, question_of: Callable[[str], str] | None = None
    ) -> Read[Tin | None]:
        """The tin, or None while a question is open; an option that does not read is left out."""
        value = None if self.problems else tin
        problems = tuple(self._sound(p, question_of) if question_of else p for p in self.problems)
        return Read(value, problems, tuple(self.notices))

    def _sound(self, problem: Problem, question_of: Callable[[str], str]) -> Problem:
        """The problem with the options that read; after a unit the shape may be asked."""
        allowed = {"", "tin-shape-missing"} if problem.code == "tin-unit-missing" else {""}
        cut = len(self.prefix)
        options = tuple(o for o in problem.options if question_of(o.line[cut:]) in allowed)
        examples = tuple(Option(line, self.prefix + line) for line in _EXAMPLES)
        return replace(problem, options=options or examples)
