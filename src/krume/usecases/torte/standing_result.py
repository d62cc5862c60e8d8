"""How a torte stands, as an answer."""

from dataclasses import dataclass

from krume.build import Crush


@dataclass(frozen=True, slots=True)
class StandingPart:
    """One cream, jelly or coat: the word for it cold and in a warm room, and its numbers.

    `need_pa` is the yield stress it must have, `low_pa` to `high_pa` what its kind has in the
    cold, `warm_…` in a warm room; `decides` is where it needs most. None is not known.
    """

    line: int
    name: str
    of: str
    verdict: str
    warm_verdict: str
    above_g: float | None
    load_pa: float | None
    decides: str | None
    need_pa: float | None
    low_pa: float | None
    high_pa: float | None
    warm_low_pa: float | None
    warm_high_pa: float | None
    status: str
    source: str
    text: str


@dataclass(frozen=True, slots=True)
class StandingResult:
    """How a torte stands: its weakest word cold and in a warm room, each cream, and sentences."""

    verdict: str | None
    warm_verdict: str | None
    warm_c: float
    parts: tuple[StandingPart, ...]
    crush: Crush | None
    lines: tuple[str, ...]
    caution: str
