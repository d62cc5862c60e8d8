"""Weighing at the counter: rows, steps, slips, ways chosen and taken back."""

import json
from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import count
from pathlib import Path

import pytest

from krume.base import ConflictError, InputError, NotFoundError
from krume.design import read
from krume.store import KeptStep, book_at, steps_of
from krume.usecases import Asked, load_demo, save_text, text_now
from krume.usecases.bench.bench import (
    bench_of,
    ground_at_bench,
    say_at_bench,
    set_aside,
    weighing_of,
)
from krume.usecases.bench.plan import plan_of, rows_of
from krume.usecases.bench.result import Bench, BenchSaid
from krume.usecases.bench.state import standing, targets_in

COVERS = ("plan", "state", "ways", "result", "ground")


@dataclass
class Hand:
    """Somebody at the bench."""

    name: str
    asked: Asked
    numbers: "count[int]"

    def says(self, kind: str, position: int | None = None, **more: object) -> Bench:
        said = BenchSaid(f"s{next(self.numbers)}", kind, position, **more)  # type: ignore[arg-type]
        return say_at_bench(self.name, "k", (said,), self.asked)

    def weighs_on(self, bench: Bench) -> Bench:
        """Everything as planned, to the end."""
        while bench.found.now is not None:
            at = bench.found.now
            kind = "tare" if bench.plan.rows[at].kind == "tare" else "in"
            bench = self.says(kind, at)
        return bench


