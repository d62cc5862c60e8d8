"""One place judges the gluten gate, so that no surface can leave a paper out."""

import ast
from datetime import date
from pathlib import Path

import pytest

import krume.usecases
from krume.store import place_all
from krume.usecases import Asked, GlutenWish, LabelWish, gluten_of, label_of
from krume.usecases.book.book import demo_files
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.papers import papers_of
from krume.usecases.sold.product import sold_of

_USECASES = Path(krume.usecases.__file__).parent


def _asks_label(path: Path) -> bool:
    """Whether a module takes the gate itself from the label."""
    return any(
        isinstance(node, ast.ImportFrom)
        and node.module == "krume.label"
        and any(name.name == "gluten_gate" for name in node.names)
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
    )


def test_no_other_usecase_judges_the_gate_by_itself() -> None:
    found = [path.name for path in sorted(_USECASES.rglob("*.py")) if _asks_label(path)]
    assert found == ["gate.py"]


def test_the_gate_of_a_torte_is_that_of_the_books_papers(demo: Asked) -> None:
    read, papers = sold_of("T1", demo), papers_of(demo)
    gate = gate_of(read.sold[0].product, papers, on=read.on)
    assert gate.missing == ("L-008", "room: cleaning record")
    assert gate.market == "eu"


def test_the_books_market_is_that_of_the_gate_where_none_is_said(tmp_path: Path) -> None:
    files = demo_files()
    studio = files["studio.toml"].replace(b'market = "eu"', b'market = "us"')
    lots = files["lots.csv"].replace(
        b"test of the lot,<5,2027-04-04", b"test of the lot,20,2027-04-04"
    )
    place_all(tmp_path, {**files, "studio.toml": studio, "lots.csv": lots})
    asked = Asked(book=tmp_path)
    product, papers = sold_of("T3", asked).sold[0].product, papers_of(asked)
    day = date(2027, 6, 10)
    assert "L-009" in gate_of(product, papers, on=day).missing
    assert "L-009" not in gate_of(product, papers, on=day, market="eu").missing


@pytest.mark.parametrize(
    "name",
    ["T3", "t3", "Net-loft ring torte", "F4", "Net-loft walnut sponge", "C2", "Set yoghurt cream"],
)
@pytest.mark.parametrize("paper", ["lab test,,25,2027-04-04,2028-04-04", "may contain,wheat,,,"])
def test_a_paper_of_the_torte_or_a_part_of_it_shuts_label_and_gluten_page(
    tmp_path: Path, name: str, paper: str
) -> None:
    files = demo_files()
    lots = files["lots.csv"] + f"L-500,{name},{paper},invented\n".encode()
    place_all(
        tmp_path, {**files, "lots.csv": lots, "cleaning.csv": b"date,cleaned\n2027-06-10,yes\n"}
    )
    asked = Asked(book=tmp_path)
    (label,) = label_of("T3", LabelWish(market="eu"), asked).result.labels
    assert not label.gluten.claim_allowed
    assert "L-500" in label.gluten.missing
    assert gluten_of("T3", GlutenWish(market="eu"), asked).result.missing == ("L-500",)


def test_a_list_of_the_room_that_cannot_be_read_shuts_the_gate(tmp_path: Path) -> None:
    clean = b"date,cleaned\n2027-06-10,yes\n"
    place_all(tmp_path, {**demo_files(), "cleaning.csv": clean})
    asked = Asked(book=tmp_path)
    product, day = sold_of("T3", asked).sold[0].product, date(2027, 6, 10)
    assert gate_of(product, papers_of(asked), on=day).claim_allowed
    (tmp_path / "room.csv").write_text("hello", encoding="utf-8")
    gate = gate_of(product, papers_of(asked), on=day)
    assert not gate.claim_allowed
    assert "room: line 1 of its list" in gate.missing
