"""Where labels stand on paper: sheets, single labels and rolls, each a row of the packed table."""

from dataclasses import dataclass
from functools import cache

from krume.base import InputError
from krume.evidence import Row, column, load, optional

LAYOUT_COLUMNS = (
    column("key", "key"),
    column("kind", "one of", "sheet", "roll"),
    column("label"),
    *(column(name, "number") for name in ("page_width_mm", "columns", "rows", "label_width_mm")),
    *(column(name, "number") for name in ("left_mm", "top_mm", "column_pitch_mm")),
    *(optional(name, "number") for name in ("page_height_mm", "label_height_mm", "row_pitch_mm")),
    column("status", "status"),
    column("source", "source"),
)


@dataclass(frozen=True, slots=True)
class LabelLayout:
    """A sheet of labels, or one label a page of a roll; an endless roll has no height of its own.

    The heights are None where the roll is cut after the words.
    """

    key: str
    kind: str
    label: str
    page_width_mm: float
    page_height_mm: float | None
    columns: int
    rows: int
    label_width_mm: float
    label_height_mm: float | None
    left_mm: float
    top_mm: float
    column_pitch_mm: float
    row_pitch_mm: float | None

    @property
    def is_endless(self) -> bool:
        """Whether the paper is cut where the words end."""
        return self.label_height_mm is None


@cache
def label_layouts() -> tuple[LabelLayout, ...]:
    """Sheets and sizes of labels, in the order of the table."""
    return tuple(_layout(row) for row in load("label_sheets.csv", LAYOUT_COLUMNS))


def _layout(row: Row) -> LabelLayout:
    return LabelLayout(
        key=row.text("key"),
        kind=row.text("kind"),
        label=row.text("label"),
        page_width_mm=row.number_of("page_width_mm"),
        page_height_mm=row.maybe("page_height_mm"),
        columns=int(row.number_of("columns")),
        rows=int(row.number_of("rows")),
        label_width_mm=row.number_of("label_width_mm"),
        label_height_mm=row.maybe("label_height_mm"),
        left_mm=row.number_of("left_mm"),
        top_mm=row.number_of("top_mm"),
        column_pitch_mm=row.number_of("column_pitch_mm"),
        row_pitch_mm=row.maybe("row_pitch_mm"),
    )


def label_layout(key: str) -> LabelLayout:
    """Layout of a key, or one sentence that names those there are."""
    found = {layout.key: layout for layout in label_layouts()}
    if key not in found:
        message = f"'{key}' is no sheet of labels. There are: {', '.join(found)}."
        raise InputError(message, field="labels", got=key, want=", ".join(found))
    return found[key]
