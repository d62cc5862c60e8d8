"""The label of a torte of eight components: worked out again, and as a sheet of paper."""

import tempfile
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

from benchmarks.measure import Row, call_s
from krume.publish import label_layout, label_pdf
from krume.usecases import Asked, LabelWish, label_of, load_demo, save_text
from krume.usecases.label.label import labelled
from krume.usecases.label.paper_sheet import label_sheet

TIMES, WISH_MS = 15, 30.0
TORTE = """Torte of eight
Slices: 12

2 layers of F1, 14 mm, trimmed to 19.5 cm
1 layer of F2, 14 mm, trimmed to 19.5 cm
0.15 g/cm2 S1 on each layer
10 mm C1 on the layer
6 mm C2 on the layer
4 mm C3 on the layer
4 mm C4 on top
4 mm C5 around
"""
MADE = date(2027, 6, 11)
FIXED = "the wish, 30 ms"


def rows() -> list[Row]:
    """A label asked for again, one of a torte that was changed, and its paper."""
    with tempfile.TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        save_text("torte", "T8", TORTE, asked, seen=None)
        again_s = call_s(lambda number: again(number, asked), times=TIMES)
        changed_s = call_s(lambda number: changed(number, asked), times=TIMES)
        paper_s = call_s(lambda number: paper(number, asked), times=TIMES)
    name = "label of a torte of 8 components"
    return [
        Row(f"{name}, warm", again_s * 1e3, WISH_MS, "ms", FIXED, 1.0),
        Row(f"{name}, its text just changed", changed_s * 1e3, WISH_MS, "ms", FIXED),
        Row("one label as PDF", paper_s * 1e3, WISH_MS, "ms", FIXED),
    ]


def again(number: int, asked: Asked) -> object:
    """The label as of another day of making, so that no answer is kept."""
    return label_of("T8", LabelWish(market="eu", made=MADE + timedelta(days=number)), asked)


def changed(number: int, asked: Asked) -> object:
    """The label of a torte another millimetre of whose cream was just typed."""
    text = TORTE.replace("6 mm C2", f"{6 + number / 100:g} mm C2")
    save_text("torte", f"T8-{number}", text, asked, seen=None)
    return label_of(f"T8-{number}", LabelWish(market="eu"), asked)


def paper(number: int, asked: Asked) -> object:
    """The label of a cream as PDF, under another name each time."""
    wish = LabelWish(market="eu")
    made = labelled("C1", wish, asked)
    sheet = label_sheet(made.labels[0], made, wish, asked)
    return label_pdf(replace(sheet, name=f"Cream {number}"), label_layout("single-100x150"))
