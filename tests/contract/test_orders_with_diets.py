"""What an order says about its guests is never passed over: it stops, holds, or is written down."""

from pathlib import Path
from typing import Any

import pytest

from tests.contract.conftest import Many, Said

AGAINST = [
    ("T3", "allergic to walnuts"), ("T3", "can't eat nuts"), ("T3", "severe allergy to nuts"),
    ("T3", "alergic to nuts"), ("T3", "anaphylaxis: tree nuts"), ("T3", "NUT-FREE!!"),
    ("T3", "without walnuts"), ("T3", "ohne Nüsse"), ("T3", "Nussallergie"),
    ("T3", "keine Eier"), ("T3", "dairy free please"), ("T3", "lactose intolerant"),
    ("T3", "my son has a milk allergy"), ("T3", "no gelatin"), ("T3", "kosher"),
    ("T3", "two guests are vegan"), ("TART", "soy allergy"), ("T1", "no hazelnut"),
    ("T1", "buckwheat allergy"), ("F6", "butter free"),
]  # fmt: skip
HELD = [
    ("T3", "One guest has coeliac disease."), ("T3", "she is celiac"), ("T3", "GF please"),
    ("T3", "gluten intolerance"), ("T3", "ohne Gluten"), ("T3", "Zöliakie"),
    ("T3", "wheat allergy"), ("T1", "please gluten-free"), ("TART", "no nuts"),
    ("TART", "nut allergy"), ("F6", "coeliac"), ("T2", "strawberry allergy"),
    ("T2", "histamine intolerance"),
]  # fmt: skip
ORDER = """\
Order 9
Customer: C. Invented
Date: Saturday 2027-06-12
Hand-over: 14:00, pick-up
For: 12 people
{notes}
1 {what}
"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with one order text a case."""
    return tmp_path_factory.mktemp("diets")


@pytest.fixture(scope="module")
def sheets(many: Many, book: Path, folder: Path) -> dict[tuple[str, str], Said]:
    """The answer of `sheet` to each order, in one process."""
    cases = [*AGAINST, *HELD, ("T2", "")]
    calls = []
    for number, (what, notes) in enumerate(cases):
        name = f"order-{number}.txt"
        line = f"Notes: {notes}\n" if notes else ""
        (folder / name).write_text(ORDER.format(notes=line, what=what), encoding="utf-8")
        calls.append(["sheet", name, "--out", f"out-{number}", "--json", "--book", str(book)])
    return dict(zip(cases, many(calls, cwd=folder), strict=True))


def _diet(result: dict[str, Any]) -> dict[str, Any]:
    (check,) = [check for check in result["checks"] if check["name"] == "diet"]
    return dict(check)


@pytest.mark.parametrize("case", AGAINST, ids=" ".join)
def test_a_diet_that_stands_against_the_order_stops_it(
    sheets: dict[tuple[str, str], Said], case: tuple[str, str], folder: Path
) -> None:
    said = sheets[case]
    assert said.code == 3, said.stdout
    (problem,) = said.answer["problems"]
    assert case[0] in problem["ask"]
    assert said.answer["result"].get("files", []) == []
    number = [*AGAINST, *HELD].index(case)
    assert not (folder / f"out-{number}").exists()


@pytest.mark.parametrize("case", HELD, ids=" ".join)
def test_a_diet_that_is_not_shown_to_be_met_holds_it(
    sheets: dict[tuple[str, str], Said], case: tuple[str, str]
) -> None:
    said = sheets[case]
    assert said.code == 0, said.stdout
    result = said.answer["result"]
    assert result["held"]
    assert all(held["text"] and held["opens"] for held in result["held"])
    assert _diet(result)["passed"] is False


def test_an_order_without_notes_says_none_stated(sheets: dict[tuple[str, str], Said]) -> None:
    result = sheets["T2", ""].answer["result"]
    assert result["held"] == []
    assert "none stated" in _diet(result)["text"]


def test_notes_nobody_has_read_as_a_diet_get_no_tick(many: Many, book: Path, folder: Path) -> None:
    calls = []
    for number, notes in enumerate(["sans noix", "FODMAP", "nut allergy", "jain"]):
        name = f"unread-{number}.txt"
        (folder / name).write_text(ORDER.format(notes=f"Notes: {notes}\n", what="T2"), "utf-8")
        calls.append(["sheet", name, "--out", f"unread-{number}", "--json", "--book", str(book)])
    for one in many(calls, cwd=folder):
        assert one.code == 0, one.stdout
        result = one.answer["result"]
        assert result["held"] or _diet(result)["passed"] is None
