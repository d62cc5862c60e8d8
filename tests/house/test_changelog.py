"""Each change that a person can notice is told in one fragment."""

import re

import pytest

from tests.house.source import ROOT

FOLDER = ROOT / "changelog.d"
NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*\.(added|changed|fixed|removed)\.md")
FRAGMENTS = sorted(path for path in FOLDER.iterdir() if path.name != "README.md")


def test_there_is_something_to_tell() -> None:
    assert FRAGMENTS


@pytest.mark.parametrize("path", FRAGMENTS, ids=lambda path: path.name)
def test_a_fragment_is_one_or_two_sentences_with_a_name_that_says_its_kind(path: object) -> None:
    file = FOLDER / str(path).rpartition("/")[2]
    assert NAME.fullmatch(file.name)
    text = file.read_text(encoding="utf-8")
    assert text.endswith(".\n")
    assert 20 <= len(text) <= 500
    assert text.count("\n") == 1
