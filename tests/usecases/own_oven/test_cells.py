"""What a person types of an oven: lines taken apart, cells read, faults in words."""

from pathlib import Path

import pytest

from krume.learn import FinishedBake, Reading
from krume.usecases import Asked, load_demo
from krume.usecases.own_oven.cells import Cells, figure_of, looks_of
from krume.usecases.own_oven.questions import oven_questions
from krume.usecases.own_oven.rows import Habit, bake_of, cake_of, reading_of
from krume.usecases.own_oven.text import bake_cells, reading_cells
from tests.learn.own_oven.cakes import tin

COVERS = ("rows", "text", "questions")


@pytest.fixture(scope="module")
def demo_asked(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    asked = Asked(book=tmp_path_factory.mktemp("cells") / "book")
    load_demo(asked)
    return asked


@pytest.mark.parametrize(
    ("typed", "cells"),
    [
        ("dial 160: 148, 152, 145", {"dial_c": "160", "read_c": "148; 152; 145"}),
        ("160: 148", {"dial_c": "160", "read_c": "148"}),
        ("dial 160 C: 148,5; 150", {"dial_c": "160 C", "read_c": "148.5; 150"}),
        ("dial 325 F, fan, low shelf, after 40 min: 300 310",
         {"dial_c": "325 F", "fan": "yes", "shelf": "low", "after_min": "40",
          "read_c": "148.9; 154.4"}),
        ("dial 160, no fan, 2027-06-01, sure: 148 C",
         {"dial_c": "160", "fan": "no", "day": "2027-06-01", "sure": "yes", "read_c": "148"}),
    ],
)  # fmt: skip
def test_a_reading_in_one_line(typed: str, cells: dict[str, str]) -> None:
    assert reading_cells(typed) == (cells, ())


@pytest.mark.parametrize(
    ("typed", "cells"),
    [
        ("F1, round 20 cm, 540 g, dial 170, 38 min, core 95",
         {"formula": "F1", "tin": "round 20 cm", "batter_g": "540", "dial_c": "170",
          "done_min": "38", "core_c": "95"}),
        ("F5, tube 20 x 10 cm, hole 6 cm, dial 325 F, not done at 40 min, 44 min, skewer",
         {"formula": "F5", "tin": "tube 20 x 10 cm, hole 6 cm", "dial_c": "325 F",
          "not_done_min": "40", "done_min": "44", "test": "skewer"}),
        ("F1, 34–38 min, oven 158 C, top shelf, 0.48 g/ml, probe, core 203 F",
         {"formula": "F1", "not_done_min": "34", "done_min": "38", "oven_c": "158 C",
          "shelf": "top", "density_g_ml": "0.48", "test": "probe", "core_c": "203 F"}),
    ],
)  # fmt: skip
def test_a_bake_in_one_line(typed: str, cells: dict[str, str]) -> None:
    assert bake_cells(typed) == (cells, ())


@pytest.mark.parametrize(
    ("typed", "code"),
    [("dial 160 148", "reading-unread"), ("dial 160: hot", "reading-unread"),
     ("dial 160, purple: 148", "piece-unread"), ("dial 160, dial 170: 148", "said-twice")],
)  # fmt: skip
def test_what_is_not_understood_of_a_reading_is_asked(typed: str, code: str) -> None:
    assert [fault.code for fault in reading_cells(typed)[1]] == [code]


def test_a_word_nobody_knows_is_no_tin() -> None:
    cells, (fault,) = bake_cells("F1, dial 170, purple, 38 min")
    assert "tin" not in cells
    assert "'purple' is not understood" in fault.ask


@pytest.mark.parametrize(
    ("typed", "found"),
    [("38 min", (38.0, "min")), ("0,48", (0.48, "")), ("325 F", (325.0, "f")), ("hot", None),
     ("", None)],
)  # fmt: skip
def test_a_figure_with_its_unit(typed: str, found: tuple[float, str] | None) -> None:
    assert figure_of(typed) == found


def test_looks_in_two_units_at_once_are_no_looks() -> None:
    with pytest.raises(ValueError, match="148 C"):
        looks_of("148 C, 300 F")


def test_a_dial_that_may_be_either_is_asked_with_both() -> None:
    cells = Cells({"dial_c": "325"})
    assert cells.degrees("dial_c", "dial-unread", "160") is None
    (fault,) = cells.faults
    assert (fault.code, fault.options) == ("dial-unit", ("325 C", "325 F"))
    assert Cells({"dial_c": "325 F"}).degrees("dial_c", "x", "160") == pytest.approx(162.8, abs=0.1)


def test_a_row_of_readings_becomes_a_reading() -> None:
    row = {"dial_c": "160", "read_c": "148; 152", "shelf": "top", "day": "2027-06-01"}
    found = reading_of("line 2", row, Habit(fan=True, status="declared"))
    assert found.faults == ()
    assert found.value == Reading(
        "line 2", 160.0, (148.0, 152.0), fan=True, shelf="high", day="2027-06-01",
        status="declared",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("row", "field", "code"),
    [
        ({"read_c": "148"}, "dial_c", "dial-missing"),
        ({"dial_c": "160"}, "read_c", "reading-missing"),
        ({"dial_c": "160", "read_c": "148; 20"}, "read_c", "reading-unread"),
        ({"dial_c": "200", "read_c": "60"}, "read_c", "reading-unread"),
        ({"dial_c": "160", "read_c": "148", "shelf": "attic"}, "shelf", "oven-shelf"),
        ({"dial_c": "160", "read_c": "148", "fan": "perhaps"}, "fan", "oven-fan"),
        ({"dial_c": "160", "read_c": "148", "day": "June"}, "day", "oven-day"),
        ({"dial_c": "160", "read_c": "148", "status": "sure"}, "status", "oven-status"),
        ({"dial_c": "160", "read_c": "148", "after_min": "long"}, "after_min", "after-unread"),
    ],
)
def test_a_reading_that_cannot_be_is_asked_beside_its_cell(
    row: dict[str, str], field: str, code: str
) -> None:
    found = reading_of("line 2", row, Habit())
    assert found.value is None
    assert [(fault.field, fault.code) for fault in found.faults] == [(field, code)]


GOOD = {"formula": "F1", "dial_c": "182", "done_min": "38", "core_c": "95"}


def test_a_row_of_bakes_takes_tin_and_batter_from_its_formula(demo_asked: Asked) -> None:
    found = bake_of("line 2", GOOD, Habit(), demo_asked).value
    assert isinstance(found, FinishedBake)
    assert (found.batter.mass_g, found.tin.diameter_cm, found.test) == (542.0, 20.0, "probe")
    assert found.cake == "f1 in round 20 cm"


def test_what_a_row_says_itself_goes_before_its_formula(demo_asked: Asked) -> None:
    row = {**GOOD, "tin": "round 22 x 7 cm", "batter_g": "640 g", "density_g_ml": "0.52"}
    found = bake_of("line 2", row, Habit(), demo_asked).value
    assert isinstance(found, FinishedBake)
    assert (found.batter.mass_g, found.tin.diameter_cm) == (640.0, 22.0)
    assert (found.batter.density_g_ml, found.batter.density_measured) == (0.52, True)


@pytest.mark.parametrize(
    ("changes", "field", "code"),
    [
        ({"formula": ""}, "formula", "formula-missing"),
        ({"formula": "F99"}, "formula", "formula-unknown"),
        ({"formula": "formulas/F1.txt"}, "formula", "formula-unknown"),
        ({"formula": "T1"}, "formula", "formula-unknown"),
        ({"formula": "F7"}, "formula", "not-a-batter"),
        ({"tin": "8in pan"}, "tin", "tin-unread"),
        ({"batter_g": "much"}, "batter_g", "batter-unread"),
        ({"batter_g": "5400"}, "batter_g", "bake-rim"),
        ({"dial_c": ""}, "dial_c", "dial-missing"),
        ({"done_min": ""}, "done_min", "minutes-missing"),
        ({"done_min": "500"}, "done_min", "bake-minutes"),
        ({"not_done_min": "40"}, "not_done_min", "bake-order"),
        ({"core_c": "130"}, "core_c", "bake-core"),
        ({"core_c": "", "test": "probe"}, "core_c", "core-missing"),
        ({"test": "song"}, "test", "bake-test"),
    ],
)
def test_a_bake_that_cannot_have_been_is_asked_beside_its_cell(
    changes: dict[str, str], field: str, code: str, demo_asked: Asked
) -> None:
    found = bake_of("line 2", {**GOOD, **changes}, Habit(), demo_asked)
    assert found.value is None
    assert [(fault.field, fault.code) for fault in found.faults] == [(field, code)]


def test_a_cake_goes_by_formula_and_floor_whatever_the_height() -> None:
    assert cake_of("F1", tin("round 20 x 7 cm")) == cake_of("f1", tin("round 20 cm"))
    assert cake_of("F1", tin("round 20 cm")) != cake_of("F1", tin("dark round 20 cm"))
    assert cake_of("F1", tin("round 20 cm")) != cake_of("F1", tin("round 22 cm"))


def test_a_whole_table_is_asked_line_by_line(demo_asked: Asked) -> None:
    rows = ((2, GOOD), (3, {**GOOD, "core_c": "130"}), (5, {"formula": "F1"}))
    found = oven_questions("bakes.csv", rows, demo_asked)
    assert [(p.where, p.code) for p in found] == [
        ("bakes.csv line 3", "bake-core"),
        ("bakes.csv line 5", "minutes-missing"),
        ("bakes.csv line 5", "dial-missing"),
    ]
    (cold,) = oven_questions("oven_readings.csv", ((2, {"dial_c": "160"}),), demo_asked)
    assert cold.where == "oven_readings.csv line 2"


def test_no_row_reaches_outside_the_book(demo_asked: Asked, tmp_path: Path) -> None:
    (tmp_path / "F1.txt").write_text("Other\n\n100 g sugar\n", encoding="utf-8")
    row = {**GOOD, "formula": str(tmp_path / "F1.txt")}
    assert bake_of("line 2", row, Habit(), demo_asked).faults[0].code == "formula-unknown"


def test_a_formula_that_is_not_in_the_book_is_asked_with_the_names_that_come_near(
    demo_asked: Asked,
) -> None:
    (near,) = bake_of("line 2", {**GOOD, "formula": "F11"}, Habit(), demo_asked).faults
    assert (near.ask, near.options) == ("The book has no formula called F11.", ("F1",))
    (file,) = bake_of("line 2", {**GOOD, "formula": "here/F1.txt"}, Habit(), demo_asked).faults
    assert file.ask.endswith("take the file in first (krume book import FILE), then name it.")
    assert file.options[0] == "F1"


@pytest.mark.parametrize("piece", ["-5 min", "-3 g", "dial -170", "core -95", "−0.4 g/ml"])
def test_a_piece_below_nothing_is_asked_as_what_it_is_and_never_as_a_tin(piece: str) -> None:
    cells, faults = bake_cells(f"F1, dial 182, {piece}")
    assert cells == {"formula": "F1", "dial_c": "182"}
    assert [fault.code for fault in faults] == ["below-nothing"]
    assert piece in faults[0].ask


@pytest.mark.parametrize(
    ("piece", "lines"),
    [
        ("170 C", ("F1, dial 170 C, 38 min", "F1, oven 170 C, 38 min")),
        ("325 °F", ("F1, dial 325 °F, 38 min", "F1, oven 325 °F, 38 min")),
        ("95 C", ("F1, core 95 C, 38 min",)),
    ],
)
def test_a_bare_temperature_is_asked_whose_it_is_and_never_taken_for_a_tin(
    piece: str, lines: tuple[str, ...]
) -> None:
    cells, faults = bake_cells(f"F1, {piece}, 38 min")
    assert "tin" not in cells
    assert [(fault.code, fault.options) for fault in faults] == [("which-temperature", lines)]
    assert all(bake_cells(line)[1] == () for line in lines)
