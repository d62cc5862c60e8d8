"""Questions and notices of one line, gathered while it is read; every option is an edit of it."""

from dataclasses import dataclass, field

from krume.base import Notice, Option, Problem, as_text

_LONGEST_READ = 200


@dataclass(slots=True)
class Asking:
    """What is asked and noted about one source line; questions quote the piece at hand."""

    source: str
    piece: str = ""
    problems: list[Problem] = field(default_factory=list)
    notices: list[Notice] = field(default_factory=list)

    def ask(self, code: str, question: str, *options: tuple[str, str], read: str = "") -> None:
        """Ask; each option is a label and the whole line to type in place of this one."""
        offered = tuple(Option(label, line) for label, line in dict(options).items())
        shown = (read or self.piece or self.source).strip()[:_LONGEST_READ]
        self.problems.append(Problem(code, "", shown, question, offered))

    def note(self, code: str, text: str) -> None:
        """Say what was assumed."""
        self.notices.append(Notice(code, text))

    def edit(self, start: int, end: int, new: str) -> str:
        """The source line with one stretch of it replaced."""
        return self.source[:start] + new + self.source[end:]


def left_out(source: str) -> str:
    """A line put in brackets, so that it stays readable and counts no more."""
    return f"({source.strip()}, left out)"


def grams(value: float) -> str:
    """Grams as a person writes them."""
    return f"{as_text(value, 2 if abs(value) < 10 else 1)} g"
