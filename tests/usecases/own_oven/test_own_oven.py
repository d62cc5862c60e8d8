"""The person's own oven through a book: kept, learnt, told, and under every bake."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from krume.bake import Oven
from krume.base import InputError, NotFoundError
from krume.design import read
from krume.store import (
    KeptTrial,
    KeptWeighing,
    add_texts,
    begin_weighing,
    book_at,
    keep_trial,
    place_all,
    start_clock,
    table_text,
)
from krume.usecases import (
    Asked,
    BakeWish,
    OvenResult,
    OvenWish,
    bake_formula,
    export_book,
    import_book,
    known_oven,
    load_demo,
    ovens_of,
    trial_counts,
)
from krume.usecases.book.book import demo_files
from krume.usecases.oven.loads import probe_load, put_in, time_load
from krume.usecases.own_oven.gathered import gathered
from krume.usecases.own_oven.own_oven import oven_named, oven_names, own_dial_c, prior_of

COVERS = (
    "gathered", "keep", "minutes", "result", "shown",
)  # fmt: skip

BAKES = (
    "F1, dial 182, 40 min, core 95, 2027-06-03",
    "F2, dial 182, 38 min, core 95, 2027-06-04",
    "F1, dial 182, 41 min, core 95, 2027-06-05",
)
READINGS = ("dial 160, 2027-06-01: 148, 152, 144", "dial 200, 2027-06-02: 188, 186, 190")


@pytest.fixture
def mine(tmp_path: Path) -> Asked:
    """A demo book that a test may change."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


