"""Numbers as pages set them."""

from krume.base import Interval
from krume.web.frame.figures import amount, column_words, grouped, unit_of


def test_thousands_are_parted_by_a_thin_space() -> None:
    assert grouped(1234567.0) == "1\u202f234\u202f567"
    assert grouped(999.94) == "999.9"
    assert grouped(-1234.5) == "-1\u202f234.5"


def test_a_span_that_prints_alike_at_both_ends_is_one_number() -> None:
    assert amount(Interval(5.01, 5.02, 5.04)) == "5"
    assert amount(None) == "not known"


def test_a_column_is_read_with_its_unit_behind_it() -> None:
    assert column_words("dial_c") == "dial, °C"
    assert column_words("specific_gravity") == "specific gravity"
    assert (unit_of("area_cm2"), unit_of("loss_pct"), unit_of("word")) == ("cm²", "%", "")
