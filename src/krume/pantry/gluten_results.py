"""A result of gluten as a paper prints it: a figure, a limit it lies below, or not detected."""

import re
from dataclasses import dataclass

from krume.evidence import figures

_ALL_OF_IT = 1_000_000.0
_THOUSANDS = r"(?!\d{1,3}[.,]\d{3}(?!\d))"
_NUMBER = _THOUSANDS + r"(?P<number>\d{1,7}(?:[.,]\d{1,6})?)"
_BELOW = r"<(?!=)|below|under|less than|lower than"
_MOST = r"<=|≤|at most|max\.?|maximum|up to|not more than|no more than"
_ABOVE = r">=|>|≥|above|over|more than"
_UNIT = r"(?:\s*(?:mg/kg|mg kg-1|ppm))?(?:\s*(?P<of>gluten|gliadin|prolamin|gliadins|prolamins))?"
_RESULT = re.compile(
    rf"^(?:(?P<below>{_BELOW})|(?P<most>{_MOST})|(?P<above>{_ABOVE}))?\s*{_NUMBER}{_UNIT}$"
)
_SPAN = re.compile(rf"^{_THOUSANDS}\d{{1,7}}(?:[.,]\d{{1,6}})?\s*[-–]\s*{_NUMBER}{_UNIT}$")
_NOT_DETECTED = re.compile(
    r"^(?:n\.?\s?d\.?|not det(?:ected|ectable)|none detected|(?:<|below)\s*(?:the\s+)?"
    r"(?:lo[dq]|limit(?: of (?:detection|quantification))?))\s*(?P<rest>.*)$"
)


@dataclass(frozen=True, slots=True)
class GlutenResult:
    """A result as printed: at most `most_ppm`, or below it where `is_below`."""

    printed: str
    most_ppm: float
    is_below: bool = False


def gluten_result(printed: str, *, limit_ppm: float | None = None) -> GlutenResult | None:
    """Read a result; `limit_ppm` is the least its method can read. None where it says no figure.

    "Not detected" lies below the method's limit and says nothing without one; a figure under that
    limit counts as the limit; gliadin counts twice, as gluten. `1,000` is one to some
    and a thousand to others: no figure.

    >>> gluten_result("< 5 mg/kg").most_ppm, gluten_result("n. d.", limit_ppm=10).most_ppm
    (5.0, 10)
    >>> gluten_result("n. d.") is None, gluten_result("not measured") is None
    (True, True)
    """
    said = " ".join(printed.casefold().split())
    absent = _NOT_DETECTED.match(said)
    if absent is not None:
        rest = absent["rest"].strip(" ()[],;:=")
        inside = gluten_result(rest)
        if rest and inside is None:
            return None
        limit = limit_ppm if inside is None else max(inside.most_ppm, limit_ppm or 0.0)
        return None if not limit else GlutenResult(printed, limit, is_below=True)
    match = _RESULT.match(said) or _SPAN.match(said)
    return None if match is None else _figure(printed, match, limit_ppm)


def _figure(printed: str, match: re.Match[str], limit_ppm: float | None) -> GlutenResult | None:
    """No method reads nothing: a 0 is no result."""
    signs = match.groupdict()
    most = float(match["number"].replace(",", ".")) * _as_gluten(match["of"])
    if most <= 0:
        return None
    if signs.get("above"):
        return GlutenResult(printed, _ALL_OF_IT)
    is_below = bool(signs.get("below"))
    if limit_ppm is not None and most < limit_ppm:
        return GlutenResult(printed, limit_ppm, is_below=True)
    return GlutenResult(printed, most, is_below)


def _as_gluten(of: str | None) -> float:
    """Gluten for what was measured: gliadin is half of it."""
    is_part = of is not None and not of.startswith("gluten")
    return figures("declared.csv")["gluten-per-prolamin"].value if is_part else 1.0