@pytest.fixture(scope="module")
def taught(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    """A demo book with two readings and three bakes, which tests leave as it is."""
    asked = Asked(book=tmp_path_factory.mktemp("taught") / "book")
    load_demo(asked)
    assert ovens_of(OvenWish(READINGS, BAKES), asked).problems == ()
    return asked


def _told(asked: Asked, *readings: str, bakes: tuple[str, ...] = ()) -> OvenResult:
    found = ovens_of(OvenWish(readings, bakes), asked)
    assert found.problems == ()
    return found.result


def test_the_demo_says_that_its_bakes_are_invented(demo: Asked) -> None:
    known = known_oven(demo)
    assert (known.name, known.offset_c, known.readings) == ("deck", -12.0, 6)
    assert (known.bakes, known.statuses) == (4, ("invented",))
    said = [n.text for n in bake_formula("F1", BakeWish(), demo).notices if n.code == "oven-learnt"]
    assert len(said) == 1
    assert said[0].startswith("From 4 bakes in deck (invented): ")


def test_invented_bakes_stand_back_for_a_real_one(mine: Asked) -> None:
    _told(mine, bakes=BAKES[:1])
    known = known_oven(mine)
    assert (known.bakes, known.statuses) == (1, ("measured",))
    assert {flag.code for flag in known.flagged} == {"bake-invented"}


def test_the_summary_of_the_settings_stands_in_until_there_is_a_reading(mine: Asked) -> None:
    assert known_oven(mine).is_said
    _told(mine, "dial 160: 150, 154, 152")
    known = known_oven(mine).at(152.0)
    assert not known.is_said
    assert known.offset_c == pytest.approx(-8.0, abs=0.01)


def test_three_bakes_narrow_the_minutes_and_the_notice_says_from_how_many(taught: Asked) -> None:
    answer = bake_formula("F1", BakeWish(), taught)
    minutes = answer.result.minutes
    assert minutes is not None
    assert minutes.low <= 40 <= minutes.high
    assert minutes.high - minutes.low <= 10
    assert answer.result.check_from_min == minutes.low
    (said,) = [n.text for n in answer.notices if n.code == "oven-learnt"]
    whole = f"{minutes.low:.0f}–{minutes.high:.0f}"
    assert said.startswith(f"From 3 bakes in deck (2 of this cake): {whole} min; before any bake")


def test_another_cake_is_moved_by_the_heat_but_keeps_the_models_doubt(taught: Asked) -> None:
    own = bake_formula("F1", BakeWish(), taught).result.minutes
    other = bake_formula("F4", BakeWish(), taught).result.minutes
    assert own is not None and other is not None
    assert other.high / other.low > 1.2 * own.high / own.low


def test_an_oven_is_asked_by_name_and_told_with_what_there_is(taught: Asked) -> None:
    assert oven_named("DECK", taught) == "deck"
    assert oven_named(None, taught) == "deck"
    assert oven_named("attic", taught) is None
    assert oven_names(taught) == ("deck",)
    (problem,) = ovens_of(OvenWish(name="attic"), taught).problems
    assert (problem.code, problem.where) == ("oven-unknown", "--oven-name")
    assert [option.line for option in problem.options] == ["deck"]


def test_an_unknown_oven_is_the_usual_one_with_all_its_doubt(taught: Asked) -> None:
    known = known_oven(taught, "attic")
    assert (known.heat, known.ln_heat_sd, known.offset_c) == (1.0, 0.25, None)
    assert known.oven(Oven(170.0)).temp_half_width_c == prior_of().offset_sd_c


def test_two_ovens_are_kept_apart(mine: Asked) -> None:
    ovens_of(OvenWish(("dial 160: 170, 172, 174",), ("F1, dial 160, 28 min, core 95",), name="old"),
             mine)  # fmt: skip
    assert oven_names(mine) == ("deck", "old")
    assert known_oven(mine, "old").bakes == 1
    assert known_oven(mine, "old").heat > known_oven(mine).heat
    bake = bake_formula("F1", BakeWish(oven_name="old"), mine).result
    assert bake.dial is not None and bake.dial.set_c < 170
    assert bake.minutes is not None and bake.minutes.best < 31


def test_what_was_before_a_repair_is_of_the_old_oven(mine: Asked) -> None:
    _told(mine, *READINGS, bakes=BAKES)
    found = ovens_of(OvenWish(until="2027-06-04"), mine).result
    assert found.done == "What was written down until 2027-06-04 is of the old oven now"
    assert known_oven(mine).bakes == 1
    assert known_oven(mine, "deck until 2027-06-04").bakes == 2
    with pytest.raises(NotFoundError, match="No oven is called attic"):
        ovens_of(OvenWish(until="2027-06-04", name="attic"), mine)


def test_what_the_others_speak_against_is_named_at_its_line(mine: Asked) -> None:
    found = _told(mine, bakes=(*BAKES, "F1, dial 182, 95 min, core 95, 2027-06-06"))
    (odd,) = [record for record in found.records if record.text.startswith("F1, dial 182, 95")]
    assert not odd.counts
    assert "longer than what the others say" in odd.reason
    assert found.ovens[0].bakes == 3


def test_one_line_that_asks_keeps_nothing_of_the_others(mine: Asked) -> None:
    found = ovens_of(OvenWish((READINGS[0], "dial 320: 148"), BAKES[:1]), mine)
    (problem,) = found.problems
    assert (problem.where, problem.code) == ("--reading", "dial-unit")
    assert [o.line for o in problem.options] == ["dial 320 C: 148", "dial 320 F: 148"]
    assert table_text(book_at(mine.book), "oven_readings.csv") == ""
    answered = replace(mine, answers=("--reading=dial 320 F: 148",))
    assert ovens_of(OvenWish(("dial 320: 148",)), answered).problems == ()


def test_a_line_said_twice_is_kept_once(mine: Asked) -> None:
    for _ in range(2):
        _told(mine, READINGS[0], bakes=BAKES[:1])
    assert table_text(book_at(mine.book), "bakes.csv").count("\n") == 2
    assert table_text(book_at(mine.book), "oven_readings.csv").count("\n") == 2


def test_a_record_is_taken_out_by_its_number(mine: Asked) -> None:
    _told(mine, READINGS[0], bakes=BAKES[:2])
    found = ovens_of(OvenWish(forget=2), mine).result
    assert found.done == "Taken out: F1, dial 182, 40 min, core 95"
    assert [r.kind for r in found.records][:2] == ["reading", "bake"]
    with pytest.raises(NotFoundError, match="no record 99"):
        ovens_of(OvenWish(forget=99), mine)
    with pytest.raises(InputError, match="is a trial or a load"):
        ovens_of(OvenWish(forget=len(found.records)), mine)


def test_tables_of_a_book_of_plain_files_count_as_well(tmp_path: Path) -> None:
    files = demo_files()
    files["bakes.csv"] = b"formula,dial_c,done_min,core_c,day\nF1,182,40,95,2027-06-03\n"
    files["oven_readings.csv"] = b"dial_c,read_c\n160,150; 154\n160,\n"
    place_all(tmp_path / "book", files)
    known = known_oven(Asked(book=tmp_path / "book"))
    assert (known.bakes, known.readings) == (1, 2)
    assert known.flagged[0].key == "oven_readings.csv line 3"


def test_an_export_carries_the_tables_and_comes_in_equal(taught: Asked, tmp_path: Path) -> None:
    export_book(taught, tmp_path / "out")
    text = (tmp_path / "out" / "bakes.csv").read_text(encoding="utf-8")
    assert text.splitlines()[0].startswith("day,oven,formula,tin,batter_g")
    other = Asked(book=tmp_path / "other")
    import_book(other, tmp_path / "out")
    assert known_oven(other).heat == known_oven(taught).heat


def _baked(asked: Asked, *, clock: str) -> None:
    """A weighing at the bench that ended as a trial, with a clock of some kind beside it."""
    book = book_at(asked.book)
    place, day = "formulas/F1.txt", "2027-06-09"
    begin_weighing(book, KeptWeighing("w-1", place, 1, f"{day}T08:00:00.000+00:00", 1.0, "open"))
    start_clock(book, "c-1", kind=clock, weighing="w-1")
    if clock == "oven":
        time_load("c-1", asked)
    trial = KeptTrial(
        "trial-key", place, "w-1", 0.48, 95.0, None, None, 40.0, None, "good", "", day
    )
    keep_trial(book, trial, seen=None)


def test_a_trial_of_the_bench_counts_where_its_load_is_known(mine: Asked) -> None:
    _baked(mine, clock="oven")
    known = known_oven(mine)
    assert (known.bakes, known.statuses) == (1, ("measured",))
    (own,) = [w.record for w in gathered(mine).bakes if w.place == "bench"]
    assert own.line == "F1, round 20 x 7 cm, dial 182, 40 min, core 95"
    assert trial_counts("trial-key", mine) == "It counts for the oven deck."


def test_a_trial_whose_oven_nobody_knows_does_not_count(mine: Asked) -> None:
    _baked(mine, clock="foam")
    assert [w for w in gathered(mine).bakes if w.place == "bench"] == []
    assert trial_counts("trial-key", mine).startswith("It tells nothing of the oven: ")


def _table(asked: Asked, status: str, count: int) -> None:
    head = "trial,formula,dial_c,bake_min,core_c,status\n"
    rows = "".join(f"x{k},F1,182,{36 + k % 3},95,{status}\n" for k in range(count))
    add_texts(book_at(asked.book), {"trials.csv": (head + rows).encode()}, is_newer=True)


def test_of_many_trials_the_newest_count_and_of_invented_ones_a_few(mine: Asked) -> None:
    _table(mine, "invented", 30)
    assert [w.record.key for w in gathered(mine).bakes] == [f"trial x{k}" for k in range(22, 30)]
    _table(mine, "measured", 50)
    assert next(w.record.key for w in gathered(mine).bakes) == "trial x10"


@pytest.mark.parametrize(("oven", "dial"), [("160 C, no fan", 172.0), ("fan 150 C", None)])
def test_an_oven_that_reads_low_is_dialled_higher_the_way_it_was_measured(
    demo: Asked, oven: str, dial: float | None
) -> None:
    made = read(f"Own\nOven: {oven}\n\n40 g white rice flour\n").value
    assert own_dial_c(made, demo) == (None if dial is None else pytest.approx(dial))


def test_a_load_probed_near_its_end_counts_without_a_word(mine: Asked) -> None:
    put_in("load-one", "F1", "", mine)
    later = datetime.now(UTC) + timedelta(minutes=39)
    probe_load("load-one", 80.0, mine, at=later.isoformat(timespec="milliseconds"))
    assert [w for w in gathered(mine).bakes if w.place == "loads.csv"] == []
    probe_load("load-one", 95.0, mine, at=later.isoformat(timespec="milliseconds"))
    (found,) = [w.record for w in gathered(mine).bakes if w.place == "loads.csv"]
    assert found.line == "F1, round 20 x 7 cm, dial 182, 39 min, core 95"
    known = known_oven(mine)
    assert (known.bakes, known.statuses) == (1, ("measured",))


def test_a_load_beside_others_tells_nothing_of_the_oven_alone(mine: Asked) -> None:
    put_in("load-one", "F1", "", mine, tins=2)
    later = datetime.now(UTC) + timedelta(minutes=44)
    probe_load("load-one", 95.0, mine, at=later.isoformat(timespec="milliseconds"))
    assert [w for w in gathered(mine).bakes if w.place == "loads.csv"] == []


def test_a_trial_of_a_full_oven_tells_nothing_of_the_oven_alone(mine: Asked) -> None:
    _baked(mine, clock="oven")
    (load,) = [w for w in gathered(mine).bakes if w.place == "bench"]
    assert load.record.value is not None
    put_in("c-2", "F4", "", mine, tins=3)
    assert [w for w in gathered(mine).bakes if w.place in ("bench", "loads.csv")] == []


@pytest.mark.parametrize(
    ("minutes", "day", "counted"), [(39, 0, 1), (40, 0, 1), (43, 0, 2), (39, -1, 2)]
)
def test_a_load_that_was_typed_as_well_counts_once(
    mine: Asked, minutes: int, day: int, counted: int
) -> None:
    later = datetime.now(UTC) + timedelta(minutes=39.4)
    put_in("load-one", "F1", "", mine)
    probe_load("load-one", 95.0, mine, at=later.isoformat(timespec="milliseconds"))
    there = replace(mine, on=later.date() + timedelta(days=1))
    typed = f"f1, dial 182, {minutes} min, core 95, {later.date() + timedelta(days=day)}"
    assert ovens_of(OvenWish((), (typed,)), there).problems == ()
    assert known_oven(there).bakes == counted


@pytest.mark.parametrize("is_bake", [True, False])
def test_a_day_that_is_still_to_come_is_asked(mine: Asked, is_bake: bool) -> None:
    typed = "F1, dial 182, 38 min, core 95, 2030-01-01" if is_bake else "dial 160, 2030-01-01: 148"
    wish = OvenWish((), (typed,)) if is_bake else OvenWish((typed,), ())
    (problem,) = ovens_of(wish, mine).problems
    assert problem.code == "oven-day"
    assert problem.ask.startswith("2030-01-01 is still to come: the book's day is 2027-06-10.")
    assert problem.options[0].line == typed.replace("2030-01-01", "2027-06-10")
