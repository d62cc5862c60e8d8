"""The first settings, written into studio.toml beside all that is there."""

import tomllib
from dataclasses import replace
from pathlib import Path

import pytest

from krume.base import ConflictError, InputError
from krume.store import add_texts, book_at
from krume.usecases import (
    Asked,
    StudioSettings,
    load_demo,
    save_settings,
    settings_now,
    settings_text,
    settings_wished,
)

_WISH = StudioSettings(
    name='The "Good" Bench', market="us", eggs_region="eu", scale_step_g="0,1", oven_offset_c="−12"
)


def _only(key: str, typed: str) -> StudioSettings:
    """Settings of which one alone was typed."""
    said = dict.fromkeys(("name", "market", "eggs_region", "scale_step_g", "oven_offset_c"), "")
    said[key] = typed
    return StudioSettings(*said.values())  # type: ignore[arg-type]


def _read(asked: Asked) -> dict[str, object]:
    return tomllib.loads(settings_text(asked))


def test_a_first_run_makes_the_book_and_writes_what_was_said(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    assert not settings_now(asked).is_said
    save_settings(_WISH, asked)
    assert _read(asked) == {
        "name": 'The "Good" Bench',
        "market": "us",
        "eggs": {"region": "eu"},
        "scales": [{"step_g": 0.1}],
        "oven": {"offset_c": -12},
    }
    assert settings_now(asked).is_said
    assert "# Your studio." in settings_text(asked)


def test_every_other_key_and_comment_of_the_demo_stays(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    before, text = _read(asked), settings_text(asked)
    save_settings(replace(settings_now(asked), market="us", oven_offset_c="-8.5"), asked)
    after = _read(asked)
    assert after["market"] == "us"
    changed = [
        (a, b)
        for a, b in zip(text.splitlines(), settings_text(asked).splitlines(), strict=True)
        if a != b
    ]
    assert changed == [('market = "eu"', 'market = "us"'), ("offset_c = -12", "offset_c = -8.5")]
    assert before.keys() == after.keys()


def test_what_is_left_empty_stays_as_it_is(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    text = settings_text(asked)
    save_settings(StudioSettings(seen=1), asked)
    assert settings_text(asked) == text


def test_sent_twice_is_kept_once(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    save_settings(_WISH, asked)
    seen = settings_now(asked).seen
    save_settings(_WISH, asked)
    assert settings_now(asked).seen == seen


def test_settings_that_another_changed_are_refused_and_kept_apart(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    mine = replace(settings_now(asked), name="Mine")
    save_settings(replace(settings_now(asked), name="Theirs"), asked)
    with pytest.raises(ConflictError, match="changed since"):
        save_settings(mine, asked)
    assert _read(asked)["name"] == "Theirs"
    assert 'name = "Mine"' in settings_wished(mine, asked)


@pytest.mark.parametrize(
    ("key", "typed"),
    [
        ("scale_step_g", "0"),
        ("scale_step_g", "-1"),
        ("scale_step_g", "fine"),
        ("oven_offset_c", "12 under"),
        ("market", "moon"),
        ("units", "kelvin"),
        ("eggs_region", "EU M"),
    ],
)
def test_what_cannot_be_used_is_refused_by_its_field(tmp_path: Path, key: str, typed: str) -> None:
    asked = Asked(book=tmp_path / "book")
    with pytest.raises(InputError) as refused:
        save_settings(_only(key, typed), asked)
    assert refused.value.field == key
    assert not (tmp_path / "book").exists()


@pytest.mark.parametrize(
    "text",
    [
        'eggs = { region = "eu" }\n',
        "note = '''\n[eggs]\nregion = 1\n'''\n",
        "note = '''\n[eggs]\nregion = 1\n'''\n[eggs]\nregion = \"eu\"\n",
        "[eggs\n",
    ],
)
def test_a_text_written_otherwise_is_left_alone(tmp_path: Path, text: str) -> None:
    asked = Asked(book=tmp_path / "book")
    add_texts(book_at(asked.book), {"studio.toml": text.encode(), "formulas/F1.txt": b"F1\n"})
    with pytest.raises(InputError, match=r"Edit its text|Correct that line"):
        save_settings(StudioSettings(eggs_region="us", seen=1), asked)
    assert settings_text(asked) == text


def test_a_comment_behind_a_value_stays(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    add_texts(book_at(asked.book), {"studio.toml": b'market = "eu"  # ours\n'})
    save_settings(StudioSettings(market="us", seen=1), asked)
    assert settings_text(asked) == 'market = "us"  # ours\n'


def test_the_address_of_a_label_is_written_and_read_again(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    save_settings(StudioSettings(name="Bench", address='2 Slip Row, "Orl"'), asked)
    assert _read(asked)["address"] == '2 Slip Row, "Orl"'
    assert settings_now(asked).address == '2 Slip Row, "Orl"'
