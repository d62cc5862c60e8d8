"""Records that the others speak against: put aside one after another, never averaged away."""

from collections.abc import Callable, Collection, Sequence

Residuals = Callable[[Sequence[int]], Sequence[float]]
"""How far each of some records is from what the others of them say."""


def put_aside(
    count: int, residuals: Residuals, *, limit: float, sure: Collection[int] = ()
) -> tuple[tuple[int, ...], dict[int, float]]:
    """Places that count, and those that do not with how far off each is.

    The furthest goes first and the others are looked at again without it. Where only two are left
    that speak against one another, none of them knows better: both go, unless one is sure.

    >>> put_aside(3, lambda left: [[1.0, 1.1, 9.0][k] - 1 for k in left], limit=2)
    ((0, 1), {2: 8.0})
    """
    left = list(range(count))
    odd: dict[int, float] = {}
    while left:
        found = dict(zip(left, residuals(left), strict=True))
        off = {k: r for k, r in found.items() if abs(r) > limit and k not in sure}
        if not off:
            break
        worst = max(off, key=lambda k: (abs(off[k]), k))
        gone = set(off) if len(left) == 2 else {worst}
        odd |= {k: found[k] for k in gone}
        left = [k for k in left if k not in gone]
    return tuple(left), odd
