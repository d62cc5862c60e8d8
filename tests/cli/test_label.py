"""`krume label`: the one JSON object, and the page for a person."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run

NAMES = ["T1", "T2", "T3", "TART", "F1", "F6", "C1", "101", "102"]


@pytest.mark.parametrize("market", ["us", "eu"])
@pytest.mark.parametrize("name", NAMES)
def test_the_answer_fits_its_schema(run: Run, name: str, market: str) -> None:
    answer = run("label", name, "--market", market, "--json")
    assert answer.code == 0
    result = answer.json["result"]
    assert {"ingredients", "contains", "nutrition", "gluten", "unknown"} <= set(result)
    assert result["gluten"]["claim_allowed"] is False


def test_the_page_leads_with_the_list_and_names_what_is_missing(run: Run) -> None:
    out = run("label", "T1", "--market", "eu").out
    assert out.index("Ingredients") < out.index("Gluten gate: closed") < out.index("Nutrition")
    assert "L-008" in out
    assert "conflict" in out


def test_the_page_says_when_only_the_room_is_missing(run: Run) -> None:
    out = run("label", "T3", "--market", "eu").out
    assert "open on ingredients" in out
    assert "cleaning.csv" in out


def test_sheets_are_written_with_their_full_path_last_on_a_line(run: Run, tmp_path: Path) -> None:
    done = run("label", "C1", "--market", "eu", "--out", str(tmp_path / "out"), columns=30)
    assert done.code == 0
    paths = [
        line for line in done.out.splitlines() if line.endswith((".pdf", ".html", ".txt", ".json"))
    ]
    assert [Path(path).is_file() for path in paths] == [True] * 4


def test_a_closed_label_asks_and_writes_nothing(run: Run, tmp_path: Path) -> None:
    done = run("label", "T1", "--out", str(tmp_path / "out"))
    assert done.code == 3
    assert "not printed yet" in " ".join(done.out.split())
    assert not (tmp_path / "out").exists()


def test_a_sheet_nobody_has_is_named_with_those_there_are(run: Run, tmp_path: Path) -> None:
    done = run("label", "C1", "--out", str(tmp_path / "out"), "--labels", "napkin")
    assert done.code == 3
    assert "a4-2x4" in done.err


def test_a_market_that_is_none_is_wrong_usage(run: Run) -> None:
    assert run("label", "T1", "--market", "mars").code == 2


def test_allergens_of_a_text_with_an_unread_or_open_ingredient_are_never_said_to_be_all(
    run: Run, tmp_path: Path
) -> None:
    empty, part = tmp_path / "empty.txt", tmp_path / "part.txt"
    empty.write_text("Hazel torte\n\nFold in the hazelnuts.\n", encoding="utf-8")
    part.write_text("Scones\n\n200 g butter\n8 g baking powder\n", encoding="utf-8")
    assert "Allergens in it: not known" in run("label", str(empty)).out
    assert "milk; of the rest not known" in " ".join(run("label", str(part)).out.split())
    assert "Allergens in it: egg, milk\n" in run("label", "C1", "--market", "eu").out


@pytest.mark.parametrize("market", ["uk", "ca", "au-nz"])
@pytest.mark.parametrize("name", ["T3", "102"])
def test_every_market_answers_in_its_schema_and_promises_nothing(
    run: Run, name: str, market: str
) -> None:
    result = run("label", name, "--market", market, "--parts", "--json").json["result"]
    assert result["market"] == market
    assert "egg" in result["contains"]
    assert not result["gluten"]["claim_allowed"]


def test_each_part_has_a_line_with_its_own_list(run: Run) -> None:
    out = run("label", "T1", "--market", "eu", "--parts").out
    assert "  Lemon syrup (sugar, water, lemon juice)\n" in out
    assert "Lemon syrup (" not in run("label", "T1", "--market", "eu", "--one-list").out


def test_additives_stand_by_number_where_asked(run: Run) -> None:
    out = " ".join(run("label", "F3", "--market", "eu", "--additives", "numbers").out.split())
    assert "thickener: E415" in out
    assert "thickener: xanthan gum" in " ".join(run("label", "F3", "--market", "eu").out.split())
    assert run("label", "F3", "--additives", "colours").code == 2


def test_what_no_list_names_is_told_on_the_page_below_what_is_printed(run: Run) -> None:
    out = run("label", "F1", "--market", "us").out
    assert out.index("Gluten gate") < out.index("Beside the list, not printed")
    assert "Buckwheat is a known allergen" in " ".join(out.split())
