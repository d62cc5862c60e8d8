"""Keeping in one line each, as it stands on printed sheets."""

from krume.design import read
from krume.usecases import Asked
from krume.usecases.keep.lines import freezing_line, keep_lines
from krume.usecases.sold.product import families_of, sold_of


def test_a_torte_says_how_long_it_keeps_by_what_and_whether_it_takes_freezing(
    demo: Asked,
) -> None:
    (sold,) = sold_of("T3", demo).sold
    cold, frozen = keep_lines(sold.formulas, families_of(sold))
    assert cold.startswith("Keeps 3 to 5 days at 5 °C or below; count on 3, by C2, C4")
    assert frozen == "Freezing: it does not take it (C4) (common practice)."


def test_an_order_says_it_of_each_thing_once(demo: Asked) -> None:
    line = freezing_line(sold_of("102", demo))
    assert line == (
        "Freezing (common practice): T2 takes it; T3 does not take it (C4); TART takes it with "
        "some loss (C3)."
    )


def test_what_nobody_knows_is_named() -> None:
    wobble = read("Blue wobble\n\n100 g water\n3 g salt\n").value
    cold, frozen = keep_lines({"W1": wobble}, {"W1": None})
    assert cold == "How long it keeps cold is not known: W1."
    assert "is not known to take it (W1)" in frozen
