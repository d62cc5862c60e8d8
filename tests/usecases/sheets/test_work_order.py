"""What holds no nuts and no gluten is made first, and a cleaning stands before the rest."""

from krume.usecases import Asked
from krume.usecases.sheets.work_order import work_order
from krume.usecases.sold.papers import papers_of
from krume.usecases.sold.product import sold_of


def test_the_hazelnut_sponge_comes_last_after_a_cleaning(demo: Asked) -> None:
    part = work_order(sold_of("101", demo), papers_of(demo))
    assert part is not None
    first, clean, last, _ = part.lines
    assert {"C1", "C5", "S1"} <= set(first.rpartition(": ")[2].rstrip(".").split(", "))
    assert clean.startswith("CLEAN before going on") and last.endswith("F1.")


def test_an_expired_record_keeps_a_batch_out_of_the_first_group(demo: Asked) -> None:
    part = work_order(sold_of("102", demo), papers_of(demo))
    assert part is not None
    text = " ".join(part.lines)
    assert text.index("C2") < text.index("F3") < text.index("F4")
    # Its chocolate may contain nuts: what may hold them comes last too.
    assert text.index("Last, with nuts") < text.index("C3")


def test_a_single_batch_needs_no_order(demo: Asked) -> None:
    assert work_order(sold_of("F1", demo), papers_of(demo)) is None
