"""The studio's settings are read strictly: what cannot be used is named."""

from datetime import datetime, timedelta, timezone
from decimal import Decimal
from pathlib import Path

import pytest

from krume.base import StoreError
from krume.store import Book, Scale, Studio, StudioCost, read_studio, studio_of

PATH = Path("studio.toml")
WHOLE = b"""
name = "Somewhere"
today = 2027-06-10T08:00:00
utc_offset = "+02:00"
market = "eu"
sheet_note = "balanced on paper"

[eggs]
region = "eu"
buys = "EU M"

[[scales]]
step_g = 1
limit_g = 5000

[[scales]]
step_g = 0.1
"""


@pytest.mark.parametrize(
    ("text", "found"),
    [
        (b'market = "au-nz"', ("au-nz", None, None)),
        (b'[label]\nlist = "parts"\nadditives = "numbers"', (None, "parts", "numbers")),
        (b"", (None, None, None)),
    ],
)
def test_how_a_label_is_set_is_read(text: bytes, found: tuple[str | None, ...]) -> None:
    studio = read_studio(text, PATH)
    assert (studio.market, studio.label_list, studio.label_additives) == found


@pytest.mark.parametrize("text", [b'[label]\nlist = "two"', b'market = "moon"'])
def test_a_setting_of_a_label_that_is_none_is_named(text: bytes) -> None:
    with pytest.raises(StoreError, match="want"):
        read_studio(text, PATH)


def test_everything_said_is_read() -> None:
    assert read_studio(WHOLE, PATH) == Studio(
        name="Somewhere",
        today=datetime(2027, 6, 10, 8, tzinfo=timezone(timedelta(hours=2))),
        market="eu",
        eggs_region="eu",
        egg_size="EU M",
        scales=(Scale(1, 5000), Scale(0.1)),
        sheet_note="balanced on paper",
    )


def test_planned_values_of_the_cost_are_exact_decimals() -> None:
    text = b'status = "invented"\n[cost]\nown_work_h = 2.2\nboxes = 0\ncurrency = "\xe2\x82\xac"'
    assert read_studio(text, PATH).cost == StudioCost(
        own_work_h=Decimal("2.2"), boxes=Decimal("0.0"), currency="EUR", status="invented"
    )
    declared = read_studio(text + b'\nstatus = "declared"', PATH).cost
    assert declared.status == "declared"
    assert read_studio(b"[cost]\nlabels = 1", PATH).cost.status == "assumed"


def test_what_is_not_said_stays_unknown() -> None:
    assert read_studio(b"", PATH) == Studio()


def test_a_book_without_settings_has_none(tmp_path: Path) -> None:
    assert studio_of(Book(tmp_path)) == Studio()
    (tmp_path / "studio.toml").write_bytes(WHOLE)
    assert studio_of(Book(tmp_path)).name == "Somewhere"


def test_a_clock_without_an_offset_is_taken_as_utc_and_its_own_offset_counts() -> None:
    plain = read_studio(b"today = 2027-06-10T08:00:00", PATH).today
    own = read_studio(b"today = 2027-06-10T08:00:00-05:30", PATH).today
    assert plain is not None
    assert plain.utcoffset() == timedelta(0)
    assert own is not None
    assert own.utcoffset() == -timedelta(hours=5, minutes=30)


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"name = \n", r"studio\.toml: the text reads .*line 1"),
        (b"\xff", "bytes that are no UTF-8"),
        (b"name = 7", "name reads 7; want a text in quotes"),
        (b'name = "  "', "name reads '  '; want a text"),
        (b'market = "mars"', "market reads 'mars'; want eu or us"),
        (b'eggs = "EU"', r"want a table \[eggs\]"),
        (b'[eggs]\nregion = "moon"', r"eggs\.region reads 'moon'"),
        (b"scales = 1", r"want tables \[\[scales\]\]"),
        (b"[[scales]]\nstep_g = 0", r"scales\.step_g reads 0; want a number above 0"),
        (b"[[scales]]\nstep_g = true", r"scales\.step_g reads True"),
        (b"[[scales]]\nstep_g = nan", r"scales\.step_g reads nan"),
        (b"[[scales]]\nlimit_g = 3", r"scales\.step_g reads nothing"),
        (b"[cost]\nboxes = -1", r"cost\.boxes reads -1; want a number of 0 or more"),
        (b"[cost]\ntortes_a_month = 0", r"cost\.tortes_a_month reads 0; want a number above 0"),
        (b'[cost]\nown_work_h = "two"', r"cost\.own_work_h reads 'two'"),
        (b'[cost]\nstatus = "guess"', r"cost\.status reads 'guess'; want law or"),
        (b'today = "soon"', "today reads 'soon'; want a day and time"),
        (b"today = 2027-06-10", "want a day and time"),
        (b'today = 2027-06-10T08:00:00\nutc_offset = "2"', r"utc_offset reads 2; want an offset"),
        (b'today = 2027-06-10T08:00:00\nutc_offset = "+99:00"', "want an offset"),
    ],
)
def test_a_setting_that_cannot_be_used_is_named_with_what_is_wanted(
    data: bytes, words: str
) -> None:
    with pytest.raises(StoreError, match=words) as caught:
        read_studio(data, PATH)
    assert caught.value.exit_code == 5
    assert caught.value.message.endswith("try again.")
