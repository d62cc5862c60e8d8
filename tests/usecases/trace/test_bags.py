"""Which bags: what is taken as it stands, what is asked, what is written."""

from datetime import date

import pytest

from krume.base import InputError
from krume.usecases.trace.bags import (
    BagsSaid,
    bag_problems,
    bags_of,
    check_marks,
    kept_batch,
    lines_of,
    marks_said,
    strange_marks,
)
from krume.usecases.trace.house import HouseLot

DAY = date(2027, 6, 10)
LINES = (("ground hazelnuts", "hazelnuts"), ("eggs", "egg-whole-fresh"), ("house paste", ""))
ONE = HouseLot("L-8", "ground hazelnuts", "Mill at Orl", None, None)
TWO = HouseLot("L-9", "ground hazelnuts", "", None, None)


def test_the_only_lot_in_the_house_is_taken_and_none_is_not_known() -> None:
    bags = bags_of("F1", "", LINES, DAY, [ONE])
    assert [line.taken for line in bags.lines] == [("L-8",), (), ()]
    assert bag_problems([bags]) == ()
    assert bags.title == "F1"


def test_of_several_lots_it_is_asked_which_and_not_known_is_an_answer() -> None:
    (problem,) = bag_problems([bags_of("F1", "", LINES, DAY, [ONE, TWO])])
    assert problem.where == "F1 ground hazelnuts"
    assert [option.line for option in problem.options] == ["L-8", "L-9", "L-8, L-9", "not known"]
    told = BagsSaid(lots={"ground hazelnuts": ()})
    assert bag_problems([bags_of("F1", "", LINES, DAY, [ONE, TWO], told)]) == ()
    unknown = bags_of("F1", "", LINES, DAY, [ONE, TWO], BagsSaid(is_unknown=True))
    assert bag_problems([unknown]) == ()


def test_lots_that_the_text_names_hold_until_something_else_is_said() -> None:
    named = BagsSaid(named=frozenset({"L-9", "L-77"}))
    bags = bags_of("F1", "", LINES, DAY, [ONE, TWO], named)
    assert bags.lines[0].taken == ("L-9",)
    assert bag_problems([bags]) == ()
    said = BagsSaid(named=named.named, lots={"ground hazelnuts": ("L-8",)})
    assert bags_of("F1", "", LINES, DAY, [ONE, TWO], said).lines[0].taken == ("L-8",)


def test_each_lot_is_a_row_with_its_supplier_and_an_unknown_one_is_empty() -> None:
    told = BagsSaid(lots={"ground hazelnuts": ("l-8", "L-77"), "eggs": ("L-8",)})
    kept = kept_batch(bags_of("F1", "", LINES, DAY, [ONE], told), "k", [ONE])
    assert [(x.ingredient, x.lot, x.supplier) for x in kept.lots] == [
        ("ground hazelnuts", "l-8", "Mill at Orl"),
        ("ground hazelnuts", "L-77", ""),
        ("eggs", "L-8", "Mill at Orl"),
        ("house paste", "", ""),
    ]
    assert kept.made_on == "2027-06-10"


@pytest.mark.parametrize(
    ("text", "marks"),
    [("?", ()), (" Not  known ", ()), ("", ()), ("L-1,L-2 , L-1", ("L-1", "L-2")), (",", ())],
)
def test_marks_are_read_by_comma(text: str, marks: tuple[str, ...]) -> None:
    assert marks_said(text) == marks


def test_a_mark_as_long_as_a_letter_is_refused() -> None:
    with pytest.raises(InputError, match="61 signs"):
        marks_said("x" * 61)


def test_lines_of_one_kind_are_one_line_and_water_is_none() -> None:
    from krume.design import read

    text = "Syrup\n\n100 g caster sugar\n50 g water\n20 g caster sugar\n5 g house paste\n"
    assert lines_of(read(text).value) == (
        ("caster sugar", "sugar-granulated"),
        ("house paste", ""),
    )


def test_a_mark_of_other_goods_is_asked_and_refused_and_a_strange_one_is_named() -> None:
    slip = bags_of("F1", "", LINES, DAY, [ONE], BagsSaid(lots={"eggs": ("l-8",)}))
    (problem,) = bag_problems([slip])
    assert (problem.code, problem.where, problem.read) == ("lot-of-other", "F1 eggs", "l-8")
    assert "L-8 is ground hazelnuts in the table of lots, not eggs" in problem.ask
    assert [option.line for option in problem.options] == ["not known"]
    assert strange_marks([slip]) == ()
    with pytest.raises(InputError, match="L-8 is ground hazelnuts"):
        check_marks([slip])
    lots = {"eggs": ("L-77",), "house paste": ("L-8",)}
    strange = bags_of("F1", "", LINES, DAY, [ONE], BagsSaid(lots=lots))
    assert bag_problems([strange]) == ()
    check_marks([strange])
    (notice,) = strange_marks([strange])
    assert "L-77 (eggs)" in notice.text
    assert "L-8" not in notice.text
