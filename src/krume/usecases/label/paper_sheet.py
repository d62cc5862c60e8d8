"""A label's words as the sheet that is drawn: its panel, its net quantity, its lot and code."""

import math
from dataclasses import dataclass

from krume import __version__
from krume.base import InputError, OutOfRangeError
from krume.evidence import data_version
from krume.label import net_height_mm, net_phrases
from krume.publish import (
    FactsBox,
    FactsColumn,
    FactsRow,
    Imprint,
    LabelSheet,
    NetWords,
    PanelLine,
    PanelTable,
    qr_words,
)
from krume.store import book_at, studio_of
from krume.usecases.asking.answer import Asked
from krume.usecases.label.label import Labelled, LabelWish
from krume.usecases.label.result import LabelNutrition, LabelOf, LabelPanel, LabelRow
from krume.usecases.trace.codes import lot_codes

_BLANK = NetWords(("Net weight:", "____________ g"))
_ENERGY = ("energy-kj", "energy-kcal")


@dataclass(frozen=True, slots=True)
class PrintWish:
    """What a label carries besides its words, each as the person typed it.

    `link` is an address of the person's own for the code; `area_cm2` the surface of the package:
    its largest face in the EU, all that can bear a label in the US.
    """

    code: str = ""
    net_g: float | None = None
    link: str = ""
    area_cm2: float | None = None


BARE = PrintWish()
"""A blank for the net weight, the lot that was written down, no address."""


def label_sheet(
    label: LabelOf, made: Labelled, wish: LabelWish, asked: Asked, more: PrintWish = BARE
) -> LabelSheet:
    """The sheet of one label, in the market of its words."""
    _of_one_thing(made, more)
    area = more.area_cm2
    if area is not None and not 0 < area < math.inf:
        message = f"{area:g} cm² is no area of a package. Type the cm² of its largest face."
        raise OutOfRangeError(message, field="area", got=f"{area:g}", want="more than 0 cm²")
    studio = studio_of(book_at(asked.book))
    notes = (studio.sheet_note, studio.invented_note) if made.read.is_of_book else ()
    nutrition = label.nutrition if wish.with_panel else None
    code = more.code.strip() or _code_of(label, made, asked)
    return LabelSheet(
        name=label.title,
        market=made.market,
        ingredients=_lists(label),
        sentences=label.sentences,
        durability=label.durability.text,
        panel=None if nutrition is None else panel_drawn(nutrition),
        maker=label.maker,
        net=_net(more, made.market),
        imprint=Imprint(
            date=made.read.on.isoformat(),
            program=__version__,
            data=data_version(),
            market=made.market,
            notes=tuple(note for note in notes if note),
        ),
        code=code,
        says=qr_words(code, more.link.strip()),
        area_cm2=area,
    )


def _of_one_thing(made: Labelled, more: PrintWish) -> None:
    """Refuse a weight or a lot that was typed once for several things."""
    typed = {"net": more.net_g is not None, "code": bool(more.code.strip())}
    field = next((name for name, is_typed in typed.items() if is_typed), None)
    if field is None or len(made.labels) < 2:
        return
    what = "net weight" if field == "net" else "lot"
    names = ", ".join(each.name for each in made.labels)
    raise InputError(
        f"One {what} cannot be that of {len(made.labels)} things. Label them one by one: {names}.",
        field=field, got=what, want="one thing",
    )  # fmt: skip


def _code_of(label: LabelOf, made: Labelled, asked: Asked) -> str:
    """The lot that was written down for an order; of anything else the next cake is another."""
    if made.read.order is None:
        return ""
    return lot_codes(made.name, asked).get(label.name, "")


def _lists(label: LabelOf) -> str:
    """The list, or one a line where each part has its own."""
    return "\n".join(part.line for part in label.parts) or label.ingredients


def _net(more: PrintWish, market: str) -> NetWords:
    if more.net_g is None:
        return _BLANK
    phrases = net_phrases(more.net_g, market)
    return NetWords(phrases, net_height_mm(more.net_g, market, more.area_cm2))


def panel_drawn(nutrition: LabelNutrition) -> PanelTable | FactsBox | None:
    """The panel as it is drawn: the US box, or a table of our own; None where there is none."""
    if nutrition.panel is None:
        return None
    columns = (nutrition.panel, *nutrition.beside)
    if nutrition.panel.kind == "serving":
        return _facts(columns)
    # The share of the reference intake is free and not printed, nor is the sentence about it.
    return _table(columns, nutrition.notes)


def _facts(columns: tuple[LabelPanel, ...]) -> FactsBox:
    first = columns[0]
    calories = [_row_of(column, "calories").text or "" for column in columns]
    heads = [column.head if len(columns) > 1 else "" for column in columns]
    rows = [row for row in first.rows if row.key != "calories" and row.text is not None]
    return FactsBox(
        servings=first.servings,
        serving_size=first.serving_size,
        columns=tuple(FactsColumn(*each) for each in zip(heads, calories, strict=True)),
        rows=tuple(_facts_row(row, columns) for row in rows),
    )


def _row_of(column: LabelPanel, key: str) -> LabelRow:
    return next(row for row in column.rows if row.key == key)


def _facts_row(row: LabelRow, columns: tuple[LabelPanel, ...]) -> FactsRow:
    beside = [_row_of(column, row.key) for column in columns]
    percents = ("" if each.percent is None else f"{each.percent:g}%" for each in beside)
    amounts = tuple(each.text or "" for each in beside)
    return FactsRow(row.key, row.label, row.level, amounts, tuple(percents))


def _table(columns: tuple[LabelPanel, ...], notes: tuple[str, ...]) -> PanelTable:
    rows = [row for row in columns[0].rows if row.text is not None and row.key != _ENERGY[1]]
    gap = "\n" if len(columns) > 1 else " / "
    lines = [
        PanelLine(
            row.label, tuple(_cell(row.key, column, gap) for column in columns), row.level > 0
        )
        for row in rows
    ]
    return PanelTable(tuple(column.basis for column in columns), tuple(lines), notes)


def _cell(key: str, column: LabelPanel, gap: str) -> str:
    """A figure as printed; both energies stand in one cell."""
    keys = _ENERGY if key in _ENERGY else (key,)
    return gap.join(_row_of(column, each).text or "" for each in keys)
