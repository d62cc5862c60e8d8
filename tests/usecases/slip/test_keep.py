"""The way that was chosen, on paper and as a text; the book stays as it is."""

import json
from collections.abc import Callable
from pathlib import Path

import pytest

from krume.base import InputError
from krume.design import read
from krume.usecases import Asked, SlipWish, make_sheets, rescue_slip, verify_sheets
from tests.usecases.slip.test_slip import SLIP


def _keep(asked: Asked, out: Path, choose: int, weighed: tuple[str, ...] = SLIP) -> dict[str, Path]:
    answer = rescue_slip("F2", SlipWish(weighed, choose=choose, out=out), asked)
    assert answer.exit_code == 0, answer.problems
    return {Path(file.path).name: Path(file.path) for file in answer.result.files}


def test_a_jar_gets_its_own_card_with_what_the_next_cake_adds(demo: Asked, tmp_path: Path) -> None:
    files = _keep(demo, tmp_path / "out", 1)
    assert set(files) == {
        "f2-rescued.txt",
        *(f"f2-rescued-bench-card.{end}" for end in ("pdf", "html", "json")),
        *(f"f2-jar-blend-card.{end}" for end in ("pdf", "html", "json")),
        "f2-slip.json",
        "sheets.json",
    }
    card = files["f2-jar-blend-card.html"].read_text(encoding="utf-8")
    assert "In this jar: 31.5 g" in card
    assert "add 73.5 g (white rice flour 28 g, teff flour 14 g" in card
    assert files["f2-jar-blend-card.pdf"].read_bytes().startswith(b"%PDF")


def test_the_record_holds_the_bowl_both_texts_and_the_way_back(demo: Asked, tmp_path: Path) -> None:
    files = _keep(demo, tmp_path / "out", 2)
    record = json.loads(files["f2-slip.json"].read_text(encoding="utf-8"))
    assert record["chosen"] == "leave"
    assert record["on"] == "2027-06-10"
    assert [row["weighed_g"] for row in record["in_bowl"]] == [40.0, 26.0]
    assert "20 g teff flour" in record["before"]
    assert "26 g teff flour" in record["after"]
    assert record["back"]["command"] == "krume sheet F2 --out DIR"


def test_a_larger_cake_is_written_with_its_eggs_and_portions(demo: Asked, tmp_path: Path) -> None:
    files = _keep(demo, tmp_path / "out", 2, ("sugar=140",))
    text = files["f2-rescued.txt"].read_text(encoding="utf-8")
    assert "6 eggs, medium, separated" in text
    assert "remaining 90 g sugar" in text
    masses = [line.mass_g for line in read(text).value.lines]
    assert masses == pytest.approx([48, 24, 36, 10.8, 7.2, 306, 156, 24, 1.2, 4.8, 4.8])


def test_the_bench_card_weighs_the_corrected_grams(demo: Asked, tmp_path: Path) -> None:
    files = _keep(demo, tmp_path / "out", 3, ("sugar=140",))
    card = json.loads(files["f2-rescued-bench-card.json"].read_text(encoding="utf-8"))
    rows = {row["take"]: row["add_g"] for row in card["rows"] if row["kind"] != "tare"}
    assert rows["white rice flour"] == 43.1
    assert rows["yolks of 5.38 eggs"] + rows["whites of 5.38 eggs"] == pytest.approx(274.6)
    assert any("caster sugar 140 g" in hint for hint in card["hints"])


def test_a_second_cake_has_both_cards(demo: Asked, tmp_path: Path) -> None:
    kinds = [way.kind for way in rescue_slip("F2", SlipWish(SLIP), demo).result.ways]
    files = _keep(demo, tmp_path / "out", kinds.index("second") + 1)
    assert {"f2-as-planned-bench-card.pdf", "f2-second-bench-card.pdf"} <= set(files)


def test_the_book_is_not_changed(own_demo: Asked, tmp_path: Path) -> None:
    before = rescue_slip("F2", SlipWish(SLIP), own_demo).result
    _keep(own_demo, tmp_path / "out", 2)
    assert rescue_slip("F2", SlipWish(SLIP), own_demo).result == before


def test_a_text_outside_a_book_is_kept_too(bare: Asked, tmp_path: Path) -> None:
    path = tmp_path / "own.txt"
    path.write_text("Own\n\n40 g white rice flour\n20 g teff flour\n\nSift.\n", encoding="utf-8")
    wish = SlipWish(("teff=26",), choose=1, out=tmp_path / "out")
    result = rescue_slip(str(path), wish, bare).result
    assert any(file.path.endswith("rescued.txt") for file in result.files)


@pytest.mark.parametrize("choose", [0, -1, 99])
def test_a_way_that_is_none_is_refused_and_nothing_is_written(
    demo: Asked, tmp_path: Path, choose: int
) -> None:
    with pytest.raises(InputError, match="Choose one of 1 to"):
        rescue_slip("F2", SlipWish(SLIP, choose=choose, out=tmp_path / "out"), demo)
    assert not (tmp_path / "out").exists()


def test_a_choice_without_a_folder_says_what_to_type(demo: Asked) -> None:
    with pytest.raises(InputError, match="--out DIR"):
        rescue_slip("F2", SlipWish(SLIP, choose=1), demo)


def test_an_open_question_writes_nothing(demo: Asked, tmp_path: Path) -> None:
    wish = SlipWish(("starch=46",), choose=1, out=tmp_path / "out")
    assert rescue_slip("F2", wish, demo).exit_code == 3
    assert not (tmp_path / "out").exists()


def test_kept_sheets_are_verified_against_the_text_they_were_made_of(
    write: Callable[[str], str], bare: Asked, tmp_path: Path
) -> None:
    text = "Own\n\n40 g white rice flour\n20 g teff flour\n30 g potato starch\n"
    path, out = write(text), tmp_path / "out"
    wish = SlipWish(("teff=26",), choose=1, out=out)
    assert rescue_slip(path, wish, bare).exit_code == 0
    assert verify_sheets(out, bare).problems == ()
    Path(path).write_text(text.replace("30 g", "32 g"), encoding="utf-8")
    stale = verify_sheets(out, bare).problems
    assert any(each.where.endswith("-bench-card.pdf") for each in stale)
    assert f"krume slip {path} --weighed teff=26" in stale[0].ask
    assert "--choose" not in stale[0].ask


def test_a_slips_list_keeps_the_sheets_made_before_it(demo: Asked, tmp_path: Path) -> None:
    out = tmp_path / "out"
    make_sheets("F2", demo, out=out)
    _keep(demo, out, 1)
    verified = {each.file for each in verify_sheets(out, demo).result.verified}
    assert {"f2-bench-card.pdf", "f2-rescued-bench-card.pdf", "f2-slip.json"} <= verified


def test_the_corrected_card_says_what_is_in_already_and_what_the_jar_gets(
    demo: Asked, tmp_path: Path
) -> None:
    files = _keep(demo, tmp_path / "out", 1)
    card = files["f2-rescued-bench-card.html"].read_text(encoding="utf-8")
    assert "white rice flour 40 g, teff flour 26 g" in card
    assert "is in" in card
    assert "take out into the labelled jar" in card
    rows = json.loads(files["f2-rescued-bench-card.json"].read_text(encoding="utf-8"))["rows"]
    assert [row["display_g"] for row in rows[1:7]] == [66.0, 78.0, 117.0, 128.7, 136.5, 105.0]
