"""A label on its way to paper: maker, net quantity, lot and code, its panel in columns."""

import json
from pathlib import Path

import pytest
from pypdf import PdfReader

from krume.base import InputError, OutOfRangeError
from krume.store import place_all
from krume.usecases import Asked, LabelResult, LabelWish, PrintWish, label_of, label_sheets
from krume.usecases.book.book import demo_files
from krume.usecases.label.paper_sheet import panel_drawn
from tests.agreement import agrees

BARE = LabelWish(market="eu", with_panel=False)


def written(answer_files: LabelResult, format_: str) -> str:
    """The words of a written label."""
    path = next(file.path for file in answer_files.files if file.format == format_)
    if format_ == "pdf":
        return " ".join(" ".join(page.extract_text() for page in PdfReader(path).pages).split())
    return Path(path).read_text(encoding="utf-8")


@pytest.mark.parametrize("format_", ["pdf", "html", "txt", "json"])
def test_maker_net_weight_and_lot_stand_on_every_form(
    demo: Asked, tmp_path: Path, format_: str
) -> None:
    more = PrintWish(code="270611-1", net_g=1574.8, link="https://cakes.example/t3")
    answer = label_sheets("T3", BARE, demo, out=tmp_path, more=more)
    said = written(answer.result, format_)
    assert "Made by Tidewick Cake Bench, 2 Slip Row, Tidewick-on-Orl" in said
    assert "1574 g" in said
    assert "270611-1" in said


def test_json_holds_what_the_code_says(demo: Asked, tmp_path: Path) -> None:
    more = PrintWish(code="270611-1", link="https://cakes.example/t3")
    answer = label_sheets("T3", BARE, demo, out=tmp_path, more=more)
    assert json.loads(written(answer.result, "json"))["says"] == (
        "https://cakes.example/t3#270611-1"
    )


def test_a_label_without_a_maker_is_held_and_says_what_opens_it(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    place_all(asked.book or Path(), demo_files())
    studio = tmp_path / "book" / "studio.toml"
    lines = studio.read_text(encoding="utf-8").splitlines()
    studio.write_text("\n".join(line for line in lines if not line.startswith("address")))
    answer = label_sheets("T3", BARE, asked, out=tmp_path / "out")
    assert answer.exit_code == 3
    assert "the maker's name and address are not known" in answer.problems[0].ask
    assert '--maker "NAME, ADDRESS"' in [option.line for option in answer.problems[0].options]
    assert not label_of("T3", BARE, asked).result.can_print
    typed = LabelWish(market="eu", with_panel=False, maker="A. Baker, 1 Quay, Orl")
    opened = label_sheets("T3", typed, asked, out=tmp_path / "out")
    assert opened.exit_code == 0
    assert "A. Baker, 1 Quay, Orl" in written(opened.result, "txt")


def test_a_net_weight_of_nothing_is_refused(demo: Asked, tmp_path: Path) -> None:
    for grams in (0.0, -5.0, float("nan")):
        with pytest.raises(OutOfRangeError, match="is no net weight"):
            label_sheets("T3", BARE, demo, out=tmp_path / "out", more=PrintWish(net_g=grams))
    assert not (tmp_path / "out").exists()


def test_an_address_no_phone_should_open_is_refused(demo: Asked, tmp_path: Path) -> None:
    with pytest.raises(InputError, match="cannot stand in the code"):
        label_sheets("T3", BARE, demo, out=tmp_path / "out", more=PrintWish(link="javascript:1"))


def test_the_us_panel_becomes_the_box_and_the_eus_a_table_in_columns(demo: Asked) -> None:
    us = label_of("F4", LabelWish(market="us"), demo).result.labels[0].nutrition
    assert us is not None
    box = panel_drawn(us)
    assert type(box).__name__ == "FactsBox"
    eu = label_of("C1", LabelWish(market="eu"), demo).result.labels[0].nutrition
    assert eu is not None
    table = panel_drawn(eu)
    assert type(table).__name__ == "PanelTable"
    assert [line.label for line in table.lines][:2] == ["Energy", "Fat"]  # type: ignore[union-attr]
    assert " kJ / " in table.lines[0].cells[0]  # type: ignore[union-attr]


@pytest.mark.source("eu-76-211", "annex I 3.1: above 1000 g at least 6 mm")
def test_the_figures_of_a_large_cakes_weight_are_six_millimetres_high(
    demo: Asked, tmp_path: Path
) -> None:
    answer = label_sheets("T3", BARE, demo, out=tmp_path, more=PrintWish(net_g=1574.8))
    assert agrees(json.loads(written(answer.result, "json"))["net"]["least_mm"], "6")


@pytest.mark.parametrize("more", [PrintWish(net_g=753.0), PrintWish(code="270611-1")])
def test_one_weight_or_lot_is_never_that_of_several_things(
    demo: Asked, tmp_path: Path, more: PrintWish
) -> None:
    text = tmp_path / "two.txt"
    text.write_text("Order 9\nDate: 2027-06-12\n\n1 C1\n1 F4\n", encoding="utf-8")
    with pytest.raises(InputError, match="cannot be that of 2 things"):
        label_sheets(str(text), BARE, demo, out=tmp_path / "out", more=more)
    assert not (tmp_path / "out").exists()
