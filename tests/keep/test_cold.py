"""Need of cold: every cell and every edge of both tables."""

import pytest

from krume.base import OutOfRangeError
from krume.keep import needs_cold
from tests.agreement import reads

PACKAGED = [
    (0.92, 7.0, "non-tcs"), (0.93, 4.6, "non-tcs"), (0.95, 5.6, "non-tcs"),
    (0.95, 5.61, "assess"), (0.96, 4.6, "non-tcs"), (0.96, 4.61, "assess"),
    (0.9501, 5.6, "assess"), (0.99, 6.5, "assess"), (0.9201, 5.7, "assess"),
]  # fmt: skip
OPEN = [
    (0.879, 7.0, "non-tcs"), (0.88, 5.0, "non-tcs"), (0.88, 5.01, "assess"),
    (0.90, 4.6, "non-tcs"), (0.9001, 4.6, "non-tcs"), (0.9001, 4.61, "assess"),
    (0.92, 4.19, "non-tcs"), (0.92, 5.0, "assess"), (0.9201, 4.19, "non-tcs"),
    (0.9201, 4.2, "assess"), (0.99, 6.5, "assess"), (0.92, 4.2, "non-tcs"),
]  # fmt: skip


@pytest.mark.source("fda-food-code-2022", "1-201.10(B), table A")
@pytest.mark.parametrize(("aw", "ph", "verdict"), PACKAGED)
def test_table_a_is_read_as_printed(aw: float, ph: float, verdict: str) -> None:
    assert reads(needs_cold(aw, ph, heat_treated_packaged=True), verdict)


@pytest.mark.source("fda-food-code-2022", "1-201.10(B), table B")
@pytest.mark.parametrize(("aw", "ph", "verdict"), OPEN)
def test_table_b_is_read_as_printed(aw: float, ph: float, verdict: str) -> None:
    assert reads(needs_cold(aw, ph, heat_treated_packaged=False), verdict)


def test_an_unknown_number_is_kept_cold() -> None:
    assert needs_cold(None, 4.0, heat_treated_packaged=True) == "tcs"
    assert needs_cold(0.5, None, heat_treated_packaged=False) == "tcs"


@pytest.mark.parametrize(("aw", "ph"), [(1.01, 5.0), (-0.1, 5.0), (0.9, 14.1), (0.9, -0.1)])
def test_numbers_that_cannot_be_are_refused(aw: float, ph: float) -> None:
    with pytest.raises(OutOfRangeError):
        needs_cold(aw, ph, heat_treated_packaged=True)
