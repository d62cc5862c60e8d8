"""Trials: what came out of a bake, and what of its weighing was not as planned."""

from dataclasses import replace
from pathlib import Path

import pytest

from krume.base import ConflictError, InputError, NotFoundError, StoreError
from krume.store import KeptStep
from krume.usecases import Asked, check_formula, export_book, load_demo
from krume.usecases.bench.bench import bench_of, say_at_bench, weighing_of
from krume.usecases.bench.cup import keep_cup
from krume.usecases.bench.result import BenchSaid
from krume.usecases.bench.trials import (
    differences_of,
    drafted,
    edit_trial,
    end_as_trial,
    trial_numbers,
    trial_row,
    trial_rows,
    trial_sheet,
)

TYPED = {"centre": "49", "core": "95", "word": "springy"}


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    """A demo book with a weighing of F2 that slipped and was left."""
    found = Asked(book=tmp_path / "book")
    load_demo(found)
    say_at_bench(
        "F2", "k",
        (BenchSaid("1", "tare", 0), BenchSaid("2", "in", 1), BenchSaid("3", "got", 2, 66.0),
         BenchSaid("4", "choose", way="leave")),
        found,
    )  # fmt: skip
    return found


def test_a_weighing_ends_as_a_trial_and_sent_twice_as_one(asked: Asked) -> None:
    kept = end_as_trial("F2", "k", asked, key="t", typed=TYPED)
    assert end_as_trial("F2", "k", asked, key="t", typed=TYPED) == kept
    assert end_as_trial("F2", "k", asked, key="u", typed=TYPED) == kept
    assert (kept.centre_mm, kept.core_c, kept.sg, kept.at) == (49, 95, None, "2027-06-10")
    assert bench_of("F2", asked).key == ""
    assert weighing_of("k", asked).state == "done"


def test_a_trial_says_what_was_not_as_planned(asked: Asked) -> None:
    end_as_trial("F2", "k", asked, key="t", typed=TYPED)
    row = trial_row("t", asked)
    assert row.has_plan
    assert row.differs == (
        "Leave it, go on as planned",
        "11 lines not weighed",
        "teff flour: 26 g instead of 20",
    )
    assert [each.differs for each in trial_rows(asked)] == [row.differs]
    assert trial_rows(asked, formula="F1") == ()


def test_what_goes_to_a_jar_is_no_difference(asked: Asked) -> None:
    said = (BenchSaid("5", "undo", of="4"), BenchSaid("6", "choose", way="jar"))
    bench = say_at_bench("F2", "k", said, asked)
    number = 7
    while bench.found.now is not None:
        at = bench.found.now
        kind = "tare" if bench.plan.rows[at].kind == "tare" else "in"
        bench = say_at_bench("F2", "k", (BenchSaid(str(number), kind, at),), asked)
        number += 1
    assert differences_of(bench.steps) == ("Fill the blend up, keep 31.5 g in a jar",)


def test_nothing_weighed_is_never_said_to_be_as_planned() -> None:
    assert differences_of(()) == ("nothing was weighed at the bench",)
    assert differences_of((KeptStep("1", "tare", 0),)) == ("nothing was weighed at the bench",)


def test_a_few_lines_that_were_not_weighed_are_named() -> None:
    steps = (KeptStep("1", "not-weighed", 3, 2, 30.0, said='{"take": "potato starch"}'),)
    assert differences_of(steps) == ("potato starch: not weighed",)


def test_the_cup_is_there_already_when_the_bake_is_written_down(asked: Asked) -> None:
    keep_cup("F2", "k", asked, client_id="c", empty_g=100, water_g=340, batter_g=215.2)
    assert drafted("F2", asked) == {"sg": "0.48", "minutes": ""}


def test_an_edit_names_the_version_it_saw(asked: Asked) -> None:
    end_as_trial("F2", "k", asked, key="t", typed=TYPED)
    second = edit_trial("t", asked, typed={**TYPED, "edge": "44"}, seen=1)
    assert (second.revision, second.edge_mm) == (2, 44)
    with pytest.raises(ConflictError):
        edit_trial("t", asked, typed=TYPED, seen=1)
    for key in ("x", ""):
        with pytest.raises(NotFoundError):
            edit_trial(key, asked, typed=TYPED, seen=1)
        with pytest.raises(NotFoundError):
            trial_row(key, asked)


@pytest.mark.parametrize(
    ("field", "text"),
    [("core", "950"), ("core", "5"), ("centre", "-3"), ("sg", "4"), ("minutes", "long"),
     ("baked", "nan"), ("edge", "0")],
)  # fmt: skip
def test_a_number_that_cannot_be_is_asked_about_and_nothing_is_kept(
    asked: Asked, field: str, text: str
) -> None:
    assert list(trial_numbers({field: text})[1]) == [field]
    with pytest.raises(InputError):
        end_as_trial("F2", "k", asked, key="t", typed={field: text})
    assert trial_rows(asked) == ()


def test_an_empty_box_is_not_known_and_a_comma_is_a_point() -> None:
    numbers, wrong = trial_numbers({"core": "95,5", "centre": " "})
    assert (numbers["core"], numbers["centre"], wrong) == (95.5, None, {})


def test_the_books_own_table_is_shown_too(asked: Asked) -> None:
    assert len(trial_sheet(asked, formula="F2")) >= 1
    assert trial_sheet(asked, formula="F1") == ()


def test_written_out_as_plain_texts_they_say_the_same(asked: Asked, tmp_path: Path) -> None:
    end_as_trial("F2", "k", asked, key="t", typed={**TYPED, "word": "good"})
    export_book(asked, tmp_path / "plain")
    plain = Asked(book=tmp_path / "plain")
    assert trial_rows(plain) == trial_rows(asked)
    assert trial_row("t", plain) == replace(trial_row("t", asked), has_plan=False)
    assert trial_sheet(plain) == trial_sheet(asked)
    with pytest.raises(StoreError, match="no database yet"):
        edit_trial("t", plain, typed=TYPED, seen=1)
    own = [band.own for band in check_formula("F1", asked).result.bands]
    assert own == [band.own for band in check_formula("F1", plain).result.bands]
