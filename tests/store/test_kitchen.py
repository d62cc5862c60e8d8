"""The kitchen of a book: what it says, what it does not, and what cannot be used."""

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from krume.base import StoreError
from krume.store import book_at, kitchen_of


def book(tmp_path: Path, text: str) -> Path:
    (tmp_path / "studio.toml").write_text(text, encoding="utf-8")
    return tmp_path


def test_a_book_says_what_its_kitchen_can_do(tmp_path: Path) -> None:
    text = "[oven]\ntins_per_load = 2\nload_min = 2\n[mixer]\nbowl_l = 4.8\n"
    text += "[fridge]\ncake_places = 8\n[hours]\nopens = 5.5\n"
    found = kitchen_of(book_at(book(tmp_path, text)))
    assert (found.tins_per_load, found.load_min, found.bowl_l) == (2, 2.0, 4.8)
    assert (found.fridge_places, found.day_opens_h) == (8.0, 5.5)
    assert found.recover_min is None and found.zone is None


def test_without_settings_nothing_is_known(tmp_path: Path) -> None:
    assert kitchen_of(book_at(tmp_path)).fridge_places is None


def test_a_named_zone_has_its_summer_time(tmp_path: Path) -> None:
    zone = kitchen_of(book_at(book(tmp_path, 'zone = "Europe/Berlin"\n'))).zone
    assert zone is not None
    summer, winter = (datetime(2027, month, 10, tzinfo=zone) for month in (6, 12))
    assert (summer.utcoffset(), winter.utcoffset()) == (timedelta(hours=2), timedelta(hours=1))


def test_a_fixed_offset_stays(tmp_path: Path) -> None:
    zone = kitchen_of(book_at(book(tmp_path, 'utc_offset = "+02:00"\n'))).zone
    assert datetime(2027, 12, 10, tzinfo=zone).utcoffset() == timedelta(hours=2)


@pytest.mark.parametrize(
    ("text", "word"),
    [('zone = "Nowhere/Land"', "Europe/Berlin"), ("[fridge]\ncake_places = -1", "above 0")],
)
def test_a_setting_that_cannot_be_used_is_named(tmp_path: Path, text: str, word: str) -> None:
    with pytest.raises(StoreError) as error:
        kitchen_of(book_at(book(tmp_path, f"{text}\n")))
    assert word in error.value.message
