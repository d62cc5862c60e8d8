"""A formula in another tin: its sizes, and one of them kept as a child, or weighed at once."""

from dataclasses import dataclass
from urllib.parse import quote

from starlette.responses import RedirectResponse, Response

from krume.base import ConflictError, InputError
from krume.usecases import (
    Asked,
    SizeChoice,
    SizeOption,
    SizeWish,
    is_new_size,
    keep_size,
    size_formula,
)
from krume.web.frame.forms import Form

_SEE_OTHER = 303


@dataclass(frozen=True, slots=True)
class SizeRow:
    """One size, whether it can be kept, and what stood against its name."""

    option: SizeOption
    factor: str
    can_keep: bool
    form: Form
    taken: str


@dataclass(frozen=True, slots=True)
class SizePart:
    """The sizes of a formula for a tin that was asked for."""

    tin: str
    rows: tuple[SizeRow, ...]
    asks: tuple[str, ...]
    wrong: str = ""


@dataclass(frozen=True, slots=True)
class NotKept:
    """A size that could not be kept: what was sent, and why."""

    form: Form
    error: ConflictError | InputError


def size_part(place: str, tin: str, asked: Asked, not_kept: NotKept | None = None) -> SizePart:
    """The sizes for a tin; nothing where no tin was said."""
    if not tin:
        return SizePart("", (), ())
    answer = size_formula(place, SizeWish((tin,)), asked)
    asks = tuple(dict.fromkeys(problem.ask for problem in answer.problems))
    rows = tuple(
        _row(each, not_kept, can_keep=is_new_size(each, answer.result))
        for each in answer.result.options
    )
    is_told = not_kept is None or any(row.form.wrong for row in rows)
    return SizePart(tin, rows, asks, "" if is_told or not_kept is None else not_kept.error.message)


def _row(option: SizeOption, not_kept: NotKept | None, *, can_keep: bool) -> SizeRow:
    factor = repr(option.factor)
    bare = SizeRow(option, factor, can_keep, Form(), "")
    if not_kept is None or not_kept.error.field != "name":
        return bare
    form = not_kept.form
    if (form.get("kind"), form.get("factor")) != (option.kind, factor):
        return bare
    wrong = form.with_wrong("name", not_kept.error.message)
    taken = quote(not_kept.error.got or "", safe="")
    return SizeRow(option, factor, can_keep, wrong, taken)


def kept_size(name: str, form: Form, asked: Asked) -> Response:
    """Keep a size, and go on to its page, or to its bench."""
    choice = SizeChoice(
        tin=form.get("tin").strip(),
        kind=form.get("kind"),
        factor=_factor(form.get("factor")),
        seen=form.whole("seen"),
        name=form.get("name"),
    )
    child = quote(keep_size(name, choice, asked).name, safe="")
    address = f"/bench/{child}" if form.get("go") == "weigh" else f"/formulas/{child}"
    return RedirectResponse(address, status_code=_SEE_OTHER)


def _factor(text: str) -> float:
    try:
        return float(text)
    except ValueError:
        raise InputError("No size was chosen. Size it again.", field="tin", got=text) from None
