"""What every sheet carries of its making."""

from dataclasses import replace
from datetime import date

from krume.store import book_at, studio_of
from krume.usecases import Asked
from krume.usecases.sheets.imprint import imprint_of


def test_a_text_of_the_book_carries_the_studios_notes_and_another_does_not(demo: Asked) -> None:
    studio = studio_of(book_at(demo.book))
    assert imprint_of(studio, demo, is_of_book=True).notes
    assert imprint_of(studio, demo, is_of_book=False).notes == ()


def test_the_day_is_the_books_or_the_one_asked_for(demo: Asked) -> None:
    studio = studio_of(book_at(demo.book))
    assert imprint_of(studio, demo, is_of_book=True).date == "2027-06-10"
    other = replace(demo, on=date(2027, 7, 1))
    assert imprint_of(studio, other, is_of_book=True).date == "2027-07-01"
