"""The picture of a bake as a file: whole or not there, and nothing without an answer."""

from pathlib import Path

import pytest

from krume.base import InputError, StoreError
from krume.usecases import Asked, BakeWish, draw_bake
from tests.build.studio import tree


def test_curve_cuts_and_top_stand_in_one_file(demo: Asked, tmp_path: Path) -> None:
    to = tmp_path / "new" / "f1.svg"
    answer = draw_bake("F1", BakeWish(), demo, to=to)
    assert answer.result.picture == str(to)
    text = to.read_text(encoding="utf-8")
    root = tree(text)
    assert root.tag.endswith("svg")
    for words in ("Core and top over the minutes", "The cake cut through its middle", "The top,"):
        assert words in text
    assert "Both at" not in text


def test_nothing_is_written_while_something_is_asked_or_forbidden(
    demo: Asked, tmp_path: Path
) -> None:
    to = tmp_path / "f1.svg"
    for wish in (BakeWish(oven="90 C"), BakeWish(oven="170"), BakeWish(beside="round 20 cm")):
        assert draw_bake("F1", wish, demo, to=to).result.picture is None
    assert list(tmp_path.iterdir()) == []


def test_another_ending_is_refused_with_the_name_to_type(demo: Asked, tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"f1\.svg"):
        draw_bake("F1", BakeWish(), demo, to=tmp_path / "f1.png")


def test_a_place_that_cannot_be_written_is_named_and_stays_as_it_was(
    demo: Asked, tmp_path: Path
) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("mine", encoding="utf-8")
    with pytest.raises(StoreError, match="file"):
        draw_bake("F1", BakeWish(), demo, to=blocked / "f1.svg")
    assert [each.name for each in tmp_path.iterdir()] == ["file"]
    assert blocked.read_text(encoding="utf-8") == "mine"
