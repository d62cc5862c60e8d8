"""Texts as pages keep them: found, saved by version, compared, never lost."""

from pathlib import Path

import pytest

from krume.base import ConflictError, InputError, NotFoundError
from krume.usecases import Asked, load_demo
from krume.usecases.book.texts import (
    TEXT_LIMIT,
    bring_back,
    delete_text,
    differences,
    save_text,
    text_now,
    texts_of,
    versions_of,
)

MINE = "Mine\n\n100 g white rice flour\n"


@pytest.fixture
def kept(tmp_path: Path) -> Asked:
    """A request on a demo book with a database, which the test may change."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def test_a_list_holds_one_kind_and_what_is_searched_for(demo: Asked) -> None:
    assert len(texts_of("formula", demo)) == 13
    assert [row.name for row in texts_of("formula", demo, search="SPONGE orl")] == ["F1"]
    assert [row.name for row in texts_of("torte", demo, search="t3")] == ["T3"]
    assert texts_of("formula", demo, search="nothing like it") == ()


def test_a_text_is_saved_found_and_kept_in_all_its_versions(kept: Asked) -> None:
    first = save_text("formula", "", MINE, kept, seen=None)
    assert (first.name, first.revision) == ("mine", 1)
    second = save_text("formula", "mine", MINE + "5 eggs\n", kept, seen=1)
    assert second.revision == 2
    assert text_now("formula", "mine", kept).text.endswith("5 eggs\n")
    assert [v.revision for v in versions_of("formula", "mine", kept)] == [2, 1]
    assert bring_back("formula", "mine", kept, revision=1).revision == 3
    assert text_now("formula", "mine", kept).text == MINE


def test_a_form_sent_twice_is_kept_once(kept: Asked) -> None:
    save_text("formula", "mine", MINE, kept, seen=None)
    assert save_text("formula", "mine", MINE, kept, seen=None).revision == 1
    assert len(versions_of("formula", "mine", kept)) == 1


def test_two_texts_of_one_title_get_two_names(kept: Asked) -> None:
    names = [
        save_text("formula", "", MINE + more, kept, seen=None).name for more in ("", "a\n", "")
    ]
    assert names == ["mine", "mine-2", "mine"]


def test_another_edit_of_the_same_version_is_refused(kept: Asked) -> None:
    save_text("formula", "F1", "One\n", kept, seen=1)
    with pytest.raises(ConflictError):
        save_text("formula", "F1", "Two\n", kept, seen=1)
    assert text_now("formula", "F1", kept).text == "One\n"


def test_a_deleted_text_is_gone_from_the_list_and_can_be_brought_back(kept: Asked) -> None:
    delete_text("formula", "F1", kept, seen=1)
    assert "F1" not in [row.name for row in texts_of("formula", kept)]
    with pytest.raises(NotFoundError):
        text_now("formula", "F1", kept)
    assert bring_back("formula", "F1", kept, revision=1).title == "Orl hazel sponge"


@pytest.mark.parametrize("name", ["../../etc/passwd", "C:\\x", "a/b", ".hidden", "…"])
def test_a_name_is_never_a_path(kept: Asked, name: str) -> None:
    save_text("formula", name, MINE, kept, seen=None)
    assert text_now("formula", name, kept).text == MINE
    assert len(texts_of("formula", kept)) == 14


def test_too_much_and_nothing_are_refused_and_nothing_is_kept(kept: Asked) -> None:
    for text in (" \n", "x" * (TEXT_LIMIT + 1)):
        with pytest.raises(InputError):
            save_text("formula", "big", text, kept, seen=None)
    assert len(texts_of("formula", kept)) == 13


def test_versions_differ_line_by_line() -> None:
    kinds = [c.kind for c in differences("a\nb\nc\nd\n", "a\nx\nd\ne\n")]
    assert kinds == ["same", "changed", "out", "same", "in"]


def test_a_text_that_is_in_the_book_already_is_that_text_not_a_second_one(kept: Asked) -> None:
    order = text_now("order", "101", kept).text
    again = save_text("order", "", order.replace("\n", "\r\n") + "\n", kept, seen=None)
    assert again.name == "101"
    assert len(texts_of("order", kept)) == 2
    changed = save_text("order", "", order.replace("14 people", "15 people"), kept, seen=None)
    assert changed.name == "order-101"
