"""Settings changed in place: the rest of the text stays sign for sign, or nothing is changed."""

import tomllib

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import InputError
from krume.usecases.book.book import demo_files
from krume.usecases.book.studio_lines import Setting, with_settings

DEMO = demo_files()["studio.toml"].decode()
KEYS = st.from_regex(r"[A-Za-z][A-Za-z0-9_-]{0,8}", fullmatch=True)
VALUES = st.one_of(
    st.booleans(),
    st.integers(-1000, 1000).map(float),
    st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), max_size=20),
)


def test_only_the_named_lines_of_the_demo_change() -> None:
    edited = with_settings(DEMO, "oven", {"offset_c": -9.5, "spread_c": 3.0})
    pairs = zip(DEMO.splitlines(), edited.splitlines(), strict=True)
    assert [(a, b) for a, b in pairs if a != b] == [
        ("offset_c = -12", "offset_c = -9.5"),
        ("spread_c = 4", "spread_c = 3"),
    ]


def test_nothing_new_changes_no_sign() -> None:
    same: dict[str, Setting] = {"name": "deck", "offset_c": -12.0, "fan": True, "altitude": None}
    assert with_settings(DEMO, "oven", same) == DEMO


def test_a_new_setting_stands_behind_the_last_of_its_table() -> None:
    edited = with_settings(DEMO, "oven", {"altitude_m": 40.0})
    lines = edited.splitlines()
    assert lines[lines.index("altitude_m = 40") - 1] == "recover_min = 5"
    assert lines[lines.index("altitude_m = 40") + 1] == ""
    assert edited.replace("altitude_m = 40\n", "") == DEMO


def test_a_setting_that_is_taken_out_takes_its_line_only() -> None:
    edited = with_settings(DEMO, "oven", {"spread_c": None})
    assert edited == DEMO.replace("spread_c = 4\n", "")


def test_the_same_name_in_another_table_is_left_alone() -> None:
    text = "[mixer]\nname = 'one' # mine\n[oven]\nname = 'two' # hers\n"
    edited = with_settings(text, "oven", {"name": "three"})
    assert edited == "[mixer]\nname = 'one' # mine\n[oven]\nname = \"three\" # hers\n"


def test_a_table_that_is_not_there_is_made_at_the_end() -> None:
    assert with_settings("", "oven", {"offset_c": -3.0}) == "[oven]\noffset_c = -3\n"
    assert with_settings('name = "x"', "oven", {"fan": False}) == (
        'name = "x"\n\n[oven]\nfan = false\n'
    )


def test_a_comment_sign_inside_a_text_is_part_of_the_text() -> None:
    text = '[oven]\nname = "a # b" # c\n'
    assert with_settings(text, "oven", {"name": 'd "e" #'}) == '[oven]\nname = "d \\"e\\" #" # c\n'


def test_line_ends_stay_as_they_are() -> None:
    text = "[oven]\r\nfan = true\r\n\r\n[cup]\r\nempty_g = 82\r\n"
    edited = with_settings(text, "oven", {"fan": False, "shelves": 2.0})
    assert edited == text.replace("true\r\n", "false\r\nshelves = 2\r\n")


@pytest.mark.parametrize(
    "text",
    [
        "oven = {offset_c = -12}\n",
        "oven.offset_c = -12\n",
        '[oven]\nname = """a\nfan = true\n"""\n',
        "[[oven]]\noffset_c = -12\n",
        'note = """\n[oven]\n"""\n',
        "oven = 3\n",
    ],
)
def test_what_cannot_be_changed_line_by_line_is_refused(text: str) -> None:
    with pytest.raises(InputError, match="Nothing was changed"):
        with_settings(text, "oven", {"name": "deck", "offset_c": -9.0})


def test_a_damaged_text_is_refused_first() -> None:
    with pytest.raises(InputError, match="cannot be read"):
        with_settings("[oven\n", "oven", {"fan": True})


@given(st.dictionaries(KEYS, VALUES, max_size=5))
def test_what_is_written_is_read_back_and_the_rest_stays(settings: dict[str, Setting]) -> None:
    before = tomllib.loads(DEMO)
    after = tomllib.loads(with_settings(DEMO, "oven", settings))
    assert after["oven"] == {**before["oven"], **settings}
    assert {k: v for k, v in after.items() if k != "oven"} == {
        k: v for k, v in before.items() if k != "oven"
    }
