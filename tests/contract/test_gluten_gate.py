"""No gluten sentence without every record and the room's: tried over every loss of one or two."""

import csv
import shutil
from collections.abc import Callable, Iterator
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest

from tests.contract.conftest import Many

NEEDED = {
    "T3": ["L-001", "L-005", "L-007", "L-009"],
    "T1": ["L-001", "L-003", "L-005", "L-006", "L-007", "L-008", "L-016"],
}
GOOD = {"evidence": "lab test", "text": "lab test of the lot", "result_mg_kg": "<5",
        "from": "2027-05-01", "valid_to": "2028-05-01"}  # fmt: skip
ROOM = "room: cleaning record"
Rows = list[dict[str, str]]
Change = Callable[[dict[str, str]], dict[str, str] | None]


def removed(_: dict[str, str]) -> None:
    """The lot has no row any more."""


def expired(row: dict[str, str]) -> dict[str, str]:
    """The record ran out the day before."""
    return {**row, "valid_to": "2027-06-09"}


class Books:
    """Copies of the demo book, each with its own lots and cleaning record."""

    def __init__(self, demo: Path, under: Path) -> None:
        self.demo, self.under, self.count = demo, under, 0
        with (demo / "lots.csv").open(encoding="utf-8", newline="") as file:
            reader = csv.DictReader(file)
            self.rows: Rows = list(reader)
            self.fields = list(reader.fieldnames or ())

    def copy(self, rows: Rows, cleaning: str) -> Path:
        """A book with these lots; an empty cleaning record is no file."""
        self.count += 1
        path = self.under / f"book-{self.count}"
        shutil.copytree(self.demo, path)
        with (path / "lots.csv").open("w", encoding="utf-8", newline="") as file:
            writer = csv.DictWriter(file, self.fields)
            writer.writeheader()
            writer.writerows(rows)
        if cleaning:
            (path / "cleaning.csv").write_text(f"date,cleaned\n{cleaning}\n", encoding="utf-8")
        return path

    def all_good(self) -> Rows:
        """The demo's lots with a good hazelnut test."""
        return [row | GOOD if row["lot"] == "L-008" else row for row in self.rows]

    def without(self, changes: dict[str, Change]) -> Rows:
        """The good lots after each named one is changed."""
        rows = (
            changes[row["lot"]](row) if row["lot"] in changes else row for row in self.all_good()
        )
        return [row for row in rows if row is not None]


@pytest.fixture(scope="module")
def books(plain: Path, tmp_path_factory: pytest.TempPathFactory) -> Books:
    """The factory of changed books."""
    return Books(plain, tmp_path_factory.mktemp("books"))


def _losses(lots: list[str]) -> Iterator[dict[str, Change]]:
    for size in (1, 2):
        for names in combinations(lots, size):
            for change in (removed, expired):
                yield dict.fromkeys(names, change)


def _gates(many: Many, name: str, paths: list[Path], *more: str) -> list[dict[str, Any]]:
    calls = [["label", name, *more, "--json", "--book", str(path)] for path in paths]
    answers = [said.answer for said in many(calls)]
    assert all(answer["result"] for answer in answers), answers
    return [answer["result"]["gluten"] for answer in answers]


@pytest.mark.parametrize("name", NEEDED)
def test_any_record_lost_or_expired_closes_the_gate(many: Many, books: Books, name: str) -> None:
    losses = list(_losses(NEEDED[name]))
    paths = [books.copy(books.without(loss), "2027-06-10,yes") for loss in losses]
    for loss, gate in zip(losses, _gates(many, name, paths), strict=True):
        assert gate["claim_allowed"] is False, loss
        assert gate["sentence"] is None, loss
        for lot, change in loss.items():
            if change is expired:
                assert lot in gate["missing"], (loss, gate["missing"])
        assert len(gate["missing"]) >= len(loss), (loss, gate["missing"])


@pytest.mark.parametrize("name", NEEDED)
@pytest.mark.parametrize("market", ["us", "eu"])
def test_all_records_and_the_rooms_open_it(
    many: Many, books: Books, name: str, market: str
) -> None:
    path = books.copy(books.all_good(), "2027-06-10,yes")
    (gate,) = _gates(many, name, [path], "--market", market)
    assert gate["claim_allowed"] is True
    assert gate["missing"] == []


@pytest.mark.parametrize(
    "cleaning", ["", "2027-06-09,yes", "2027-06-11,yes", "2027-06-10,no", "2027-06-10,perhaps",
                 "2027-06-10,", ",yes", "10/06/2027,yes", "2027-06-10,yes\n2027-06-10,no"]
)  # fmt: skip
def test_the_rooms_record_must_be_a_clear_yes_of_the_day(
    many: Many, books: Books, cleaning: str
) -> None:
    (gate,) = _gates(many, "T3", [books.copy(books.all_good(), cleaning)])
    assert gate["claim_allowed"] is False
    assert ROOM in gate["missing"]


def test_the_limit_is_below_20_in_the_us_and_at_most_20_in_the_eu(many: Many, books: Books) -> None:
    for result, us, eu in [("19.9", True, True), ("20", False, True), ("20.1", False, False)]:
        rows = [
            row | {"result_mg_kg": result} if row["lot"] == "L-009" else row
            for row in books.all_good()
        ]
        path = books.copy(rows, "2027-06-10,yes")
        (in_us,) = _gates(many, "T3", [path], "--market", "us")
        (in_eu,) = _gates(many, "T3", [path], "--market", "eu")
        assert (in_us["claim_allowed"], in_eu["claim_allowed"]) == (us, eu), result


