"""The range of one's own formulas on the page, a second short mark below each band's strip."""

from typing import TYPE_CHECKING

from krume.cli.figures import number, span
from krume.cli.page import Page

if TYPE_CHECKING:
    from krume.usecases import CheckBand, CheckOwn, CheckResult

_NAMED_MOST = 6


def show_own(page: Page, band: "CheckBand", width: int) -> None:
    """The own range of one figure below its strip; nothing where there is none."""
    own = band.own
    if own.low is None or own.high is None:
        return
    unit = "" if band.unit == "ratio" else f" {band.unit}"
    ends = f"{span(own.low, own.high, 2 if is_fine(band) else 1)}{unit}"
    mark = own_mark(band, width)
    if page.is_wide:
        page.whole(f"{f'  your own {own.n}':<33}  {mark}        {ends}".rstrip())
        return
    page.line(f"your own {own.n}: {ends}", indent=2)
    page.whole(mark.rstrip(), indent=2)


def is_fine(band: "CheckBand") -> bool:
    """Whether a band is so narrow that its figures need a second digit."""
    return band.high <= 1


def own_mark(band: "CheckBand", width: int) -> str:
    """Where the own range lies on the strip of a band, which is its middle half."""
    quarter = width // 4
    ends = (band.own.low, band.own.high)
    shares = [((end or 0.0) - band.low) / ((band.high - band.low) or 1.0) for end in ends]
    places = [quarter + round(share * (width - 2 * quarter - 1)) for share in shares]
    low, high = (min(max(place, 0), width - 1) for place in places)
    return " " * low + "=" * (high - low + 1) + " " * (width - 1 - high)


def show_own_promise(page: Page, check: "CheckResult") -> None:
    """Whose ranges these are and what they hold; the starting bands stay."""
    ranges = [band.own for band in check.bands if band.own.low is not None]
    if not ranges:
        return
    most = max(ranges, key=lambda own: own.n)
    page.line()
    page.line(
        f"Your own (= below the strips): {_whose(most)}, lowest to highest. On average such a "
        f"range holds {number(most.coverage_pct, 0)} % of the formulas you make, and "
        f"{number(most.content_pct, 0)} % or more {number(most.confidence_pct / 10)} times in 10. "
        "The usual ranges stay what is judged by."
    )


def _whose(own: "CheckOwn") -> str:
    shown = own.names if own.n <= _NAMED_MOST else own.names[: _NAMED_MOST - 1]
    more = f" and {own.n - len(shown)} more" if own.n > len(shown) else ""
    good = "none" if own.tried == 0 else "all" if own.tried == own.n else str(own.tried)
    return f"{', '.join(shown)}{more}, {good} of them baked and judged good"
