"""Questions and notices about one tin text, gathered while it is read."""

from dataclasses import dataclass, field

from krume.base import Notice, Option, Problem, Read
from krume.size.tin import Tin

_SHOWN = 80


@dataclass(slots=True)
class Asking:
    """The text being read, where it stands, and what has been asked and noted so far."""

    text: str
    where: str
    prefix: str = ""
    problems: list[Problem] = field(default_factory=list)
    notices: list[Notice] = field(default_factory=list)

    def ask(self, code: str, question: str, *lines: str | tuple[str, str]) -> None:
        """Ask; each line is an answer to type, or a label with its line."""
        pairs = [(line, line) if isinstance(line, str) else line for line in lines]
        options = tuple(Option(label, self.prefix + line) for label, line in pairs)
        self.problems.append(Problem(code, self.where, self.shown(), question, options))

    def note(self, code: str, text: str) -> None:
        """Note something that was assumed."""
        self.notices.append(Notice(code, text, self.where))

    def shown(self) -> str:
        """What was read, cut where it is long."""
        text = " ".join(self.text.split())
        return text if len(text) <= _SHOWN else text[: _SHOWN - 1] + "…"

    def answer(self, tin: Tin | None) -> Read[Tin | None]:
        """The tin, or None while a question is open."""
        value = None if self.problems else tin
        return Read(value, tuple(self.problems), tuple(self.notices))
