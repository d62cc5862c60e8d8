"""What outlives a whole look is not looked at again, for as long as the app runs."""

import gc

from hypothesis import given
from hypothesis import strategies as st

from krume.web.frame.tidying import tidying


class _Ring:
    """Two things that hold each other: only a whole look finds that nobody holds them."""

    def __init__(self) -> None:
        self.other = self


def test_what_stays_is_set_aside_and_given_back_at_the_end() -> None:
    with tidying():
        aside = gc.get_freeze_count()
        kept = [_Ring() for _ in range(1000)]
        gc.collect()
        assert gc.get_freeze_count() >= aside + len(kept)
    assert gc.get_freeze_count() == 0


def test_what_nobody_holds_is_still_found() -> None:
    with tidying():
        for _ in range(100):
            _Ring()
        assert gc.collect() >= 100


def test_examples_are_drawn_as_ever_while_the_app_runs() -> None:
    drawn: list[bool] = []

    @given(st.booleans())
    def draw(value: bool) -> None:
        drawn.append(value)

    with tidying():
        draw()
    assert set(drawn) == {False, True}
