"""Label sheets written to a folder: all of them, or none while anything on one is not known."""

from dataclasses import dataclass, replace
from pathlib import Path

from krume import __version__
from krume.base import Infeasible, Notice, Option, Problem
from krume.evidence import data_version
from krume.publish import (
    Imprint,
    LabelSheet,
    PanelLine,
    label_html,
    label_layout,
    label_pdf,
    missing_label_signs,
)
from krume.store import book_at, place_all, studio_of
from krume.usecases.asking.answer import Answer, Asked, clash_problems
from krume.usecases.asking.slug import slug
from krume.usecases.label.label import Labelled, LabelWish, label_result, labelled
from krume.usecases.label.result import LabelFile, LabelOf, LabelPanel, LabelResult, LabelRow

_OUT = "--out"
_NET = "Net weight: ____________ g"


LAYOUT = "single-100x150"
"""The label where none is asked for, a row of the packed table."""


@dataclass(frozen=True, slots=True)
class DrawnLabels:
    """Labels on their way to paper, by the name of their file; or why none is drawn."""

    files: dict[str, tuple[str, bytes]]
    problems: tuple[Problem, ...] = ()
    notices: tuple[Notice, ...] = ()
    is_possible: bool = True


def label_sheets(
    name: str, wish: LabelWish, asked: Asked, *, out: Path, layout: str
) -> Answer[LabelResult]:
    """Write the label of each thing as PDF and HTML; nothing while one of them is closed."""
    label_layout(asked.answer_for("--labels") or layout)
    made = labelled(name, wish, asked)
    result = label_result(made)
    drawn = drawn_labels(made, wish, asked, layout=layout)
    if drawn.problems:
        bare = Answer(result, drawn.problems, made.notices, made.sources)
        return replace(bare, is_possible=drawn.is_possible)
    place_all(out, {file: data for file, (_, data) in drawn.files.items()})
    folder = out.resolve()
    written = tuple(
        LabelFile("label", file.rpartition(".")[2], of, str(folder / file))
        for file, (of, _) in drawn.files.items()
    )
    notices = (*made.notices, *drawn.notices)
    return Answer(replace(result, files=written), (), notices, made.sources)


def drawn_labels(
    made: Labelled, wish: LabelWish, asked: Asked, *, layout: str = LAYOUT
) -> DrawnLabels:
    """The label of each thing as PDF and HTML; none while one of them is closed."""
    paper = label_layout(asked.answer_for("--labels") or layout)
    blocked = [_closed(each) for each in made.labels if each.blocked_by]
    if made.problems or blocked:
        return DrawnLabels({}, (*made.problems, *blocked), is_possible=made.read.is_possible)
    sheets = {each.name: _sheet(each, made, wish, asked) for each in made.labels}
    pages = {each: label_pdf(sheet, paper) for each, sheet in sheets.items()}
    clashes = [c for page in pages.values() if isinstance(page, Infeasible) for c in page.clashes]
    if clashes:
        problems = clash_problems(Infeasible(tuple(clashes)), "--labels")
        return DrawnLabels({}, problems, is_possible=False)
    signs = (notice for sheet in sheets.values() for notice in missing_label_signs(sheet))
    return DrawnLabels(_files(sheets, pages), (), tuple(dict.fromkeys(signs)))


def _closed(label: LabelOf) -> Problem:
    ask = f"The label of {label.name} is not printed yet. {' '.join(label.blocked_by)}"
    panel = any(item.closes == "panel" for item in label.open_items)
    only_panel = panel and not any(item.closes == "label" for item in label.open_items)
    options = (Option("Without the panel, where your law lets it be", "--no-panel"),)
    return Problem("label-closed", _OUT, label.title, ask, options if only_panel else ())


def _files(
    sheets: dict[str, LabelSheet], pages: dict[str, bytes | Infeasible]
) -> dict[str, tuple[str, bytes]]:
    files: dict[str, tuple[str, bytes]] = {}
    for name, page in pages.items():
        if isinstance(page, bytes):
            files[f"{slug(name)}-label.pdf"] = (name, page)
            files[f"{slug(name)}-label.html"] = (name, label_html(sheets[name]).encode())
    return files


def _sheet(label: LabelOf, made: Labelled, wish: LabelWish, asked: Asked) -> LabelSheet:
    studio = studio_of(book_at(asked.book))
    notes = (studio.sheet_note, studio.invented_note) if made.read.is_of_book else ()
    nutrition = label.nutrition if wish.with_panel else None
    panel = None if nutrition is None else nutrition.panel
    return LabelSheet(
        name=label.title,
        market=made.market,
        ingredients=label.ingredients,
        sentences=label.sentences,
        durability=label.durability.text,
        panel_basis="" if panel is None else panel.basis,
        panel=() if panel is None else _panel_lines(panel),
        maker="" if studio.name is None else f"Made by {studio.name}",
        net=_NET,
        imprint=Imprint(
            date=made.read.on.isoformat(),
            program=__version__,
            data=data_version(),
            market=made.market,
            notes=tuple(note for note in notes if note),
        ),
    )


def _panel_lines(panel: LabelPanel) -> tuple[PanelLine, ...]:
    """Rows as printed, both energies on one line; a row that need not stand there is left out."""
    rows = [row for row in panel.rows if row.text is not None]
    joule = next((row for row in rows if row.key == "energy-kj"), None)
    lines = []
    for row in rows:
        if row.key == "energy-kcal" and joule is not None:
            continue
        text = row.text or ""
        if row.key == "energy-kj":
            other = next((r.text for r in rows if r.key == "energy-kcal"), None)
            text = f"{text} / {other}" if other else text
        lines.append(PanelLine(row.label, text, _percent(row, joule), _is_inside(row)))
    return tuple(lines)


def _percent(row: LabelRow, joule: LabelRow | None) -> str:
    """The daily value in the US; the EU's reference intake is voluntary and left out."""
    return "" if row.percent is None or joule is not None else f"{row.percent:g} %"


def _is_inside(row: LabelRow) -> bool:
    inside = ("saturated", "trans", "fibre", "sugars", "added-sugars")
    return row.key in inside and not (row.key == "fibre" and row.label == "Fibre")
