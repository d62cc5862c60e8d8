"""Label sheets written to a folder: all of them, or none while anything on one is not known."""

from collections.abc import Collection
from dataclasses import dataclass, replace
from pathlib import Path

from krume.base import Infeasible, Notice, Option, Problem
from krume.publish import (
    LabelSheet,
    label_html,
    label_json,
    label_layout,
    label_pdf,
    label_text,
    missing_label_signs,
)
from krume.store import place_all
from krume.usecases.asking.answer import Answer, Asked, clash_problems
from krume.usecases.asking.slug import slug
from krume.usecases.label.label import Labelled, LabelWish, label_result, labelled
from krume.usecases.label.paper_sheet import BARE, PrintWish, label_sheet
from krume.usecases.label.result import LabelFile, LabelOf, LabelResult

_OUT = "--out"
FORMATS = ("pdf", "html", "txt", "json")
"""What a label is written as: paper, a page, a message, another program."""
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
    name: str,
    wish: LabelWish,
    asked: Asked,
    *,
    out: Path,
    layout: str = LAYOUT,
    more: PrintWish = BARE,
) -> Answer[LabelResult]:
    """Write the label of each thing in every format; nothing while one of them is closed."""
    label_layout(asked.answer_for("--labels") or layout)
    made = labelled(name, wish, asked)
    result = label_result(made)
    drawn = drawn_labels(made, wish, asked, layout=layout, more=more)
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
    made: Labelled,
    wish: LabelWish,
    asked: Asked,
    *,
    layout: str = LAYOUT,
    more: PrintWish = BARE,
    formats: Collection[str] = FORMATS,
) -> DrawnLabels:
    """The label of each thing in the formats asked for; none while one of them is closed."""
    paper = label_layout(asked.answer_for("--labels") or layout)
    blocked = [_closed(each) for each in made.labels if each.blocked_by]
    if made.problems or blocked:
        return DrawnLabels({}, (*made.problems, *blocked), is_possible=made.read.is_possible)
    sheets = {each.name: label_sheet(each, made, wish, asked, more) for each in made.labels}
    pages = {each: label_pdf(sheet, paper) for each, sheet in sheets.items()}
    clashes = [c for page in pages.values() if isinstance(page, Infeasible) for c in page.clashes]
    if clashes:
        problems = clash_problems(Infeasible(tuple(clashes)), "--labels")
        return DrawnLabels({}, problems, is_possible=False)
    signs = (notice for sheet in sheets.values() for notice in missing_label_signs(sheet))
    return DrawnLabels(_files(sheets, pages, formats), (), tuple(dict.fromkeys(signs)))


def _closed(label: LabelOf) -> Problem:
    ask = f"The label of {label.name} is not printed yet. {' '.join(label.blocked_by)}"
    panel = any(item.closes == "panel" for item in label.open_items)
    only_panel = panel and not any(item.closes == "label" for item in label.open_items)
    without = Option("Without the panel, where your law lets it be", "--no-panel")
    maker = Option("Who makes it, and where", '--maker "NAME, ADDRESS"')
    options = (*((without,) if only_panel else ()), *((maker,) if not label.maker else ()))
    return Problem("label-closed", _OUT, label.title, ask, options)


def _files(
    sheets: dict[str, LabelSheet], pages: dict[str, bytes | Infeasible], formats: Collection[str]
) -> dict[str, tuple[str, bytes]]:
    files: dict[str, tuple[str, bytes]] = {}
    for name, page in pages.items():
        if isinstance(page, bytes):
            made = {"pdf": page, **_words_of(sheets[name])}
            for format_, data in made.items():
                if format_ in formats:
                    files[f"{slug(name)}-label.{format_}"] = (name, data)
    return files


def _words_of(sheet: LabelSheet) -> dict[str, bytes]:
    made = {"html": label_html(sheet), "txt": label_text(sheet), "json": label_json(sheet)}
    return {format_: text.encode() for format_, text in made.items()}
