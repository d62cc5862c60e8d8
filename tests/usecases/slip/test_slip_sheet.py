"""One corrected sheet of a way, kept nowhere; nothing while a question is open."""

import pytest

from krume.base import NotFoundError
from krume.usecases import Asked, SlipWish, slip_sheet

WISH = SlipWish(weighed=("white rice=40", "teff=26"))


def test_the_corrected_text_holds_what_lies_in_the_bowl(demo: Asked) -> None:
    answer = slip_sheet("F2", WISH, demo, way="leave", sheet="rescued.txt")
    assert b"26 g teff flour" in answer.result
    assert answer.exit_code == 0


def test_what_is_not_there_is_said(demo: Asked) -> None:
    with pytest.raises(NotFoundError, match="no such way"):
        slip_sheet("F2", WISH, demo, way="fresh", sheet="rescued.txt")
    with pytest.raises(NotFoundError, match="no such sheet"):
        slip_sheet("F2", WISH, demo, way="leave", sheet="jar-blend-card.pdf")


def test_an_open_question_gives_no_sheet(demo: Asked) -> None:
    wish = SlipWish(weighed=("moonflour=4",))
    answer = slip_sheet("F2", wish, demo, way="leave", sheet="rescued.txt")
    assert (answer.exit_code, answer.result) == (3, b"")
