"""Tins measured against nominal, the oven with its offset, and what is written of it."""

from pathlib import Path

import pytest

from krume.base import ConflictError, InputError, StoreError
from krume.store import book_at, book_bytes, keep_text
from krume.usecases import Asked, add_row, load_demo, oven_now, ovens_now, save_oven
from krume.usecases.oven.ovens_page import OvenNow, oven_settings, tin_words
from krume.usecases.sold.papers import papers_of


@pytest.fixture
def kept(tmp_path: Path) -> Asked:
    """A demo book with a database, which the test may change."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def _tin(asked: Asked, text: str) -> None:
    add_row("tins.csv", {"tin": text, "count": "1"}, asked, head=("tin", "count"))


def test_water_in_grams_gives_the_volume_and_its_difference(kept: Asked) -> None:
    _tin(kept, tin_words("round 20 x 7 cm", "2 186 g"))
    first = ovens_now(kept).tins[0]
    assert first.row.get("tin") == "round 20 x 7 cm, 2186 g water"
    assert first.water_ml is not None
    assert first.nominal_ml is not None
    assert first.water_ml == pytest.approx(2189.9, abs=0.05)
    assert first.nominal_ml == pytest.approx(2199.1, abs=0.05)
    assert first.difference_ml is not None
    assert first.difference_ml == pytest.approx(-9.2, abs=0.05)
    assert first.difference_pct is not None
    assert first.difference_pct == pytest.approx(-0.42, abs=0.005)


def test_the_largest_difference_stands_first_and_the_unmeasured_last(kept: Asked) -> None:
    for water in ("2186", "2050", "2300"):
        _tin(kept, tin_words("round 20 x 7 cm", water))
    tins = ovens_now(kept).tins
    assert [tin.row.get("tin")[17:21] for tin in tins[:3]] == ["2050", "2300", "2186"]
    assert all(tin.difference_ml is None for tin in tins[3:])


def test_without_a_size_water_has_nothing_to_differ_from(kept: Asked) -> None:
    _tin(kept, "round 20 cm, 2186 g water")
    first = ovens_now(kept).tins[-1]
    assert first.water_ml is not None
    assert first.nominal_ml is None
    assert first.difference_ml is None
    assert first.difference_pct is None


def test_a_tin_that_cannot_be_read_is_shown_with_its_question(kept: Asked) -> None:
    _tin(kept, "8in pan")
    last = ovens_now(kept).tins[-1]
    assert last.tin is None
    assert last.questions[0].options[0].line == "round 8 in"


def test_water_weighed_again_replaces_the_water_before() -> None:
    assert tin_words("round 20 x 7 cm, 2100 g water", "2186") == "round 20 x 7 cm, 2186 g water"
    assert tin_words("round 20 x 7 cm, 2100 g water", " ") == "round 20 x 7 cm, 2100 g water"


@pytest.mark.parametrize("water", ["much", "-5", "0", "nan", "1e9"])
def test_what_is_no_mass_of_water_is_asked_beside_its_field(water: str) -> None:
    with pytest.raises(InputError) as caught:
        tin_words("round 20 x 7 cm", water)
    assert caught.value.field == "water_g"


def test_the_demo_oven_reads_low_and_its_dial_goes_up(kept: Asked) -> None:
    now = ovens_now(kept)
    assert now.oven.words == "reads low: the true temperature is 12 K below the dial"
    assert now.dial_c == 182
    assert ovens_now(kept, want_c=157.0).dial_c == 169
    assert now.oven.measured_offset_c == now.oven.offset_c
    assert now.oven.contradiction == ""


@pytest.mark.parametrize(
    ("offset", "words"),
    [(None, "offset not known"), (0.0, "reads true"), (7.0, "reads high"), (-2.5, "2.5 K below")],
)
def test_the_way_an_oven_is_off_is_said_in_words(offset: float | None, words: str) -> None:
    settings: dict[str, str | float | bool] = {} if offset is None else {"offset_c": offset}
    assert words in OvenNow(settings, None).words


def test_an_offset_against_its_own_readings_is_asked() -> None:
    oven = OvenNow({"offset_c": 12, "dial_c": 160, "mean_c": 148}, None)
    assert "Which holds?" in oven.contradiction


def test_nothing_is_known_of_an_oven_in_an_empty_book(bare: Asked) -> None:
    now = ovens_now(bare)
    assert now.tins == ()
    assert now.dial_c is None
    assert now.oven.settings == {}
    assert not now.has_book


def test_saving_the_oven_leaves_all_else_as_it_was(kept: Asked) -> None:
    book = book_at(kept.book)
    before = book_bytes(book, "studio.toml")
    settings, wrong = oven_settings({"name": "deck", "dial_c": "160", "mean_c": "150,5"})
    assert wrong == {}
    save_oven({"offset_c": settings["offset_c"], "mean_c": settings["mean_c"]}, kept, seen=1)
    after = book_bytes(book, "studio.toml")
    assert before is not None
    wanted = before.replace(b"mean_c = 148", b"mean_c = 150.5")
    assert after == wanted.replace(b"offset_c = -12", b"offset_c = -9.5")
    assert ovens_now(kept).dial_c == 179.5
    assert papers_of(kept).today.isoformat() == "2027-06-10"


def test_two_editors_of_the_oven_do_not_overwrite_one_another(kept: Asked) -> None:
    save_oven({"spread_c": 3.0}, kept, seen=1)
    save_oven({"spread_c": 3.0}, kept, seen=1)
    with pytest.raises(ConflictError):
        save_oven({"spread_c": 5.0}, kept, seen=1)
    assert oven_now(kept).number("spread_c") == 3
    assert oven_now(kept).seen == 2


def test_a_setting_the_commands_could_not_read_is_refused(kept: Asked) -> None:
    with pytest.raises(StoreError):
        save_oven({"tins_per_load": "many", "offset_c": "low"}, kept, seen=1)
    assert oven_now(kept).seen == 1


def test_damaged_settings_are_said_and_nothing_is_taken_by_half(kept: Asked) -> None:
    keep_text(book_at(kept.book), "studio.toml", b"[oven\noffset_c = -12\n", seen=1)
    oven = oven_now(kept)
    assert oven.settings == {}
    assert "cannot be read" in oven.refusal


@pytest.mark.parametrize(
    ("typed", "field"),
    [
        ({"dial_c": "hot"}, "dial_c"),
        ({"mean_c": "-3"}, "mean_c"),
        ({"readings": "2.5"}, "readings"),
        ({"spread_c": "-1"}, "spread_c"),
        ({"offset_c": "900"}, "offset_c"),
        ({"tins_per_load": "0"}, "tins_per_load"),
    ],
)
def test_what_is_no_such_number_is_said_by_field(typed: dict[str, str], field: str) -> None:
    found, wrong = oven_settings(typed)
    assert list(wrong) == [field]
    assert found[field] is None


def test_an_offset_is_worked_out_from_dial_and_mean_and_a_minus_sign_is_read() -> None:
    assert oven_settings({"dial_c": "160", "mean_c": "148", "offset_c": "3"})[0]["offset_c"] == -12
    assert oven_settings({"offset_c": "−8"})[0]["offset_c"] == -8
    assert oven_settings({"bakes_with_fan": "no"})[0]["bakes_with_fan"] is False
    assert oven_settings({})[0]["fan"] is None
