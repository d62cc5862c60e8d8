"""What the words "gluten-free" ask for in each market, as data with its law."""

from dataclasses import dataclass
from functools import cache

from krume.base import InputError
from krume.evidence import column, figures, load, optional

CLAIM_COLUMNS = (
    column("market", "one of", "us", "eu", "uk", "ca", "au-nz"),
    optional("is_judged", "flag"),
    optional("figure", "key"),
    optional("side", "one of", "below", "most"),
    optional("sentence"),
    optional("unit"),
    column("rule"),
    optional("why"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


@dataclass(frozen=True, slots=True)
class ClaimRule:
    """The rule of one market; where it `is_judged` not, no record opens a gate there.

    `side` is `below` (the limit itself is too much) or `most` (the limit itself is allowed).
    """

    market: str
    is_judged: bool
    limit_ppm: float
    side: str
    sentence: str
    unit: str
    rule: str
    why: str
    source: str

    def allows(self, most_ppm: float, *, is_below: bool = False) -> bool:
        """Whether a figure lies on the allowed side; `is_below` says it lies under its figure.

        >>> claim_rule("us").allows(20.0), claim_rule("eu").allows(20.0)
        (False, True)
        """
        if self.side == "below" and not is_below:
            return self.is_judged and most_ppm < self.limit_ppm
        return self.is_judged and most_ppm <= self.limit_ppm

    @property
    def words(self) -> str:
        """The limit in the words of its market: below 20 ppm, 20 mg/kg or less."""
        figure = f"{self.limit_ppm:g} {self.unit}"
        return f"below {figure}" if self.side == "below" else f"{figure} or less"


@cache
def _rules() -> dict[str, ClaimRule]:
    known = figures("declared.csv")
    found = {}
    for row in load("gluten_claims.csv", CLAIM_COLUMNS, unique=("market",)):
        figure = row.text("figure")
        limit = known[figure].value if figure else 0.0
        found[row.text("market")] = ClaimRule(
            row.text("market"), row.flag("is_judged"), limit, row.text("side"),
            row.text("sentence"), row.text("unit"), row.text("rule"), row.text("why"),
            row.text("source"),
        )  # fmt: skip
    return found


def claim_rule(market: str) -> ClaimRule:
    """The rule of a market; raises InputError for one that no row knows."""
    found = _rules().get(market)
    if found is None:
        known = ", ".join(_rules())
        message = f"'{market}' is no market. Type one of: {known}."
        raise InputError(message, field="market", got=market, want=known)
    return found
