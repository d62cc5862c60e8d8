"""The comparison with printed numbers itself: what it lets through and what it refuses."""

from decimal import Decimal

import pytest

from tests.agreement import LEDGER, Agreement, agrees, half_of_last_digit, reads


@pytest.fixture(autouse=True)
def scratch_page() -> None:
    LEDGER.open()


@pytest.mark.parametrize(
    ("value", "printed", "holds"),
    [
        (278.44, "278.4", True),
        (278.45, "278.4", True),
        (278.4501, "278.4", False),
        (0.284999, "0.28", True),
        (0.285, "0.28", True),
        (0.2851, "0.28", False),
        (-8.2, "\u22128.2", True),
        (2199.1, "2 199.1", True),
        (1249.9, "1.2E+3", True),
        (1251.0, "1.2E+3", False),
        (float("nan"), "0", False),
        (float("inf"), "0", False),
        (None, "0", False),
    ],
)
def test_the_tolerance_is_half_of_the_last_printed_digit(
    value: float | None, printed: str, holds: bool
) -> None:
    assert bool(agrees(value, printed)) is holds


def test_a_trailing_zero_narrows_the_tolerance() -> None:
    assert agrees(0.8249, "0.82")
    assert not agrees(0.8249, "0.820")


def test_a_wider_tolerance_without_a_reason_is_refused() -> None:
    with pytest.raises(ValueError, match="go together"):
        agrees(4.0, "3.9", within="0.2")
    assert agrees(4.05, "3.9", within="0.2", why="inputs are rounded to one digit")
    assert not agrees(4.15, "3.9", within="0.2", why="inputs are rounded to one digit")


def test_a_printed_text_is_compared_to_the_letter() -> None:
    assert reads("About 1 serving", "About 1 serving")
    assert not reads("about 1 serving", "About 1 serving")


def test_a_comparison_without_a_cited_source_is_refused() -> None:
    LEDGER.close()
    with pytest.raises(RuntimeError, match="needs its papers"):
        agrees(1.0, "1")


def test_a_failure_names_printed_computed_and_distance() -> None:
    row = agrees(3.2, "3.9")
    assert repr(row) == (
        "<printed 3.9 (within half its last digit), computed 3.200: 14.0 half-digits off>"
    )
    assert isinstance(row, Agreement)


@pytest.mark.parametrize(("printed", "half"), [("264", "0.5"), ("0.820", "0.0005"), ("2E+1", "5")])
def test_half_a_digit_follows_the_printed_form(printed: str, half: str) -> None:
    assert half_of_last_digit(Decimal(printed)) == Decimal(half)
