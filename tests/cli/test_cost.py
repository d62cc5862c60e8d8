"""`krume cost`: the price first, then what it is made of, on a phone's width too."""

from collections.abc import Callable

import pytest

from tests.cli.conftest import Run


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART", "F1", "C1", "101", "102"])
@pytest.mark.parametrize("columns", [40, 80])
def test_a_cost_fits_the_page(name: str, columns: int, run: Run) -> None:
    said = run("cost", name, columns=columns)
    assert said.code == 0
    assert max(len(line) for line in said.out.splitlines()) <= columns


def test_the_price_and_the_hour_stand_first(run: Run) -> None:
    lines = run("cost", "T1", "--price", "96").out.splitlines()
    assert lines[:3] == [
        "Orl hazel torte",
        "96.00, the price you gave",
        "an hour of your work brings 27.43",
    ]


def test_the_heads_stand_under_each_other(run: Run) -> None:
    said = run("cost", "T1", "--price", "96").out
    assert " 6.76  material\n52.80  labour\n 0.61  energy\n 2.46  packaging\n" in said
    assert "62.63  direct\n25.83  share of fixed\n88.46  full\n" in said
    assert "30 % markup: a share of the cost, and a margin of 23.1 %" in said
    flat = " ".join(said.split())
    assert "break-even: 19 tortes a month." in flat
    assert "If your own work is nothing: 8 tortes; this pays you nothing." in flat
    assert "14 slices: 6.86 each" in flat


def test_json_holds_numbers_and_fits_its_schema(run: Run) -> None:
    said = run("cost", "T1", "--price", "96", "--json")
    result = said.json["result"]
    wanted = {
        "material": 6.76, "labour": 52.8, "energy": 0.61, "packaging": 2.46, "direct": 62.63,
        "full": 88.46, "per_slice": 6.86, "price_for_margin": 126.37, "break_even": 19,
    }  # fmt: skip
    assert {key: result[key] for key in wanted} == wanted
    assert result["margin_pct"] == pytest.approx(7.9, abs=0.05)


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("T1", "--price", "62"), 0),
        (("T1", "--price", "x"), 3),
        (("T1", "--margin", "100"), 3),
        (("CLASS7",), 3),
        (("T9",), 3),
        (("T1", "--colour", "red"), 2),
    ],
)
def test_every_end_has_its_code_and_its_object(words: tuple[str, ...], code: int, run: Run) -> None:
    said = run("cost", *words, "--json")
    assert said.code == code
    assert said.json["ok"] == (code == 0)


def test_below_the_direct_cost_there_is_no_break_even_and_it_is_said(run: Run) -> None:
    found = run("cost", "T1", "--price", "62", "--json").json
    assert found["result"]["break_even"] is None
    assert "no-break-even" in {notice["code"] for notice in found["notices"]}


def test_what_is_not_known_is_a_word_on_the_page_and_null_in_the_object(
    run: Run, write: Callable[[str], str]
) -> None:
    path = write("Sponge\nTin: round 20 x 7 cm\n\n100 g spirulina\n\nBake.\n")
    said = run("cost", path)
    assert said.code == 3
    assert "unknown  material" in said.out
    assert run("cost", path, "--json").json["result"]["material"] is None


def test_an_answer_is_a_line_of_the_price_list(run: Run, write: Callable[[str], str]) -> None:
    path = write("Cream\n\n100 g whipping cream\n10 g almond butter\n")
    assert run("cost", path).code == 3
    answer = "prices.csv after line 38=almond butter,20,kg,declared"
    assert run("cost", path, "--answer", answer, "--json").json["result"]["material"] == 0.76


def test_a_price_list_is_asked_row_by_row(
    run: Run, own_book: Callable[[dict[str, str]], object]
) -> None:
    book = own_book(
        {"prices.csv": "item,price,per\nbutter,-2,kg\n", "formulas/B.txt": "B\n\n10 g butter\n"}
    )
    said = run("cost", "B", "--book", str(book))
    assert said.code == 3
    assert "A price below zero (-2) cannot be added up." in said.out
