"""The gluten gate at its edges: the figure on the paper, the day, the room's list, the words."""

import csv
import shutil
from pathlib import Path
from typing import Any

import pytest

from tests.contract.conftest import Many

Row = dict[str, str]
WALNUTS, ROOM = "L-009", "room: cleaning record"
# What stands in the column of the result: may the sentence stand in the EU, in the US.
# 21 CFR 101.91(a)(3): below 20 ppm. Implementing Regulation (EU) No 828/2014: 20 mg/kg or less.
RESULTS: list[tuple[str, bool, bool]] = [
    ("20", True, False),
    ("20.0", True, False),
    ("20,0", True, False),
    ("20 ppm", True, False),
    ("≤20", True, False),
    ("5-20", True, False),
    ("19.99", True, True),
    ("<20", True, True),
    ("n. d. (<5)", True, True),
    *((text, False, False) for text in ("20.0000001", "20.1", ">20", "<25", "5-25")),
    *((text, False, False) for text in ("", "0", "-3", "n.d.", "trace", "passed", "8?", "~8")),
    *((text, False, False) for text in ("nan", "2e1", "8 8", "20 gliadin", "0.002 %", "20 g/kg")),
]
US_EDGES = 10  # the rest shows nothing in either market
# Another paper of the same bag, or the same paper changed, on 2027-06-10.
DATES: list[tuple[Row, bool]] = [
    ({"valid_to": "2027-06-10"}, True),
    ({"valid_to": "2027-06-09"}, False),
    ({"valid_to": ""}, False),
    ({"valid_to": "31/12/2028"}, False),
    ({"valid_to": "2028-02-30"}, False),
    ({"from": "2027-06-10"}, True),
    ({"from": "2027-06-11"}, False),
    ({"from": "2028-01-01", "valid_to": "2027-01-01"}, False),
    ({"evidence": "strip test"}, False),
    ({"evidence": ""}, False),
    ({"ingredient": "ground hazelnuts"}, False),
]
WORDS: list[tuple[str, bool]] = [
    ("may contain wheat", False),
    ("may contain traces of gluten", False),
    ("packed in a wheat mill", False),
    ("cannot guarantee absence of gluten", False),
    ("not free from gluten", False),
    ("made on a line that also handles durum", False),
    ("may contain spelt", False),
    ("no wheat", True),
    ("free from wheat", True),
]
SOURCES = ("wheat day", "flour in the air", "oven", "sieve", "wooden spoons", "mixer", "tins",
           "cloths", "fat", "open bags")  # fmt: skip
LISTS: list[tuple[str, str, str, bool]] = [
    ("oven", "none", "2027-06-10", True),
    ("oven", "none", "2026-06-10", True),
    ("oven", "none", "2026-06-09", False),
    ("oven", "none", "2027-06-11", False),
    ("oven", "cleaned", "2027-06-10", True),
    ("oven", "cleaned", "2027-06-09", False),
    ("oven", "shared", "2027-06-10", False),
    ("oven", "", "2027-06-10", False),
    ("sieve", "own", "2027-06-10", True),
    ("sieve", "cleaned", "2027-06-10", False),
    ("fat", "cleaned", "2027-06-10", False),
    ("wheat day", "own", "2027-06-10", False),
    ("tins", "perhaps", "2027-06-10", False),
]


class Kitchen:
    """Copies of the demo book, each with its own papers."""

    def __init__(self, demo: Path, under: Path) -> None:
        self.demo, self.under, self.count = demo, under, 0
        with (demo / "lots.csv").open(encoding="utf-8", newline="") as file:
            self.rows = list(csv.DictReader(file))

    def book(self, change: Row, more: Row | None = None, room: str = "") -> Path:
        """The walnuts' paper changed, one more paper, and a list of the room."""
        self.count += 1
        path = self.under / str(self.count)
        shutil.copytree(self.demo, path)
        rows = [row | change if row["lot"] == WALNUTS else row for row in self.rows]
        with (path / "lots.csv").open("w", encoding="utf-8", newline="") as file:
            writer = csv.DictWriter(file, list(self.rows[0]))
            writer.writeheader()
            writer.writerows(rows + ([more] if more else []))
        (path / "cleaning.csv").write_text("date,cleaned\n2027-06-10,yes\n", encoding="utf-8")
        if room:
            (path / "room.csv").write_text(room, encoding="utf-8")
        return path


