"""A formula, a torte and an order are told apart, and lead to their formulas."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from krume.base import NotFoundError
from krume.store import Book, add_texts
from krume.usecases import Asked
from krume.usecases.asking.kind import kind_of, made_of, text_inside
from krume.usecases.asking.text import text_of
from tests.usecases.conftest import PLAIN


def test_every_text_of_the_demo_is_told_by_its_lines_alone(book: Path) -> None:
    folders = {"formulas": "formula", "tortes": "torte", "orders": "order"}
    for folder, kind in folders.items():
        for path in sorted((book / folder).iterdir()):
            assert kind_of(path.read_text(encoding="utf-8")) == kind, path.name


@pytest.mark.parametrize(
    ("name", "kind", "formulas"),
    [
        ("F1", "formula", ["F1"]),
        ("T1", "torte", ["F1", "C1", "C5", "S1"]),
        ("TART", "torte", ["F7", "C3"]),
        ("101", "order", ["F1", "C1", "C5", "S1"]),
    ],
)
def test_a_text_leads_to_its_formulas_each_once(
    demo: Asked, name: str, kind: str, formulas: list[str]
) -> None:
    made = made_of(name, demo)
    assert made.kind == kind
    assert [read.source.name for read in made.formulas] == formulas
    assert made.problems == ()


def test_an_order_of_several_tortes_gathers_the_formulas_of_all(demo: Asked) -> None:
    names = [read.source.name for read in made_of("102", demo).formulas]
    assert sorted(names) == ["C2", "C3", "C4", "F3", "F4", "F7", "S1"]


def test_an_order_may_come_from_a_file_of_its_own(demo: Asked, write: Callable[[str], str]) -> None:
    made = made_of(write("Order 7\nDate: 2027-06-12\n\n2 T2\n"), demo)
    assert made.kind == "order"
    assert made.title == "Order 7"
    assert [read.source.name for read in made.formulas] == ["F3", "C2", "S1"]


def test_a_class_is_made_of_its_kits(demo: Asked) -> None:
    made = made_of("CLASS7", demo)
    assert (made.kind, made.problems) == ("order", ())
    assert [(x.count, x.what) for x in made.order.lines] == [(10, "F3")]  # type: ignore[union-attr]
    assert [read.source.name for read in made.formulas] == ["F3"]


def test_a_name_that_is_not_in_the_book_is_named_with_its_line(
    demo: Asked, write: Callable[[str], str]
) -> None:
    with pytest.raises(NotFoundError, match="line 4 names T9"):
        made_of(write("Order 7\nDate: 2027-06-12\n\n1 T9\n"), demo)


@pytest.fixture
def order_of_files(tmp_path: Path) -> Path:
    """An order, its torte and their formula as files of one folder, without any book."""
    texts = {
        "Plain.txt": PLAIN,
        "Mine.txt": "My torte\n\n2 layers of Plain, 14 mm\n",
        "order.txt": "Order 7\nDate: 2027-06-12\nHand-over: 14:00, pick-up\n\n1 Mine\n",
    }
    folder = tmp_path / "files"
    folder.mkdir()
    for name, text in texts.items():
        (folder / name).write_text(text, encoding="utf-8")
    return folder


def test_an_order_in_a_file_names_the_torte_beside_it(bare: Asked, order_of_files: Path) -> None:
    made = made_of(str(order_of_files / "order.txt"), bare)
    assert made.kind == "order"
    assert [read.source.name for read in made.formulas] == ["Plain"]


@pytest.mark.parametrize("what", ["../Mine", "sub/Mine", "Nothing", ""])
def test_a_name_is_no_path_to_elsewhere(bare: Asked, order_of_files: Path, what: str) -> None:
    (order_of_files / "sub").mkdir()
    for elsewhere in (order_of_files.parent, order_of_files / "sub"):
        (elsewhere / "Mine.txt").write_text("My torte\n\n2 layers of F1, 14 mm\n")
    source = text_of(str(order_of_files / "order.txt"), bare)
    assert text_inside(what, source, Book(order_of_files / "no-book")) is None


def test_what_the_book_has_comes_before_a_file_beside(demo: Asked, order_of_files: Path) -> None:
    (order_of_files / "T1.txt").write_text("My torte\n\n2 layers of Plain, 14 mm\n")
    source = text_of(str(order_of_files / "order.txt"), demo)
    assert demo.book is not None
    found = text_inside("T1", source, Book(demo.book))
    assert found is not None
    assert (found.place, found.is_beside) == ("tortes/T1.txt", False)


@pytest.fixture
def asking(tmp_path: Path) -> Asked:
    """A book whose torte stands on a formula with an open question."""
    torte = "Torte\n\n3 layers of P1, 14 mm\n10 mm P2 between the layers\n"
    add_texts(
        Book(tmp_path / "own"),
        {
            "formulas/P1.txt": PLAIN.encode(),
            "formulas/P2.txt": b"Cream\n\n200 g whipping cream\n",
            "tortes/P.txt": torte.encode(),
        },
    )
    return Asked(book=tmp_path / "own")


def test_a_question_inside_carries_the_name_of_its_text(asking: Asked) -> None:
    (problem,) = made_of("P", asking).problems
    assert problem.where == "P1 line 5"
    for option in problem.options:
        answered = replace(asking, answers=(f"{problem.where}={option.line}",))
        assert made_of("P", answered).problems == (), option


def test_a_torte_of_no_layers_is_a_torte_still() -> None:
    assert kind_of("Torte\n\n0 layers of F1, 14 mm\n") == "torte"
