"""The rows of a price list are read strictly, each fault asked with its line."""

import csv

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.pantry.price_rows import as_line, price_rows

HEAD = "item,price,per,status,currency,date\n"


def test_good_cells_come_back_typed() -> None:
    (row,) = price_rows(HEAD + '"eggs, EU M",0.32,each,invented,EUR,2027-05-01\n').rows
    assert (row.item, str(row.amount), row.per, row.status) == (
        *("eggs, EU M", "0.32", "each", "invented"),
    )
    assert (row.currency, str(row.day), row.where) == ("EUR", "2027-05-01", "prices.csv line 2")


def test_what_a_person_types_is_declared_and_names_no_currency() -> None:
    (row,) = price_rows("item,price,per\nbutter,9.20,kg\n").rows
    assert (row.status, row.currency, row.day) == ("declared", "", None)


def test_a_sign_beside_the_price_is_its_currency() -> None:
    (row,) = price_rows("item,price,per\nbutter,€9.20,kg\n").rows
    assert row.currency == "EUR"


@pytest.mark.parametrize(
    ("line", "code", "words"),
    [
        ("butter,-1,kg,,,", "price-unread", "below zero"),
        ("butter,,kg,,,", "price-unread", "butter has no price here"),
        ("butter,NaN,kg,,,", "price-unread", "“NaN” is not read as one amount"),
        ('butter,"1,500",kg,,,', "price-unread", "“1,500” is not read"),
        ("butter,9.20,lb,,,", "price-unit", "one of kg, each, kWh"),
        ("butter,9.20,,,,", "price-unit", "Price per what?"),
        (",9.20,kg,,,", "price-item-missing", "What is priced here?"),
        ("butter,9.20,kg,guess,,", "price-status", "How is this price known?"),
        ("butter,9.20,kg,,,2027-02-30", "price-date", "Of which day"),
        ("butter,9.20,kg", "price-row-unread", "has not the 6 cells"),
        ('"butter,9.20,kg,,,', "price-row-unread", "stands in quotes"),
    ],
)
def test_a_bad_row_is_asked_and_has_no_price(line: str, code: str, words: str) -> None:
    read = price_rows(f"{HEAD}milk,1.20,kg,,,\n{line}\n")
    assert [row.item for row in read.rows] == ["milk"]
    (problem,) = read.problems
    assert (problem.code, problem.where, problem.read) == (code, "prices.csv line 3", line)
    assert words in problem.ask


@pytest.mark.parametrize("line", ["butter,9.20,lb,,,", "butter,9.20,kg,guess,,"])
def test_every_option_of_a_bad_row_is_a_good_row(line: str) -> None:
    (problem,) = price_rows(f"{HEAD}{line}\n").problems
    for option in problem.options:
        assert price_rows(f"{HEAD}{option.line}\n").problems == ()


@pytest.mark.parametrize("mark", [";", "\t"])
def test_a_list_of_another_spreadsheet_is_read_with_its_own_mark(mark: str) -> None:
    lines = (("item", "price", "per"), ("cream", "5,60", "KG"), ("milk", "1,20", "l"))
    read = price_rows("\n".join(mark.join(cells) for cells in lines))
    assert [(row.item, str(row.amount), row.per) for row in read.rows] == [("cream", "5.60", "kg")]
    assert read.problems[0].options[0].line == f"milk{mark}1,20{mark}kg"


@pytest.mark.parametrize(
    "head",
    ["item,price", "item,price,per,per", "item,price,per,colour", "butter,9.20,kg", '"item,price'],
)
def test_a_head_with_other_columns_is_asked(head: str) -> None:
    read = price_rows(f"{head}\nbutter,9.20,kg\n")
    assert read.rows == ()
    assert [problem.code for problem in read.problems] == ["price-columns"]


@pytest.mark.parametrize("text", ["", "\n \n", "\ufeff"])
def test_an_empty_list_has_no_rows_and_no_questions(text: str) -> None:
    assert (price_rows(text).rows, price_rows(text).problems) == ((), ())


def test_a_list_of_many_thousand_lines_is_not_read() -> None:
    read = price_rows("item,price,per\n" + "butter,9.20,kg\n" * 6000)
    assert read.rows == ()
    assert [problem.code for problem in read.problems] == ["prices-too-long"]


@given(st.lists(st.text(st.characters(exclude_categories=["Cs", "Cc"])), min_size=1, max_size=6))
def test_a_line_made_of_cells_is_read_back_as_those_cells(cells: list[str]) -> None:
    line = as_line({str(n): cell for n, cell in enumerate(cells)})
    assert next(csv.reader([line])) == cells or cells == [""]


@given(st.text())
def test_no_text_stops_the_reader(text: str) -> None:
    read = price_rows(text)
    assert all(problem.where.startswith("prices.csv line ") for problem in read.problems)
