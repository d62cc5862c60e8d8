"""Whole steps of a scale that keep the ratios of a formula closest, in exact whole numbers."""

import math
from collections.abc import Callable, Sequence
from heapq import heapify, heappop, heappush


def whole_steps(sizes: Sequence[int], *, step: int) -> list[int]:
    """Whole numbers of steps, one for each line, closest to the lines' sizes.

    minimise (max |e_i|, sum e_i^2), e_i = (n_i s - a_i) / a_i, subject to sum n_i = N

    N is the sum of the sizes in steps, to the nearest whole one, an exact half to the even one.
    Of equal answers the one with more in the earlier line is taken; a line of more than nothing
    keeps one step at least, and N is then their number at least. All is whole-number arithmetic,
    so no rounding of the machine decides anything.

    Why this is the best of *all* vectors n, not only of those a step away: begin with every line
    at its own nearest step, where |e_i| and e_i^2 are both as small as they can be, and call what
    N lacks D (D > 0; the other sign is its mirror). Each further step of a line costs more than
    its last one, by either measure, since both are convex in n_i. (1) A vector whose worst error
    is below the D-th smallest of all the steps' errors has room for fewer than D steps, so it
    misses N; taking the D smallest reaches that error: it is the limit. (2) Under a limit each
    line has an interval of allowed steps, and the squares add up by line. Were a best vector to
    hold a dearer step than one left out, exchanging the two would keep N and lower the sum; so it
    holds the D cheapest, and below its nearest step no line goes, since one more up elsewhere
    would have to pay for it. Equal costs are exchanged freely, so the tie can go to the earlier.

    Parameters
    ----------
    sizes : a_i, each 0 or more [any whole unit]
    step : s, more than 0 [the same unit]

    Returns
    -------
    n_i, as many as sizes

    Valid for
    ---------
    Sizes of 0 or more; lines of 0 stay 0.

    Source
    ------
    `mathematics`

    Examples
    --------
    >>> whole_steps([54, 54, 54, 54, 54, 10000], step=10)
    [5, 5, 5, 5, 5, 1002]
    """
    there = [size for size in sizes if size > 0]
    begun = [max((2 * size + step - 1) // (2 * step), 1) for size in there]
    lacking = max(_nearest_even(sum(there), step), len(there)) - sum(begun)
    if lacking:
        _spread(begun, there, step, lacking)
    counts = iter(begun)
    return [next(counts) if size > 0 else 0 for size in sizes]


def _nearest_even(total: int, step: int) -> int:
    count, rest = divmod(total, step)
    return count + (2 * rest > step or (2 * rest == step and count % 2))


def _spread(counts: list[int], sizes: Sequence[int], step: int, lacking: int) -> None:
    """Add (or take out) the steps that are lacking: first the limit is found, then the squares."""
    sign = 1 if lacking > 0 else -1
    whole = math.prod(sizes)
    weights = [whole // size for size in sizes]

    def error(at: int, count: int) -> int:
        return abs(count * step - sizes[at]) * weights[at]

    def next_error(at: int, count: int) -> int | None:
        return None if count + sign < 1 else error(at, count + sign)

    limit = _take(list(counts), sign, abs(lacking), next_error)
    limit = max(limit, *(error(at, count) for at, count in enumerate(counts)))

    def growth(at: int, count: int) -> int | None:
        following = next_error(at, count)
        if following is None or following > limit:
            return None
        return (step + 2 * sign * (count * step - sizes[at])) * weights[at] ** 2

    _take(counts, sign, abs(lacking), growth)


def _take(counts: list[int], sign: int, times: int, cost: Callable[[int, int], int | None]) -> int:
    """Take the cheapest step so many times, of equal ones as told; what the dearest cost."""
    begun = ((cost(at, count), sign * at) for at, count in enumerate(counts))
    steps = [(price, order) for price, order in begun if price is not None]
    heapify(steps)
    dearest = 0
    for _ in range(times):
        dearest, order = heappop(steps)
        at = abs(order)
        counts[at] += sign
        price = cost(at, counts[at])
        if price is not None:
            heappush(steps, (price, order))
    return dearest
