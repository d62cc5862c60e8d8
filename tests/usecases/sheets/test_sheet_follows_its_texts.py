"""Change one line of one text, and every figure that rests on it follows on every sheet."""

import json
import shutil
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from krume.usecases import Asked, CostWish, LabelWish, cost_of, label_of, make_sheets
from tests.usecases.conftest import Made

_OWN = ("made_of", "imprint")


@dataclass(frozen=True, slots=True)
class Sheets:
    """The JSON sheets of order 101 by the name of their file, and what else is worked out."""

    asked: Asked
    sheets: dict[str, Any]

    def cells(self, file: str, heading: str) -> dict[str, list[str]]:
        """Rows of a part's table by the name in its second cell, or its first where it leads."""
        part = next(p for p in self.sheets[file]["parts"] if p["heading"] == heading)
        wide = part["table"]["wide"]
        return {row[wide]: row for row in part["table"]["rows"]}


def _read(folder: Path, asked: Asked) -> Sheets:
    found = {}
    for path in folder.glob("*.json"):
        whole = json.loads(path.read_text(encoding="utf-8"))
        found[path.name] = {key: each for key, each in whole.items() if key not in _OWN}
    found.pop("sheets.json")
    return Sheets(asked, found)


@pytest.fixture(scope="module")
def before(sheets_101: Made, book: Path) -> Sheets:
    """The sheets as the demo has them."""
    return _read(sheets_101.folder, Asked(book=book))


@pytest.fixture(scope="module")
def after(book: Path, tmp_path_factory: pytest.TempPathFactory) -> Sheets:
    """The sheets after F1's hazelnuts went from 40 g to 60 g."""
    folder = tmp_path_factory.mktemp("changed")
    asked = Asked(book=folder / "book")
    shutil.copytree(book, folder / "book")
    path = folder / "book" / "formulas" / "F1.txt"
    text = path.read_text(encoding="utf-8")
    assert text.count("40 g ground hazelnuts") == 1
    changed = text.replace("40 g ground hazelnuts", "60 g ground hazelnuts")
    path.write_text(changed, encoding="utf-8")
    assert make_sheets("101", asked, out=folder / "out").exit_code == 0
    return _read(folder / "out", asked)


def test_the_bench_card_weighs_the_new_grams_and_sums_them(before: Sheets, after: Sheets) -> None:
    name = "f1-bench-card.json"
    assert after.sheets[name]["total_g"] == pytest.approx(before.sheets[name]["total_g"] + 20)
    grams = [r["add_g"] for r in after.sheets[name]["rows"] if "hazelnuts" in r["take"]]
    assert grams == [60.0]
    assert "562" in after.sheets[name]["sum_text"]


def test_the_shopping_list_buys_the_new_grams(before: Sheets, after: Sheets) -> None:
    place = "Where it is bought is not said"
    rows = [s.cells("shopping-list.json", place)["ground hazelnuts"][0] for s in (before, after)]
    assert rows == ["40 g", "60 g"]


def test_the_label_lists_and_shares_by_the_new_mass(before: Sheets, after: Sheets) -> None:
    lists = [label_of("101", LabelWish(), s.asked).result.labels[0] for s in (before, after)]
    names = [[item.name for item in each.items] for each in lists]
    places = [each.index("hazelnuts") for each in names]
    assert places[1] < places[0]
    shares = [next(i for i in each.items if i.name == "hazelnuts").quid_pct for each in lists]
    assert shares[0] is not None
    assert shares[1] == pytest.approx(1.5 * shares[0], rel=0.02)


def test_the_cost_pays_for_them(before: Sheets, after: Sheets) -> None:
    costs = [cost_of("101", CostWish(), s.asked).result for s in (before, after)]
    paid = [
        line.cost
        for cost in costs
        for each in cost.components
        for line in each.lines
        if "hazelnuts" in line.read
    ]
    assert paid[0] is not None
    assert paid[1] is not None
    assert float(paid[1]) == pytest.approx(1.5 * float(paid[0]))
    assert costs[0].material is not None
    assert costs[1].material is not None
    assert costs[1].material > costs[0].material


def test_sheets_that_do_not_rest_on_the_line_stay_as_they_are(
    before: Sheets, after: Sheets
) -> None:
    assert set(before.sheets) == set(after.sheets)
    same = {name for name in before.sheets if before.sheets[name] == after.sheets[name]}
    creams = {f"{name}-bench-card.json" for name in ("c1", "c5", "s1")}
    assert creams | {"f1-blend-card.json", "cold-log.json"} <= same
    assert not {"f1-bench-card.json", "shopping-list.json"} & same


@pytest.fixture(scope="module")
def thicker(book: Path, tmp_path_factory: pytest.TempPathFactory) -> Sheets:
    """The sheets after T1's cream layers went from 10 mm to 12 mm."""
    folder = tmp_path_factory.mktemp("thicker")
    asked = Asked(book=folder / "book")
    shutil.copytree(book, folder / "book")
    path = folder / "book" / "tortes" / "T1.txt"
    text = path.read_text(encoding="utf-8")
    path.write_text(text.replace("2 x 10 mm C1", "2 x 12 mm C1"), encoding="utf-8")
    assert make_sheets("101", asked, out=folder / "out").exit_code == 0
    return _read(folder / "out", asked)


def test_a_layer_of_cream_moves_the_plan_the_batches_and_the_slices(
    before: Sheets, thicker: Sheets
) -> None:
    needed = [float(s.cells("order-sheet.json", "Batches")["Vanilla custard cream"][2])
              for s in (before, thicker)]  # fmt: skip
    assert needed[1] == pytest.approx(1.2 * needed[0], abs=0.1)
    slices = [s.cells("order-sheet.json", "What")["Orl hazel torte"][3] for s in (before, thicker)]
    assert slices[0] != slices[1]
    heights = [
        fact["figure"]
        for each in (before, thicker)
        for fact in each.sheets["t1-torte-plan.json"]["facts"]
        if fact["label"] == "height"
    ]
    assert heights == ["66", "70"]
