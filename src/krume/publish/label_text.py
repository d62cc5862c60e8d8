"""A label as plain text for a message, and as one JSON object for another program."""

import json
import unicodedata
from dataclasses import asdict

from krume.base import unturned
from krume.publish.label_facts import FactsBox, FactsLine, facts_lines, footnote
from krume.publish.label_sheet import LabelSheet, PanelTable
from krume.publish.sheet import dated, made_by


def label_text(sheet: LabelSheet) -> str:
    """A label in lines of plain words, in the order of the printed one."""
    lines = [sheet.name, "", *_lists(sheet), *sheet.sentences, "", *_panel(sheet)]
    lines += ["", sheet.durability, sheet.net.text, f"Lot {sheet.code}" if sheet.code else ""]
    lines += [sheet.maker, "", *sheet.imprint.notes]
    lines += [f"{made_by(sheet.imprint)}, {dated(sheet.imprint)}"]
    return _one_gap([_plain(line) for line in lines])


def _lists(sheet: LabelSheet) -> list[str]:
    lists = [line for line in sheet.ingredients.splitlines() if line.strip()]
    return [f"{'' if n else 'Ingredients: '}{line}." for n, line in enumerate(lists)]


def _panel(sheet: LabelSheet) -> list[str]:
    if isinstance(sheet.panel, PanelTable):
        head = f"Nutrition {', '.join(sheet.panel.heads)}"
        lines = (f"{line.label}: {', '.join(line.cells)}" for line in sheet.panel.lines)
        return [head, *lines, *sheet.panel.notes]
    return [] if sheet.panel is None else _facts(sheet.panel)


def _facts(box: FactsBox) -> list[str]:
    heads = [column.head for column in box.columns if column.head]
    calories = ", ".join(column.calories for column in box.columns)
    return [
        "Nutrition Facts",
        box.servings,
        f"Serving size {box.serving_size}",
        *([f"Columns: {', '.join(heads)}"] if heads else []),
        f"Calories {calories}",
        *(_line(line) for group in ("main", "vitamin") for line in facts_lines(box, group)),
        footnote(),
    ]


def _line(line: FactsLine) -> str:
    pairs = zip(line.amounts, line.percents, strict=True)
    cells = [" ".join(word for word in pair if word) for pair in pairs]
    return f"{line.name} {', '.join(cell for cell in cells if cell)}".rstrip()


def _plain(line: str) -> str:
    """A line without signs of control or direction: what is typed moves nothing else."""
    spaced = " ".join(line.split())
    return "".join(sign for sign in spaced if unicodedata.category(sign) not in ("Cc", "Cf", "Cs"))


def _one_gap(lines: list[str]) -> str:
    kept: list[str] = []
    for line in lines:
        if line or (kept and kept[-1]):
            kept.append(line)
    return "\n".join(kept).strip("\n") + "\n"


def label_json(sheet: LabelSheet) -> str:
    """A label as JSON: signs beyond ASCII written out, those that turn a line round left out."""
    whole = unturned(json.dumps(asdict(sheet), ensure_ascii=False))
    return json.dumps(json.loads(whole), indent=2, sort_keys=True) + "\n"
