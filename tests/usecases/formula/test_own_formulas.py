"""Own formulas beside the starting bands: who counts, who is left out, and what is said of it."""

from pathlib import Path

import pytest

from krume.store import Book, KeptTrial, add_texts, keep_trial
from krume.usecases import Asked, CheckOwn, check_formula

SPONGE = """\
{name}
Family: separated
Eggs: EU sizes
{more}
50 g white rice flour
50 g potato starch
{eggs} eggs, medium, separated
{sugar} g caster sugar
"""


def sponge(name: str, *, eggs: int = 5, sugar: int = 130, more: str = "") -> bytes:
    return SPONGE.format(name=name, eggs=eggs, sugar=sugar, more=more).encode()


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    """A book with two sponges of one's own, five and six eggs to 100 g flour."""
    book = tmp_path / "book"
    files = {"formulas/A.txt": sponge("One"), "formulas/B.txt": sponge("Two", eggs=6, sugar=150)}
    add_texts(Book(book), files)
    return Asked(book=book)


def own(name: str, asked: Asked, key: str = "egg") -> CheckOwn:
    return next(band.own for band in check_formula(name, asked).result.bands if band.key == key)


def outside(tmp_path: Path, text: bytes) -> str:
    path = tmp_path / "new.txt"
    path.write_bytes(text)
    return str(path)


def add(asked: Asked, name: str, text: bytes) -> None:
    assert asked.book is not None
    add_texts(Book(asked.book), {name: text})


def test_a_new_formula_stands_beside_the_lowest_and_highest_of_ones_own(
    asked: Asked, tmp_path: Path
) -> None:
    found = own(outside(tmp_path, sponge("New", eggs=4)), asked)
    assert (found.n, found.names) == (2, ("A", "B"))
    assert found.low == pytest.approx(255)
    assert found.high == pytest.approx(306)
    assert found.coverage_pct == pytest.approx(100 / 3)
    assert found.content_pct == pytest.approx(5.13, abs=0.01)
    assert (found.tried, found.status) == (0, "derived")
    assert found.text == "your own 2: 255–306 %, starting band 200–340 %"


def test_the_starting_band_is_never_replaced(asked: Asked, tmp_path: Path) -> None:
    name = outside(tmp_path, sponge("New", eggs=3, sugar=115))
    beside = check_formula(name, asked).result
    alone = check_formula(name, Asked(book=tmp_path / "nowhere")).result
    assert beside.findings == alone.findings
    assert [(b.low, b.high) for b in beside.bands] == [(b.low, b.high) for b in alone.bands]
    assert {finding.code for finding in beside.findings} >= {"egg-low"}


def test_the_formula_under_check_is_left_out_of_its_own_range(asked: Asked) -> None:
    found = own("A", asked)
    assert (found.n, found.low, found.high, found.status) == (1, None, None, None)
    assert found.text == "too few: 1 of your own, a range needs 2"
    notices = {n.code: n.text for n in check_formula("A", asked).notices}
    assert notices["own-too-few"].startswith("Too few for a range of your own: B is")


def test_a_copy_of_a_formula_of_the_book_is_that_formula(asked: Asked, tmp_path: Path) -> None:
    copy = sponge("Another name over the same lines")
    assert own(outside(tmp_path, copy), asked).names == ("B",)


def test_a_variation_is_no_second_opinion(asked: Asked, tmp_path: Path) -> None:
    add(asked, "formulas/A2.txt", sponge("One again", eggs=7, sugar=170, more="Parent: A"))
    found = own(outside(tmp_path, sponge("New", eggs=4)), asked)
    assert found.names == ("A", "B")
    assert found.high == pytest.approx(306)
    assert own("A2", asked).names == ("B",)
    assert own("B", asked).n == 1


def test_a_parent_may_be_named_by_its_first_line(asked: Asked) -> None:
    add(asked, "formulas/A2.txt", sponge("One again", eggs=7, sugar=170, more="Parent: one"))
    assert own("B", asked).names == ("A",)


def test_a_variation_outside_the_book_leaves_its_kin_out(asked: Asked, tmp_path: Path) -> None:
    child = sponge("Child", eggs=4, more="Parent: B")
    assert own(outside(tmp_path, child), asked).names == ("A",)


def test_a_formula_with_an_open_question_does_not_count(asked: Asked, tmp_path: Path) -> None:
    add(asked, "formulas/C.txt", sponge("Open").replace(b"Eggs: EU sizes\n", b""))
    answer = check_formula(outside(tmp_path, sponge("New", eggs=4)), asked)
    assert answer.exit_code == 0
    assert all(band.own.names == ("A", "B") for band in answer.result.bands)
    assert "own-open" in {notice.code for notice in answer.notices}


def test_good_trials_are_counted_and_measured_only_when_all_are(
    asked: Asked, tmp_path: Path
) -> None:
    new = outside(tmp_path, sponge("New", eggs=4))
    add(asked, "trials.csv", b"trial,formula,word,status\n1,A,good,measured\n2,B,sunk,measured\n")
    assert (own(new, asked).tried, own(new, asked).status) == (1, "derived")
    assert asked.book is not None
    again = Asked(book=tmp_path / "second")
    add(again, "formulas/A.txt", sponge("One"))
    add(again, "formulas/B.txt", sponge("Two", eggs=6, sugar=150))
    add(again, "trials.csv", b'trial,formula,word\n1,a,"good, dry edge"\n2,B,Very good\n')
    assert (own(new, again).tried, own(new, again).status) == (2, "measured")


def test_a_good_trial_of_the_bench_counts_as_measured(asked: Asked, tmp_path: Path) -> None:
    new = outside(tmp_path, sponge("New", eggs=4))
    book = Book(asked.book or Path())
    for number, (name, word) in enumerate((("A", "good"), ("B", "sunk"), ("B", "good"))):
        assert own(new, asked).tried == (0, 1, 1)[number]
        place = f"formulas/{name}.txt"
        trial = KeptTrial(
            f"t{number}", place, None, None, None, None, None, None, None, word, "", "2027-06-10"
        )
        keep_trial(book, trial, seen=None)
    assert (own(new, asked).tried, own(new, asked).status) == (2, "measured")


def test_invented_trials_are_said_to_be_invented(demo: Asked, tmp_path: Path) -> None:
    answer = check_formula(outside(tmp_path, sponge("New")), demo)
    found = next(band.own for band in answer.result.bands)
    assert (found.names, found.tried, found.status) == (("F1", "F2"), 1, "derived")
    notices = {notice.code: notice.text for notice in answer.notices}
    assert notices["own-trials-invented"].startswith("The good trials of F2 are invented")


def test_without_a_book_there_is_none_of_ones_own(tmp_path: Path) -> None:
    answer = check_formula(outside(tmp_path, sponge("New")), Asked(book=tmp_path / "nowhere"))
    assert {band.own.n for band in answer.result.bands} == {0}
    assert answer.result.bands[0].own.text.startswith("too few: none")
    assert not [notice for notice in answer.notices if notice.code.startswith("own")]
