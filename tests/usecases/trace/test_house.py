"""Which lots of the house a line may take, and on which days they were there."""

from datetime import date
from pathlib import Path

import pytest

from krume.store import Book, add_texts
from krume.usecases import Asked
from krume.usecases.trace.house import (
    HouseLot,
    day_notices,
    has_no_lot,
    house_lots,
    lots_for,
    may_take,
    takes,
)

DAY = date(2027, 6, 10)
TABLE = """\
lot,ingredient,evidence,text,result_mg_kg,from,valid_to,supplier,came,used_up
L-1,ground hazelnuts,specification,,,,,Mill at Orl,2027-05-01,2027-06-09
L-2,ground hazelnuts,specification,,,,,,2027-06-01,
L-3,eggs,specification,,,,,Hen house,soon,
L-2,ground hazelnuts,lab test,,<5,2027-06-01,2028-06-01,The Orl mill,,
"""


@pytest.fixture
def own_lots(tmp_path: Path) -> Asked:
    """A book with three lots."""
    add_texts(Book(tmp_path / "b"), {"lots.csv": TABLE.encode()})
    return Asked(book=tmp_path / "b")


def test_suppliers_and_days_are_read_and_no_day_is_made_up(own_lots: Asked) -> None:
    first, second, third = house_lots(own_lots)
    assert (first.supplier, first.came, first.used_up) == (
        "Mill at Orl", date(2027, 5, 1), date(2027, 6, 9),
    )  # fmt: skip
    assert (second.came, second.used_up, third.came) == (date(2027, 6, 1), None, None)
    assert second.supplier == "The Orl mill"
    (said,) = day_notices(own_lots)
    assert "L-3" in said.text
    assert "soon" in said.text


@pytest.mark.parametrize(
    ("came", "used_up", "there"),
    [
        (None, None, True),
        (DAY, DAY, True),
        (date(2027, 6, 11), None, False),
        (None, date(2027, 6, 9), False),
    ],
)
def test_only_days_that_are_written_rule_a_lot_out(
    came: date | None, used_up: date | None, *, there: bool
) -> None:
    assert HouseLot("L-1", "eggs", "", came, used_up).was_there(DAY) is there


def test_a_lot_that_was_used_up_is_not_offered(own_lots: Asked) -> None:
    offered = lots_for("ground hazelnuts", "hazelnuts", house_lots(own_lots), DAY)
    assert [lot.mark for lot in offered] == ["L-2"]


@pytest.mark.parametrize(
    ("ingredient", "goods", "words", "fits"),
    [
        ("egg yolks", "egg-yolk-fresh", "eggs", True),
        ("ground hazelnuts", "hazelnuts", "hazelnuts", True),
        ("lemon zest", "lemon-peel-raw", "lemon juice", True),
        ("house paste", "", "House  Paste", True),
        ("buckwheat flour", "flour-buckwheat-whole", "white rice flour", False),
        ("house paste", "", "teff flour", False),
    ],
)
def test_goods_of_one_kind_are_kin_and_bagged_ones_stand_apart(
    ingredient: str, goods: str, words: str, *, fits: bool
) -> None:
    assert takes(ingredient, goods, words) is fits


def test_water_from_the_tap_has_no_lot() -> None:
    assert has_no_lot("water-tap")
    assert not has_no_lot("egg-whole-fresh")


@pytest.mark.parametrize(
    ("ingredient", "goods", "words", "may"),
    [
        ("nice nuts", "", "ground hazelnuts", True),
        ("butter", "butter-82-ciqual", "the green tub", True),
        ("butter", "butter-82-ciqual", "ground hazelnuts", False),
    ],
)
def test_what_the_pantry_does_not_know_may_be_anything(
    ingredient: str, goods: str, words: str, *, may: bool
) -> None:
    assert may_take(ingredient, goods, words) is may


@pytest.mark.parametrize(
    ("words", "goods", "is_open"),
    [
        ("flour", "flour-rice-white", True),
        ("Mehl", "flour-rice-white", True),
        ("oil", "oil-canola", True),
        ("flour", "sugar-granulated", False),
        ("rice flour, white", "flour-millet", False),
    ],
)
def test_a_bag_called_only_by_its_class_rules_out_nothing_of_it(
    words: str, goods: str, is_open: bool
) -> None:
    assert may_take("something", goods, words) is is_open
