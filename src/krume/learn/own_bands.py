"""The range that a person's own formulas keep to, figure by figure, and how much it can promise."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from krume.base import OutOfRangeError
from krume.evidence import figures

FEWEST = 2
"""Two ends of a range need two formulas."""

_HALVINGS = 60


@dataclass(frozen=True, slots=True)
class OwnFormula:
    """A formula of the person's own with the figures of it that are settled.

    `root` is the formula it was first varied from, its own name where it is no variation. `tried`
    is the status of its good trials (measured, invented), None where there is none.
    """

    name: str
    family: str
    figures: Mapping[str, float]
    root: str
    tried: str | None = None


@dataclass(frozen=True, slots=True)
class OwnBand:
    """Lowest and highest of one's own formulas for one figure; None below two formulas.

    `tried` of the `n` were baked and judged good. `coverage_pct` is the share of such formulas the
    range holds on average, `content_pct` the least share it holds, `confidence_pct` sure. `status`
    is measured only where every formula has a good measured trial, else derived from the texts.
    """

    quantity: str
    n: int
    tried: int
    names: tuple[str, ...]
    low: float | None
    high: float | None
    coverage_pct: float | None
    content_pct: float | None
    confidence_pct: float
    status: str | None


def own_band(quantity: str, formulas: Iterable[OwnFormula]) -> OwnBand:
    """Range of one figure over formulas of one family; those that do not know it do not count.

    >>> two = (OwnFormula(n, "nut", {"egg": v}, n) for n, v in (("A", 150.0), ("B", 170.0)))
    >>> found = own_band("egg", two)
    >>> found.low, found.high, round(found.coverage_pct, 1)
    (150.0, 170.0, 33.3)
    """
    counted = [each for each in formulas if quantity in each.figures]
    found = [each.figures[quantity] for each in counted]
    n, sure = len(found), figures("own_bands.csv")["own-confidence"].value
    is_range = n >= FEWEST
    return OwnBand(
        quantity=quantity,
        n=n,
        tried=sum(each.tried is not None for each in counted),
        names=tuple(each.name for each in counted),
        low=min(found) if is_range else None,
        high=max(found) if is_range else None,
        coverage_pct=100 * expected_coverage(n) if is_range else None,
        content_pct=100 * least_share(n, sure_share=sure / 100) if is_range else None,
        confidence_pct=sure,
        status=_status(counted) if is_range else None,
    )


def _status(counted: Sequence[OwnFormula]) -> str:
    return "measured" if all(each.tried == "measured" for each in counted) else "derived"


def independent(formulas: Iterable[OwnFormula], *, without: str | None) -> tuple[OwnFormula, ...]:
    """One formula for each kinship, the one under check and its kin left out.

    Formulas that go back to one root are no two opinions. A tried one stands for its kin before
    an untried one, then the root itself, then the first by name.
    """
    kin: dict[str, OwnFormula] = {}
    ordered = sorted(formulas, key=lambda f: (f.tried is None, f.name != f.root, f.name))
    for each in ordered:
        if each.root != without:
            kin.setdefault(each.root, each)
    return tuple(sorted(kin.values(), key=lambda each: each.name))


def roots(parents: Mapping[str, str | None]) -> dict[str, str]:
    """The first ancestor of each name among the names; a circle ends at its first name.

    >>> roots({"F1": None, "F1b": "F1", "F1c": "F1b", "X": "somewhere else"})
    {'F1': 'F1', 'F1b': 'F1', 'F1c': 'F1', 'X': 'X'}
    """
    return {name: _root(name, parents) for name in parents}


def _root(name: str, parents: Mapping[str, str | None]) -> str:
    line = [name]
    while (above := parents[line[-1]]) is not None and above in parents:
        if above in line:
            return min(line[line.index(above) :])
        line.append(above)
    return line[-1]


def expected_coverage(n: int) -> float:
    r"""Share of a population that the range of a sample holds on average.

    E = (n - 1) / (n + 1)

    Parameters
    ----------
    n : sample size, 2 or more

    Returns
    -------
    E, the mean of the beta distribution (n - 1, 2) of the share

    Raises
    ------
    OutOfRangeError : n is below 2

    Valid for
    ---------
    Independent draws from one continuous population of any form.

    Source
    ------
    `nist-ehandbook`

    Examples
    --------
    >>> expected_coverage(3)
    0.5
    """
    _check(n)
    return (n - 1) / (n + 1)


def confidence_of(n: int, *, share: float) -> float:
    r"""How sure it is that the range of a sample holds a share of the population.

    c = 1 - n p^(n - 1) + (n - 1) p^n

    Parameters
    ----------
    n : sample size, 2 or more
    share : p, 0 to 1

    Returns
    -------
    c, 0 to 1

    Raises
    ------
    OutOfRangeError : n is below 2

    Valid for
    ---------
    Independent draws from one continuous population of any form.

    Source
    ------
    `nist-ehandbook`

    Examples
    --------
    >>> round(confidence_of(25, share=0.9), 3)
    0.729
    """
    _check(n)
    return float(1 - n * share ** (n - 1) + (n - 1) * share**n)


def least_share(n: int, *, sure_share: float) -> float:
    r"""The share of the population that the range of a sample holds at least, so sure.

    the p with 1 - n p^(n - 1) + (n - 1) p^n = c, by halving

    Parameters
    ----------
    n : sample size, 2 or more
    sure_share : c, 0 to 1

    Returns
    -------
    p, 0 to 1

    Raises
    ------
    OutOfRangeError : n is below 2

    Valid for
    ---------
    Independent draws from one continuous population of any form.

    Source
    ------
    `nist-ehandbook`

    Examples
    --------
    >>> round(least_share(3, sure_share=0.9), 3)
    0.196
    """
    low, high = 0.0, 1.0
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        if confidence_of(n, share=middle) > sure_share:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _check(n: int) -> None:
    if n < FEWEST:
        raise OutOfRangeError(
            f"A range needs {FEWEST} formulas; here is {n}.",
            field="n", got=str(n), want=f"{FEWEST} or more",
        )  # fmt: skip
