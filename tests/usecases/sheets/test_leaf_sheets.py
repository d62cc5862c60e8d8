"""Blend cards and cold log as files: three forms each, beside the cards they belong to."""

from krume.publish import Imprint
from krume.usecases import Asked
from krume.usecases.asking.kind import made_of
from krume.usecases.sheets.leaf_sheets import leaf_sheets
from krume.usecases.sold.order import judge_order
from krume.usecases.sold.product import sold_of

IMPRINT = Imprint(date="2027-06-10", program="1", data="2")


def test_a_torte_has_each_leaf_in_three_forms_by_the_cards_own_names(demo: Asked) -> None:
    files, checks, _ = leaf_sheets(
        made_of("T1", demo), "T1", demo, IMPRINT, None, paper="a5", slugs={"F1": "hazel"}
    )
    stems = {"hazel-blend-card": ("blend-card", "F1"), "cold-log": ("cold-log", "Orl hazel torte")}
    assert {file: kind for file, (kind, _) in files.items()} == {
        f"{stem}.{end}": kind for stem, kind in stems.items() for end in ("pdf", "html", "json")
    }
    assert checks == ()


def test_a_cream_alone_has_none(demo: Asked) -> None:
    made = made_of("C1", demo)
    assert leaf_sheets(made, "C1", demo, IMPRINT, None, paper="a5", slugs={}) == ({}, (), ())


def test_an_order_that_names_somebody_with_coeliac_disease_has_the_gluten_page(
    demo: Asked,
) -> None:
    read = sold_of("101", demo)
    assert read.order is not None
    judged = judge_order(read, read.order, demo)
    slugs = {each: each.casefold() for each in ("F1", "C1", "C5", "S1")}
    files, _, _ = leaf_sheets(
        made_of("101", demo), "101", demo, IMPRINT, judged, paper="a5", slugs=slugs
    )
    page = files["gluten-page.html"][1].decode()
    assert "HELD:" in page
    assert "Please do not give Orl hazel torte" in page