@pytest.fixture(scope="module")
def kitchen(plain: Path, tmp_path_factory: pytest.TempPathFactory) -> Kitchen:
    """The factory of changed books."""
    return Kitchen(plain, tmp_path_factory.mktemp("kitchens"))


def _gates(many: Many, paths: list[Path], market: str) -> list[dict[str, Any]]:
    calls = [["label", "T3", "--market", market, "--json", "--book", str(path)] for path in paths]
    gates = [said.answer["result"]["gluten"] for said in many(calls)]
    for gate in gates:
        assert gate["claim_allowed"] == (gate["sentence"] is not None) == (not gate["missing"])
    return gates


@pytest.mark.parametrize(("market", "place"), [("eu", 1), ("us", 2)])
def test_a_result_counts_as_the_law_of_the_market_counts_it(
    many: Many, kitchen: Kitchen, market: str, place: int
) -> None:
    rows = RESULTS if market == "eu" else RESULTS[:US_EDGES]
    paths = [kitchen.book({"result_mg_kg": row[0]}) for row in rows]
    for row, gate in zip(rows, _gates(many, paths, market), strict=True):
        assert gate["claim_allowed"] is row[place], row


def test_a_paper_holds_on_its_first_and_last_day_and_no_other(many: Many, kitchen: Kitchen) -> None:
    gates = _gates(many, [kitchen.book(change) for change, _ in DATES], "eu")
    for (change, opens), gate in zip(DATES, gates, strict=True):
        assert gate["claim_allowed"] is opens, change


def test_words_that_name_a_grain_are_not_outweighed_by_a_good_test(
    many: Many, kitchen: Kitchen
) -> None:
    paper = {"lot": WALNUTS, "ingredient": "ground walnuts", "evidence": "specification"}
    paths = [kitchen.book({}, paper | {"text": text, "from": "2027-04-04"}) for text, _ in WORDS]
    for (text, opens), gate in zip(WORDS, _gates(many, paths, "eu"), strict=True):
        assert gate["claim_allowed"] is opens, text
        assert opens or gate["missing"] == [WALNUTS]


def _room(name: str, state: str, day: str) -> str:
    rows = [f"{source},none,2027-06-10,,\n" for source in SOURCES if source != name]
    return "source,state,date,valid_to,text\n" + "".join(rows) + f"{name},{state},{day},,\n"


def test_each_answer_of_the_room_holds_as_long_as_it_is_believed(
    many: Many, kitchen: Kitchen
) -> None:
    paths = [kitchen.book({}, room=_room(name, state, day)) for name, state, day, _ in LISTS]
    for (name, *rest, opens), gate in zip(LISTS, _gates(many, paths, "eu"), strict=True):
        assert gate["claim_allowed"] is opens, (name, rest)
        assert opens or gate["missing"][0].startswith(f"room: {name}"), (name, gate["missing"])


def test_a_room_of_which_one_thing_is_not_answered_is_shut(many: Many, kitchen: Kitchen) -> None:
    whole = _room("oven", "none", "2027-06-10")
    paths = [
        kitchen.book({}, room=whole.replace(f"{source},none,2027-06-10,,\n", ""))
        for source in SOURCES
    ]
    for source, gate in zip(SOURCES, _gates(many, paths, "eu"), strict=True):
        assert len(gate["missing"]) == 1 and gate["missing"][0].startswith("room: "), source
        assert source.split()[0] in gate["missing"][0]
