"""What every sheet carries of its making."""

from dataclasses import replace
from datetime import date

import pytest

from krume.design import read
from krume.store import book_at, studio_of
from krume.usecases import Asked
from krume.usecases.imprint import dial_of, imprint_of

TEXT = "Own\nOven: {oven}\n\n40 g white rice flour\n"


def test_a_text_of_the_book_carries_the_studios_notes_and_another_does_not(demo: Asked) -> None:
    studio = studio_of(book_at(demo.book))
    assert imprint_of(studio, demo, is_of_book=True).notes
    assert imprint_of(studio, demo, is_of_book=False).notes == ()


def test_the_day_is_the_books_or_the_one_asked_for(demo: Asked) -> None:
    studio = studio_of(book_at(demo.book))
    assert imprint_of(studio, demo, is_of_book=True).date == "2027-06-10"
    other = replace(demo, on=date(2027, 7, 1))
    assert imprint_of(studio, other, is_of_book=True).date == "2027-07-01"


@pytest.mark.parametrize(("oven", "dial"), [("160 C, no fan", 172.0), ("fan 150 C", None)])
def test_an_oven_that_reads_low_is_dialled_higher_the_way_it_was_measured(
    demo: Asked, oven: str, dial: float | None
) -> None:
    studio = studio_of(book_at(demo.book))
    found = dial_of(read(TEXT.format(oven=oven)).value, studio)
    assert found == (None if dial is None else pytest.approx(dial))
