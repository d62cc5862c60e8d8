"""Handles on heights: the line is written anew, the ring is filled, a clash keeps nothing."""

import pytest

from krume.base import ConflictError, InputError
from krume.usecases import (
    Asked,
    asked_with_heights,
    heights_of,
    keep_heights,
    load_demo,
    text_now,
    torte_shown,
)


@pytest.fixture
def own(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    """A demo book that the test may change."""
    asked = Asked(book=tmp_path_factory.mktemp("torte") / "book")
    load_demo(asked)
    return asked


def text(asked: Asked, name: str) -> str:
    return text_now("torte", name, asked).text


@pytest.mark.parametrize(
    ("name", "heights"),
    [
        ("T1", [("F1, layer", 3, 14.0), ("C1 between the layers", 2, 10.0), ("C5", 1, 4.0)]),
        ("T3", [("F4, layer", 2, 12.0), ("C2 on each layer", 2, 14.0), ("C4 on top", 1, 8.0)]),
        ("TART", []),
    ],
)
def test_each_height_that_is_written_has_its_handle(
    demo: Asked, name: str, heights: list[tuple[str, int, float]]
) -> None:
    found = heights_of(text(demo, name), {}).handles
    assert len(found) == len(heights)
    for each, (words, count, height) in zip(found, heights, strict=True):
        assert each.words.startswith(words)
        assert (each.count, each.height_mm, each.wished_mm) == (count, height, height)


def test_what_is_wished_is_an_answer_to_its_own_line(demo: Asked) -> None:
    now = heights_of(text(demo, "T1"), {5: 12.5, 7: 10.0})
    assert now.answers == ("line 5=3 layers of F1, 12.5 mm, trimmed to 19.5 cm",)
    assert now.is_changed
    build = torte_shown("tortes/T1.txt", asked_with_heights(demo, now)).result.build
    assert build.height_mm == pytest.approx(3 * 12.5 + 20 + 4)
    assert not heights_of(text(demo, "T1"), {5: 14.0}).is_changed


@pytest.mark.parametrize(
    ("old", "new"), [("2 layers of F4, 12 mm", "2 layers of F4"), ("8 mm C4", "300 g C4")]
)
def test_no_cream_fills_a_ring_in_which_a_height_is_not_known(
    demo: Asked, old: str, new: str
) -> None:
    ring = text(demo, "T3").replace("2 x 14 mm C2", "2 x 10 mm C2")
    assert heights_of(ring, {}).fit is not None
    assert old in ring
    assert heights_of(ring.replace(old, new), {}).fit is None


def test_a_ring_is_filled_by_its_cream(demo: Asked) -> None:
    assert heights_of(text(demo, "T3"), {}).fit is None
    fit = heights_of(text(demo, "T3"), {6: 15.0}).fit
    assert fit is not None
    assert (fit.line, fit.height_mm, fit.text) == (8, 11.0, "2 x 11 mm of C2 fill the ring")
    assert heights_of(text(demo, "T3"), {6: 15.0, 8: 11.0}).fit is None
    assert heights_of(text(demo, "T3"), {6: 30.0}).fit is None
    assert heights_of(text(demo, "T1"), {5: 12.0}).fit is None


def test_kept_heights_are_a_version_once(own: Asked) -> None:
    for _ in range(2):
        now = keep_heights("T3", {6: 15.0, 8: 11.0}, own, seen=1)
        assert now.revision == 2
    lines = text(own, "T3").splitlines()
    assert "2 layers of F4, 15 mm, trimmed to 21 cm" in lines
    assert "2 x 11 mm C2, one on each layer, filled out to the ring" in lines
    assert keep_heights("T3", {6: 15.0}, own, seen=2).revision == 2


def test_what_cannot_stand_is_not_kept_and_two_hands_are_told(own: Asked) -> None:
    with pytest.raises(InputError, match="cannot stand"):
        keep_heights("T3", {6: 15.0}, own, seen=1)
    keep_heights("T1", {7: 9.0}, own, seen=1)
    with pytest.raises(ConflictError):
        keep_heights("T1", {7: 8.0}, own, seen=1)
    assert text_now("torte", "T3", own).revision == 1


def test_decorations_have_no_handle_and_do_not_fill_a_ring() -> None:
    text = (
        "A\nRing: 22 x 6 cm\n\n2 layers of F4, 12 mm\n2 x 10 mm C2, one on each layer, filled out "
        "to the ring\n8 x 6 g C5 on top, piped, 20 mm high\n"
    )
    now = heights_of(text, {})
    assert [each.line for each in now.handles] == [4, 5]
    assert now.fit is not None
    assert now.fit.height_mm == 18.0
