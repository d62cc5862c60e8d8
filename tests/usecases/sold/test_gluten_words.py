"""The gate in one sentence, for a sheet that has room for one."""

from pathlib import Path

from krume.usecases import Asked, init_book
from krume.usecases.sold.gluten_words import gluten_of_all


def test_each_formula_of_a_torte_says_what_keeps_its_gate_shut(demo: Asked) -> None:
    said = gluten_of_all("T1", demo)
    assert said["F1"] == said["T1"] == "No gluten sentence: L-008."
    assert said["C1"].startswith("Gluten: open on ingredients; no sentence before the room's")


def test_without_papers_nothing_is_said(tmp_path: Path) -> None:
    empty = Asked(book=tmp_path / "book")
    init_book(empty)
    text = tmp_path / "f.txt"
    text.write_text("Sponge\n\n100 g white rice flour\n", encoding="utf-8")
    assert gluten_of_all(str(text), empty) == {}


def test_a_thing_of_the_room_that_is_shut_is_named_on_the_card(own_demo: Asked) -> None:
    assert own_demo.book is not None
    text = "source,state,date,valid_to,text\nsieve,shared,2027-06-01,,\n"
    (own_demo.book / "room.csv").write_text(text, encoding="utf-8")
    said = gluten_of_all("T3", own_demo)["T3"]
    assert said.startswith("Gluten: open on ingredients; no sentence yet: room: cleaning record")
    assert said.endswith("and 8 more.")
