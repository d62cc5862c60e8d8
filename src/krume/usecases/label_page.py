"""One label on its way to a browser, drawn when it is asked for; and the names of the layouts."""

from dataclasses import dataclass

from krume.base import Infeasible, InputError, NotFoundError
from krume.publish import label_html, label_json, label_layout, label_layouts, label_pdf, label_text
from krume.usecases.asking.answer import Asked
from krume.usecases.label.label import LabelWish, labelled
from krume.usecases.label.paper import LAYOUT
from krume.usecases.label.paper_sheet import BARE, PrintWish, label_sheet
from krume.usecases.sheets.order_sheets import SheetBytes

MEDIA = {
    "pdf": "application/pdf",
    "html": "text/html; charset=utf-8",
    "txt": "text/plain; charset=utf-8",
    "json": "application/json",
}


@dataclass(frozen=True, slots=True)
class LayoutName:
    """A layout a label may be printed on: its key and what it is in words."""

    key: str
    words: str


def layout_names() -> tuple[LayoutName, ...]:
    """Layouts in the order of the table."""
    return tuple(LayoutName(each.key, each.label) for each in label_layouts())


def label_bytes(
    name: str,
    of: str,
    format_: str,
    wish: LabelWish,
    asked: Asked,
    *,
    layout: str = LAYOUT,
    more: PrintWish = BARE,
) -> SheetBytes:
    """The label of one thing in one format; a closed one or one too long is refused in words."""
    made = labelled(name, wish, asked)
    label = next((each for each in made.labels if each.name == of), None)
    if label is None or format_ not in MEDIA:
        message = f"There is no label {of}.{format_} of {name}."
        raise NotFoundError(message, where=name, got=f"{of}.{format_}")
    if label.blocked_by or made.problems:
        asks = (*(problem.ask for problem in made.problems), *label.blocked_by)
        message = f"The label of {of} is not printed yet. {' '.join(dict.fromkeys(asks))}"
        raise InputError(message, field="label", got=of, want="nothing on it that is not known")
    sheet = label_sheet(label, made, wish, asked, more)
    if format_ == "pdf":
        drawn = label_pdf(sheet, label_layout(layout))
        if isinstance(drawn, Infeasible):
            raise _too_much(drawn)
        return SheetBytes(drawn, MEDIA["pdf"], is_as_written=True)
    words = {"html": label_html, "txt": label_text, "json": label_json}[format_]
    return SheetBytes(words(sheet).encode(), MEDIA[format_], is_as_written=True)


def _too_much(drawn: Infeasible) -> InputError:
    clash = drawn.clashes[0]
    message = (
        f"{clash.name[:1].upper()}{clash.name[1:]} needs {clash.needs}; {clash.limit}, it has "
        f"{clash.has}. Choose a larger label or an endless roll."
    )
    return InputError(message, field="labels", got=clash.has, want=clash.needs)