@pytest.fixture
def hand(tmp_path: Path) -> Callable[[str], Hand]:
    """A hand on a demo book of its own."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return lambda name: Hand(name, asked, count())


def test_rows_come_in_the_order_of_work_with_what_the_display_shows(
    hand: Callable[[str], Hand],
) -> None:
    bench = hand("F2").weighs_on(bench_of("F2", hand("F2").asked))
    assert sum(s.held_g for s in bench.found.spots) == pytest.approx(519.0)
    steps = [s for s in bench.steps if s.kind == "in"]
    assert [s.display_g for s in steps[:6]] == [40.0, 60.0, 90.0, 99.0, 105.0, 20.0]


def test_a_teff_slip_has_three_ways_and_the_jar_leads_back_to_the_rice(
    hand: Callable[[str], Hand],
) -> None:
    her = hand("F2")
    her.says("tare", 0)
    her.says("in", 1)
    bench = her.says("got", 2, display_g=66.0)
    slip = bench.slip
    assert slip is not None
    assert (slip.name, slip.over_g, slip.in_points) == ("teff flour", 6.0, True)
    assert [(w.kind, round(w.shift_pct, 2)) for w in slip.ways] == [
        ("jar", 0.0), ("leave", 4.38), ("hold", 5.71),
    ]  # fmt: skip
    assert slip.ways[0].adds == (
        ("white rice flour", 12.0), ("potato starch", 39.0), ("sweet rice flour", 11.7),
        ("maize starch", 7.8),
    )  # fmt: skip
    assert "29.7 %" in slip.ways[2].outside
    bench = her.says("choose", way="jar")
    found = bench.found
    assert bench.slip is None
    assert (found.now, found.display_g(1), found.add_g(1)) == (1, 78.0, 12.0)
    assert found.chosen is not None
    assert json.loads(found.chosen.said)["say"] == "Card corrected. Put 31.5 g in a jar."
    back = her.says("undo", of=found.chosen.client_id)
    assert back.slip == slip


def test_taking_the_slip_back_takes_its_way_back_too(hand: Callable[[str], Hand]) -> None:
    her = hand("F2")
    her.says("tare", 0)
    her.says("in", 1)
    wrong = her.says("got", 2, display_g=66.0).found.last
    assert wrong is not None
    her.says("choose", way="leave")
    bench = her.says("undo", of=wrong.client_id)
    assert (bench.found.now, bench.found.display_g(2)) == (2, 60.0)
    assert bench.found.spots[2].got_g is None


def test_a_larger_cake_puts_the_dry_bowl_on_the_scale_again(hand: Callable[[str], Hand]) -> None:
    her = hand("F2")
    bench = bench_of("F2", her.asked)
    while bench.found.now != 11:
        at = bench.found.now
        assert at is not None
        bench = her.says("tare" if bench.plan.rows[at].kind == "tare" else "in", at)
    bench = her.says("got", 11, display_g=135.0)
    assert bench.slip is not None
    assert "scale" in [w.kind for w in bench.slip.ways]
    bench = her.says("choose", way="scale")
    found = bench.found
    assert found.now == 0
    bench = her.says("tare", 0)
    assert (bench.found.now, bench.found.display_g(1), bench.found.add_g(1)) == (1, 8.0, 8.0)
    bench = her.weighs_on(bench)
    assert bench.found.spots[1].got_g == pytest.approx(48.0)
    assert bench.found.spots[19].got_g == pytest.approx(90.0)


def test_too_little_goes_on_and_no_more_of_it_is_a_slip(hand: Callable[[str], Hand]) -> None:
    her = hand("F2")
    her.says("tare", 0)
    bench = her.says("got", 1, display_g=30.0)
    assert (bench.found.now, bench.found.add_g(1), bench.found.display_g(1)) == (1, 10.0, 40.0)
    bench = her.says("no-more", 1)
    assert bench.slip is not None
    assert bench.slip.short_g == 10.0
    bench = her.says("choose", way=bench.slip.ways[0].kind)
    assert bench.slip is None


@pytest.mark.parametrize(("grams", "is_slip"), [(90.0, False), (80.0, False), (99.0, True)])
def test_eggs_decide_their_own_grams_within_reason(
    hand: Callable[[str], Hand], grams: float, *, is_slip: bool
) -> None:
    her = hand("F2")
    bench = her.says("got", 9, display_g=grams)
    assert (bench.slip is not None) is is_slip
    assert bench.found.spots[9].is_done


def test_what_the_scale_cannot_tell_apart_is_no_slip(hand: Callable[[str], Hand]) -> None:
    her = hand("F2")
    her.says("tare", 0)
    assert her.says("got", 1, display_g=40.05).slip is None


def test_a_step_said_twice_is_there_once_and_both_devices_see_it(
    hand: Callable[[str], Hand],
) -> None:
    her = hand("F2")
    said = (BenchSaid("a", "tare", 0), BenchSaid("b", "in", 1))
    first = say_at_bench("F2", "one", said, her.asked)
    second = say_at_bench("F2", "other", (*said, BenchSaid("c", "in", 2)), her.asked)
    assert first.key == second.key == "one"
    assert [s.client_id for s in second.steps] == ["a", "b", "c"]
    assert bench_of("F2", her.asked).steps == second.steps


def test_the_version_that_was_begun_is_weighed_to_its_end(hand: Callable[[str], Hand]) -> None:
    her = hand("F2")
    her.says("tare", 0)
    now = text_now("formula", "F2", her.asked)
    more = now.text.replace("40 g white rice", "44 g white rice")
    save_text("formula", "F2", more, her.asked, seen=now.revision)
    bench = her.says("in", 1)
    assert bench.found.spots[1].got_g == 40.0
    set_aside("F2", her.asked)
    assert bench_of("F2", her.asked).found.display_g(1) == 44.0
    assert weighing_of("k", her.asked).plan.revision == now.revision


def test_rows_of_a_page_that_was_kept_are_weighed_as_its_version_not_as_the_next(
    hand: Callable[[str], Hand],
) -> None:
    her = hand("F2")
    now = text_now("formula", "F2", her.asked)
    more = now.text.replace("40 g white rice", "44 g white rice")
    save_text("formula", "F2", more, her.asked, seen=now.revision)
    bench = her.says("in", 1, version=now.revision)
    assert bench.plan.revision == now.revision
    assert bench.found.spots[1].got_g == 40.0


def test_rows_of_another_version_than_the_one_that_is_weighed_are_refused(
    hand: Callable[[str], Hand],
) -> None:
    her = hand("F2")
    now = text_now("formula", "F2", her.asked)
    more = now.text.replace("40 g white rice flour", "44 g millet flour")
    save_text("formula", "F2", more, her.asked, seen=now.revision)
    her.says("tare", 0)
    with pytest.raises(ConflictError, match="look at the rows again"):
        her.says("in", 1, version=now.revision)
    assert [s.kind for s in bench_of("F2", her.asked).steps] == ["tare"]


def test_what_cannot_be_is_refused_and_nothing_is_kept(hand: Callable[[str], Hand]) -> None:
    her = hand("F2")
    her.says("tare", 0)
    her.says("in", 1)
    for wrong in (
        BenchSaid("x", "got", 2, 30.0),
        BenchSaid("x", "got", 2, float("nan")),
        BenchSaid("x", "got", 2),
        BenchSaid("x", "in", 99),
        BenchSaid("x", "dance", 2),
        BenchSaid("", "in", 2),
    ):
        with pytest.raises(InputError):
            say_at_bench("F2", "k", (wrong,), her.asked)
    assert len(steps_of(book_at(her.asked.book), "k")) == 2
    with pytest.raises(NotFoundError):
        bench_of("nothing", her.asked)
    with pytest.raises(NotFoundError):
        weighing_of("nothing", her.asked)


def test_a_choice_of_nothing_wrong_is_no_step(hand: Callable[[str], Hand]) -> None:
    her = hand("F2")
    her.says("tare", 0)
    assert her.says("choose", way="jar").steps == bench_of("F2", her.asked).steps
    assert len(bench_of("F2", her.asked).steps) == 1


def test_a_folder_of_plain_texts_says_what_to_do(tmp_path: Path) -> None:
    (tmp_path / "formulas").mkdir()
    (tmp_path / "formulas" / "A.txt").write_text("A\n\n100 g white rice flour\n")
    with pytest.raises(InputError, match="krume book import"):
        plan_of("A", Asked(book=tmp_path))


def test_a_line_of_unknown_grams_is_weighed_and_stays_unknown_until_then() -> None:
    formula = read("A\n\n100 g white rice flour\na splash of lemon juice\n").value
    rows = rows_of(formula, 0.1)
    unknown = next(r for r in rows if r.kind == "unknown")
    assert unknown.add_g is None
    found = standing(rows, (KeptStep("1", "not-weighed", unknown.position),))
    assert found.spots[unknown.position].got_g is None
    assert found.spots[unknown.position].is_done


def test_a_step_of_a_row_that_is_gone_changes_nothing() -> None:
    rows = rows_of(read("A\n\n100 g white rice flour\n20 g teff flour\n").value, 0.1)
    step = KeptStep("1", "in", 77, got_g=5.0)
    assert standing(rows, (step,)).now == 0
    assert targets_in(replace(step, said="")) == {}


def test_the_ground_of_the_page_holds_every_line_and_bowl(hand: Callable[[str], Hand]) -> None:
    ground = ground_at_bench(bench_of("F2", hand("F2").asked))
    lines, bowls = ground["lines"], ground["bowls"]
    assert isinstance(lines, list)
    assert isinstance(bowls, list)
    assert len(lines) == 11
    assert [b["key"] for b in bowls if isinstance(b, dict)] == [
        "dry", "fat", "yolk", "white", "sugar",
    ]  # fmt: skip