@pytest.mark.parametrize(
    "changed",
    [
        {"result_mg_kg": ""},
        {"result_mg_kg": "unknown"},
        {"result_mg_kg": "-5"},
        {"result_mg_kg": "nan"},
        {"evidence": ""},
        {"evidence": "words on the bag", "text": "gluten free", "result_mg_kg": ""},
        {"evidence": "specification", "result_mg_kg": ""},
        {"from": "2027-06-11"},
        {"from": "yesterday"},
        {"valid_to": "31/12/2028"},
        {"text": "lab test of the lot; may contain wheat"},
    ],
)
def test_a_record_that_does_not_say_enough_closes_it(
    many: Many, books: Books, changed: dict[str, str]
) -> None:
    rows = [row | changed if row["lot"] == "L-009" else row for row in books.all_good()]
    (gate,) = _gates(many, "T3", [books.copy(rows, "2027-06-10,yes")])
    assert gate["claim_allowed"] is False, gate


def test_a_second_bag_without_a_record_closes_it(many: Many, books: Books) -> None:
    second = dict.fromkeys(books.fields, "") | {
        "lot": "L-099", "ingredient": "ground walnuts", "evidence": "words on the bag",
        "text": "naturally without gluten", "status": "invented",
    }  # fmt: skip
    path = books.copy([*books.all_good(), second], "2027-06-10,yes")
    (gate,) = _gates(many, "T3", [path])
    assert gate["claim_allowed"] is False
    assert "L-099" in gate["missing"]


def test_another_day_is_judged_by_its_own_date(many: Many, books: Books) -> None:
    path = books.copy(books.all_good(), "2028-04-05,yes")
    (gate,) = _gates(many, "T3", [path], "--on", "2028-04-05")
    assert gate["claim_allowed"] is False
    assert set(gate["missing"]) == {"L-001", "L-005", "L-007", "L-009"}


@pytest.mark.parametrize(
    ("made", "allowed"),
    [("2027-06-10", True), ("2027-06-11", False), ("2028-06-01", False), ("2026-01-01", False)],
)
def test_a_label_is_judged_on_the_day_of_making(
    many: Many, books: Books, made: str, allowed: bool
) -> None:
    path = books.copy(books.all_good(), "2027-06-10,yes")
    (gate,) = _gates(many, "T3", [path], "--made", made)
    assert gate["claim_allowed"] is allowed, gate["missing"]


def test_a_room_that_was_not_cleaned_while_an_order_is_baked_closes_it(
    many: Many, books: Books, tmp_path: Path
) -> None:
    order = tmp_path / "order.txt"
    order.write_text(
        "Order 9\nDate: Saturday 2027-06-12\nHand-over: 14:00, pick-up\nFor: 12 people\n\n1 T3\n",
        encoding="utf-8",
    )
    path = books.copy(books.all_good(), "2027-06-10,no\n2027-06-12,yes")
    (gate,) = _gates(many, str(order), [path])
    assert gate["claim_allowed"] is False
    path = books.copy(books.all_good(), "2027-06-10,yes\n2027-06-11,yes\n2027-06-12,yes")
    (gate,) = _gates(many, str(order), [path], "--on", "2027-06-12")
    assert gate["claim_allowed"] is True


@pytest.mark.parametrize(
    ("made", "cleaned", "allowed"),
    [
        ("2028-06-01", "", False),
        ("2028-06-01", "2028-06-01,yes", False),
        ("2026-01-01", "2026-01-01,yes", False),
        ("2027-06-11", "2027-06-11,yes", False),
        ("2027-06-09", "", False),
        ("2027-06-09", "2027-06-09,yes", True),
        ("2027-06-09", "2027-06-09,no", False),
        ("2027-06-10", "", True),
    ],
)
def test_the_day_of_making_is_judged_beside_the_day_asked(
    many: Many, books: Books, made: str, cleaned: str, allowed: bool
) -> None:
    path = books.copy(books.all_good(), f"2027-06-10,yes\n{cleaned}")
    (gate,) = _gates(many, "T3", [path], "--made", made)
    assert gate["claim_allowed"] is allowed
    assert (gate["sentence"] is None) is not allowed


@pytest.mark.parametrize(
    ("cleaned", "on", "allowed"),
    [
        ("2027-06-10,yes\n2027-06-12,yes", "", False),
        ("2027-06-10,no\n2027-06-12,yes", "", False),
        ("2027-06-12,yes", "2027-06-12", True),
        ("2027-06-12,yes\n2027-06-12,no", "2027-06-12", False),
        ("2027-06-11,no\n2027-06-12,yes", "2027-06-11", False),
    ],
)
def test_an_order_opens_by_the_record_of_its_day_once_that_day_has_come(
    many: Many, books: Books, cleaned: str, on: str, allowed: bool
) -> None:
    path = books.copy(books.all_good(), cleaned)
    (gate,) = _gates(many, "101", [path], *(["--on", on] if on else []))
    assert gate["claim_allowed"] is allowed
    assert (ROOM in gate["missing"]) is not allowed
