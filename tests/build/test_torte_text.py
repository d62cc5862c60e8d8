"""Torte plans as a person types them."""

from importlib.resources import files

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.build import PIECES, PLACES, Component, TortePlan, formula_names, read_torte


def demo(name: str) -> TortePlan:
    text = files("krume").joinpath("data", "demo", "tortes", f"{name}.txt").read_text("utf-8")
    read = read_torte(text)
    assert read.problems == ()
    assert read.notices == ()
    return read.value


def component(words: str) -> Component:
    read = read_torte(f"A torte\n\n{words}")
    assert read.problems == ()
    (only,) = read.value.components
    return only


def test_a_torte_of_three_layers_is_read_to_the_last_word() -> None:
    torte = demo("T1")
    assert (torte.name, torte.slices, torte.keep) == ("Orl hazel torte", (12, 14), "cold")
    layers, syrup, cream, coat = torte.components
    assert (layers.count, layers.piece, layers.what) == (3, "layer", "F1")
    assert (layers.height_mm, layers.trimmed_to_cm) == (14.0, 19.5)
    assert (syrup.what, syrup.g_per_cm2, syrup.place) == ("S1", 0.15, "on each layer")
    assert (cream.what, cream.count, cream.height_mm) == ("C1", 2, 10.0)
    assert cream.place == "between the layers"
    assert (coat.what, coat.height_mm, coat.place) == ("C5", 4.0, "around and on top")


def test_a_roll_says_its_side_and_its_free_edge() -> None:
    sheet, syrup, cream = demo("T2").components
    assert (sheet.piece, sheet.height_mm, sheet.rolled_from) == ("sheet", 12.0, "long")
    assert (syrup.g_per_cm2, syrup.place) == (0.1, "on the sheet")
    assert (cream.height_mm, cream.place, cream.free_edge_cm) == (7.0, "on the sheet", 2.0)


def test_a_torte_in_a_ring_says_what_fills_the_gap() -> None:
    torte = demo("T3")
    assert torte.ring is not None
    assert (torte.ring.diameter_cm, torte.ring.height_cm) == (22.0, 6.0)
    assert torte.slices == (14, 16)
    discs, _, cream, jelly = torte.components
    assert (discs.count, discs.trimmed_to_cm) == (2, 21.0)
    assert (cream.count, cream.height_mm, cream.place) == (2, 14.0, "on each layer")
    assert [c.fills_ring for c in torte.components] == [False, False, True, False]
    assert (jelly.height_mm, jelly.place) == (8.0, "on top")


def test_a_tart_takes_its_shell_and_a_bare_mass() -> None:
    shell, ganache = demo("TART").components
    assert (shell.piece, shell.what, shell.height_mm) == ("shell", "F7", None)
    assert (ganache.mass_g, ganache.place, ganache.height_mm) == (380.0, "in the shell", None)


@pytest.mark.parametrize(
    ("name", "formulas"),
    [
        ("T1", ("F1", "C1", "C5", "S1")),
        ("T2", ("F3", "C2", "S1")),
        ("T3", ("F4", "C2", "C4", "S1")),
        ("TART", ("F7", "C3")),
    ],
)
def test_a_torte_names_its_formulas_pieces_first_and_syrup_last(
    name: str, formulas: tuple[str, ...]
) -> None:
    assert formula_names(demo(name)) == formulas


@pytest.mark.parametrize(
    ("words", "what", "height_mm", "count"),
    [
        ("three discs of Orl hazel sponge, 1.4 cm", "Orl hazel sponge", 14.0, 3),
        ("1 layer F4 12 mm thick", "F4", 12.0, 1),
        ("2x5mm C1 on top", "C1", 5.0, 2),
        ("2 × 1,5 mm C1 on top", "C1", 1.5, 2),
        ("½ in of Dark ganache on top", "Dark ganache", 12.7, 1),
        ("10 mm C1, between layers", "C1", 10.0, 1),
    ],
)
def test_the_same_thing_may_be_said_in_other_words(
    words: str, what: str, height_mm: float, count: int
) -> None:
    found = component(words)
    assert (found.what, found.count) == (what, count)
    assert found.height_mm == pytest.approx(height_mm, rel=1e-12)
    assert found.read == words


def test_a_mass_in_kilograms_becomes_grams() -> None:
    assert component("0.38 kg C3 in the shell").mass_g == pytest.approx(380.0, rel=1e-12)
    assert component("0.15 g / cm² S1 on each layer").g_per_cm2 == 0.15


