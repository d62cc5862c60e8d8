"""Agreement with a printed number: the tolerance is half of the last printed digit, never chosen.

A published test carries `@pytest.mark.source("key", "place")` and compares with `agrees`:

    @pytest.mark.source("invented1998", "Table 3")
    def test_tray_cooling_matches_the_printed_time() -> None:
        assert agrees(tray_time(200.0), "278.4")

Where the source's own inputs are rounded, say so: `agrees(x, "3.9", within="0.2", why="...")`.
Every comparison becomes a row of docs/validation.md.
"""

from dataclasses import dataclass
from decimal import Decimal
from typing import SupportsFloat

# A binary float that stands exactly on the half digit may print one unit in the 17th place past it.
_FLOAT_NOISE = Decimal("1e-9")

_PLAIN_SIGNS = str.maketrans(
    {"\u2212": "-", "\u00a0": None, "\u2009": None, "\u202f": None, " ": None}
)


@dataclass(frozen=True, slots=True)
class Agreement:
    """One comparison of a computed value with a printed one; true when they agree."""

    printed: str
    computed: str
    half_digits: Decimal | None
    within: str | None
    why: str | None
    holds: bool

    def __bool__(self) -> bool:
        return self.holds

    def __repr__(self) -> str:
        allowed = f"within {self.within}" if self.within else "within half its last digit"
        off = "no number" if self.half_digits is None else f"{self.half_digits} half-digits off"
        return f"<printed {self.printed} ({allowed}), computed {self.computed}: {off}>"


class Ledger:
    """The comparisons of the test that is running; the plugin opens and reads it."""

    def __init__(self) -> None:
        self.is_open = False
        self.rows: list[Agreement] = []

    def open(self) -> None:
        """Start a fresh page for one cited test."""
        self.is_open, self.rows = True, []

    def close(self) -> list[Agreement]:
        """End the page and hand its rows over."""
        rows, self.is_open, self.rows = self.rows, False, []
        return rows

    def note(self, row: Agreement) -> Agreement:
        """Keep one comparison, or refuse it when no source is cited."""
        if not self.is_open:
            raise RuntimeError(
                'a printed value needs its papers: mark the test with source("key", "place")'
            )
        self.rows.append(row)
        return row


LEDGER = Ledger()


def agrees(
    value: SupportsFloat | None,
    printed: str,
    *,
    within: str | None = None,
    why: str | None = None,
) -> Agreement:
    """Whether a computed value is the printed one, to half of the last printed digit.

    `within` widens the tolerance to a stated absolute amount and then needs `why`. None never
    agrees. The minus sign and spaces as thousands marks are read as printed.
    """
    if (within is None) != (why is None):
        raise ValueError("`within` and `why` go together: a wider tolerance needs its reason")
    target = Decimal(printed.translate(_PLAIN_SIGNS))
    half_digit = half_of_last_digit(target)
    allowed = half_digit if within is None else Decimal(within)
    computed = Decimal("NaN") if value is None else Decimal(repr(float(value)))
    if not computed.is_finite():
        return LEDGER.note(Agreement(printed, str(value), None, within, why, holds=False))
    distance = abs(computed - target)
    return LEDGER.note(
        Agreement(
            printed=printed,
            computed=_two_more_digits(computed, target),
            half_digits=(distance / half_digit).quantize(Decimal("0.1")),
            within=within,
            why=why,
            holds=distance <= allowed * (1 + _FLOAT_NOISE),
        )
    )


def reads(text: str, printed: str) -> Agreement:
    """Whether a text is exactly the printed one: a statement, a name, a class."""
    return LEDGER.note(Agreement(printed, text, None, None, None, holds=text == printed))


def half_of_last_digit(printed: Decimal) -> Decimal:
    """Half a unit of the last digit a number was printed with."""
    exponent = printed.as_tuple().exponent
    if not isinstance(exponent, int):
        raise ValueError(f"{printed} is not a printed number")
    return Decimal(5).scaleb(exponent - 1)


def _two_more_digits(computed: Decimal, printed: Decimal) -> str:
    step = half_of_last_digit(printed).scaleb(-2).normalize()
    return f"{computed.quantize(Decimal(1).scaleb(step.adjusted() + 1)):f}"
