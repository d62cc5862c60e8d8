"""An answer of `fill` in which nothing is known holds no figure."""

from krume.usecases.torte.fill_result import FillResult


def test_nothing_worked_out_is_not_known_and_never_nought() -> None:
    empty = FillResult.nothing("C2", "Cream", "24 x 6 cm")
    assert (empty.cream_ml, empty.needed_g, empty.factor, empty.lines) == (None, None, None, ())
    assert empty.status == "unknown"