@pytest.mark.parametrize(
    ("words", "code", "first_option"),
    [
        ("3 layers of F1", "layer-height-missing", "3 layers of F1, 10 mm"),
        ("layers of F1, 14 mm", "count-missing", "2 layers of F1, 14 mm"),
        ("10 mm C1", "place-missing", "10 mm C1 on each layer"),
        ("C1 between the layers", "amount-missing", "4 mm C1 between the layers"),
        ("10 mm C1 on top, sprinkled", "torte-clause-unread", "10 mm C1 on top"),
        ("some nice thing", "torte-line-unread", "Note: some nice thing"),
        ("-3 mm C1 on top", "torte-line-unread", "Note: -3 mm C1 on top"),
        ("0 mm C1 on top", "torte-line-unread", "Note: 0 mm C1 on top"),
        ("9999 layers of F1, 14 mm", "torte-line-unread", "Note: 9999 layers of F1, 14 mm"),
        ("Ring: the big one", "ring-unread", None),
        ("Ring: 22 x 6", "ring-unread", None),
        ("Slices: some", "slices-unread", None),
        ("Slices: 0", "slices-unread", None),
    ],
)
def test_what_is_not_said_or_not_understood_is_asked(
    words: str, code: str, first_option: str | None
) -> None:
    read = read_torte(f"A torte\n\n1 shell of F7\n{words}")
    (problem,) = read.problems
    assert (problem.code, problem.where, problem.read) == (code, "line 4", words)
    assert (problem.options[0].line if problem.options else None) == first_option


@pytest.mark.parametrize(
    "words",
    ["3 layers of F1", "layers of F1, 14 mm", "10 mm C1", "C1 on top", "1 shell of F7, odd", "odd"],
)
def test_every_option_answers_its_question(words: str) -> None:
    (problem,) = read_torte(f"A torte\n\n1 shell of F7\n{words}").problems
    assert problem.options
    for option in problem.options:
        assert read_torte(f"A torte\n\n1 shell of F7\n{option.line}").problems == ()


def test_a_height_that_is_missing_stays_unknown() -> None:
    (layers,) = read_torte("A torte\n\n3 layers of F1").value.components
    assert layers.height_mm is None
    (bare,) = read_torte("A torte\n\nlayers of F1, 14 mm").value.components
    assert bare.count is None


def test_an_empty_text_is_asked_for_one_line() -> None:
    for text, where in (("", "line 1"), ("Only a name", "after line 1")):
        (problem,) = read_torte(text).problems
        assert (problem.code, problem.where) == ("empty", where)
        assert "3 layers of F1, 14 mm" in problem.ask


def test_a_key_nobody_knows_is_kept_and_said_so() -> None:
    read = read_torte("A torte\nMood: festive\nNotes: no candles\n\n1 shell of F7")
    assert read.problems == ()
    assert [(n.code, n.where) for n in read.notices] == [("key-kept", "line 2")]
    assert read.value.keys["mood"] == "festive"
    assert read.value.notes == ("no candles",)


def test_a_text_beyond_the_limits_is_refused_kindly() -> None:
    long_line = read_torte("A torte\n\n1 shell of F7\n" + "x" * 100_000)
    assert [p.code for p in long_line.problems] == ["line-too-long", "torte-line-unread"]
    many = read_torte("A torte\n\n" + "1 shell of F7\n" * 2_000)
    assert [(p.code, p.where) for p in many.problems] == [("too-long", "line 501")]


@given(st.text(max_size=300))
def test_no_text_makes_the_reader_raise_and_no_line_is_lost(text: str) -> None:
    read = read_torte(text)
    kept = [line.text for line in read.value.source_lines]
    assert kept == [line.strip() for line in text.lstrip("\ufeff").splitlines()]


@given(
    count=st.integers(1, 9),
    height=st.decimals(1, 40, places=1),
    name=st.from_regex(r"[A-Z][1-9]", fullmatch=True),
    place=st.sampled_from(PLACES),
)
def test_what_is_written_in_the_grammar_is_read_back(
    count: int, height: object, name: str, place: str
) -> None:
    found = component(f"{count} x {height} mm {name} {place}")
    assert (found.count, found.what, found.place) == (count, name, place)
    assert found.height_mm == float(str(height))


def test_the_pieces_are_words_of_the_glossary() -> None:
    assert PIECES == ("layer", "sheet", "shell", "tier")
