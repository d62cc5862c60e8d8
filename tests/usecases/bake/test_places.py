"""The book's own tins and ovens, offered where a bake is asked."""

from pathlib import Path

from krume.usecases import Asked, places_to_bake


def test_every_tin_of_the_book_is_offered_once_and_can_be_read_again(demo: Asked) -> None:
    from krume.size import read_tin, tin_text

    places = places_to_bake(demo)
    assert "round 20 x 7 cm" in places.tins
    assert len(places.tins) == len(set(places.tins)) == 7
    assert [tin_text(read_tin(tin).value) for tin in places.tins] == list(places.tins)  # type: ignore[arg-type]


def test_the_studios_own_oven_comes_first(demo: Asked) -> None:
    assert places_to_bake(demo).ovens[0].startswith("deck")


def test_an_empty_book_offers_nothing(tmp_path: Path) -> None:
    assert places_to_bake(Asked(book=tmp_path / "none")).tins == ()
