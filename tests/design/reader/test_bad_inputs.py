"""Odd, wrong and double inputs: each gets what the table of bad inputs says."""

import pytest

from krume.base import Notice, Problem, Read
from krume.design import Formula, apply_answers, decode_text, read
from tests.design.bad_inputs import EGGS, ROWS, Bad

NO_OPTION_FITS = {"no-ingredient-line", "number-too-large", "not-a-number", "date-not-a-date"}


def ids(bad: Bad) -> str:
    return f"{bad.row} {bad.text.strip()[-40:]!r}"


def asked(found: Read[Formula], code: str) -> list[Problem]:
    return [problem for problem in found.problems if problem.code == code]


def noted(found: Read[Formula], code: str) -> list[Notice]:
    return [notice for notice in found.notices if notice.code == code]


@pytest.mark.parametrize("bad", ROWS, ids=ids)
def test_each_bad_input_gets_what_the_table_says(bad: Bad) -> None:
    found = read(bad.text)
    if bad.gets in ("ask", "error"):
        (problem,) = found.problems
        assert not bad.code or problem.code == bad.code
        assert all(words in problem.ask for words in bad.words), problem.ask
    else:
        texts = [notice.text for notice in noted(found, bad.code)]
        assert not bad.code or any(all(w in text for w in bad.words) for text in texts), texts
        assert bool(found.problems) == (bad.gets == "ask+note")


@pytest.mark.parametrize("bad", [b for b in ROWS if b.gets == "ask"], ids=ids)
def test_a_question_offers_two_to_four_ways_out(bad: Bad) -> None:
    for problem in read(bad.text).problems:
        assert problem.code in NO_OPTION_FITS or 2 <= len(problem.options) <= 4


@pytest.mark.parametrize("bad", ROWS, ids=ids)
def test_every_line_of_a_bad_input_is_kept(bad: Bad) -> None:
    kept = read(bad.text).value.source_lines
    assert [line.text for line in kept] == bad.text.split("\n")


def test_all_the_ways_to_write_85_g_are_the_same() -> None:
    ways = [row.text for row in ROWS if row.row == 44 and row.gets == "accept"]
    first = [read(text).value.lines[0] for text in ways]
    assert [(x.mass_g, x.ingredient, x.basis) for x in first] == [
        (85.0, "flour-buckwheat-whole", "weighed")
    ] * len(ways)


def test_one_thousand_five_hundred_and_one_and_a_half_are_told_apart() -> None:
    assert read(f"x\n{EGGS}\n\n1,5 kg sugar").value.lines[0].mass_g == 1500.0
    assert read(f"x\n{EGGS}\n\n1,500 g sugar").value.lines[0].mass_g == 1500.0
    assert read(f"x\n{EGGS}\n\n0,25 g salt").value.lines[0].mass_g == 0.25


def test_a_negative_mass_is_not_taken() -> None:
    assert [line.mass_g for line in read("x\n\n-30 g sugar\n20 g butter").value.lines] == [20.0]


def test_a_range_keeps_its_ends_and_plans_with_the_middle() -> None:
    (line,) = read("x\n\n2-3 g lemon zest").value.lines
    assert (line.mass_g, line.part) == (2.5, "zest")
    assert line.mass_interval_g is not None
    assert (line.mass_interval_g.low, line.mass_interval_g.high) == (2.0, 3.0)


def test_what_follows_the_eggs_weight_has_no_fixed_mass() -> None:
    text = "Four of a weight\n\n2 eggs (weigh the eggs, then as much sugar, butter and flour)"
    eggs, *tied = read(text).value.lines
    assert eggs.amount == 2.0
    assert eggs.unit == "each"
    assert [line.name for line in tied] == ["sugar", "butter", "flour"]
    assert {line.basis for line in tied} == {"ratio"}
    assert {line.mass_g for line in tied} == {None}


def test_what_follows_weighed_eggs_weighs_what_they_weigh() -> None:
    text = "x\n\n204 g egg\nthe same weight of butter\nthe weight of the eggs in sugar"
    assert [line.mass_g for line in read(text).value.lines] == [204.0, 204.0, 204.0]


def test_a_text_of_over_five_million_signs_names_the_limit_and_loses_nothing() -> None:
    text = "Sponge\n\n" + "85 g butter\n" * 450_000
    found = read(text)
    (problem,) = asked(found, "text-too-large")
    assert "5 million" in problem.ask
    assert problem.where.startswith("line ")
    assert "\n".join(line.text for line in found.value.source_lines) == text
    assert found.value.lines == ()


def test_a_line_of_over_a_million_signs_is_named_and_the_others_are_read() -> None:
    long = "a" * 1_000_001
    found = read(f"Sponge\n\n85 g butter\n{long}\n130 g sugar")
    (problem,) = found.problems
    assert (problem.code, problem.where) == ("line-too-long", "line 4")
    assert "1000000" in problem.ask
    assert [line.mass_g for line in found.value.lines] == [85.0, 130.0]
    assert found.value.source_lines[3].text == long


@pytest.mark.parametrize(
    ("encoding", "said"),
    [
        ("utf-8", ""),
        ("utf-8-sig", "UTF-8"),
        ("utf-16", "UTF-16"),
        ("utf-16-le", "UTF-16"),
        ("utf-16-be", "UTF-16"),
        ("cp1252", "Windows-1252"),
    ],
)
def test_bytes_are_read_and_the_encoding_is_said(encoding: str, said: str) -> None:
    text = "Sponge\n\n½ tsp salt\n85 g butter"
    found = decode_text(text.encode(encoding))
    assert found.value == text
    assert found.problems == ()
    assert "".join(notice.text.split(":")[0] for notice in found.notices) == (
        f"read as {said}" if said else ""
    )


@pytest.mark.parametrize("data", [b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", bytes(range(256)) * 4])
def test_bytes_that_are_no_text_are_asked_about(data: bytes) -> None:
    found = decode_text(data)
    assert [problem.code for problem in found.problems] == ["not-text"]
    assert found.value == ""


def test_an_answer_to_a_bad_input_is_kept_word_for_word() -> None:
    text = "x\n\n5 eggs, medium, separated\n130 g sugar"
    (problem,) = read(text).problems
    assert [option.line for option in problem.options] == [
        "5 eggs, EU M, separated",
        "5 eggs, US Medium, separated",
    ]
    edited = apply_answers(text, [f"{problem.where}={problem.options[0].line}"])
    assert read(edited).value.lines[0].mass_g == 255.0
