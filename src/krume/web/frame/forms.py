"""Forms: what was typed is kept, and what is wrong is said beside its field."""

from dataclasses import dataclass, field, replace

from starlette.datastructures import UploadFile
from starlette.requests import Request

from krume.base import Problem
from krume.web.frame.guarding import BODY_LIMIT


@dataclass(frozen=True, slots=True)
class Form:
    """What was typed, by field, and what is wrong with it, by field."""

    values: dict[str, str] = field(default_factory=dict)
    wrong: dict[str, str] = field(default_factory=dict)

    def get(self, name: str) -> str:
        """What was typed into a field; nothing where it was left empty."""
        return self.values.get(name, "")

    def whole(self, name: str) -> int | None:
        """A whole number of a hidden field; None where there is none."""
        text = self.get(name).strip()
        return int(text) if text.isascii() and text.isdigit() else None

    def with_wrong(self, name: str, words: str) -> "Form":
        """The same form with one more thing that is wrong."""
        return replace(self, wrong={**self.wrong, name: words})

    def with_problems(self, problems: tuple[Problem, ...], fields: dict[str, str]) -> "Form":
        """Questions of a usecase, each beside the field its place means."""
        said = {fields[p.where]: p.ask for p in problems if p.where in fields}
        return replace(self, wrong={**self.wrong, **said})


async def read_form(request: Request) -> Form:
    """The fields of a form that was sent; an upload counts by its text, line ends as typed."""
    sent = await request.form(max_files=4, max_fields=500, max_part_size=BODY_LIMIT)
    values: dict[str, str] = {}
    for name, value in sent.multi_items():
        if isinstance(value, UploadFile):
            data = await value.read()
            values[name] = data.decode("utf-8-sig", errors="replace")
            values[f"{name}.file"] = value.filename or ""
        else:
            values[name] = value.replace("\r\n", "\n")
    return Form(values)
