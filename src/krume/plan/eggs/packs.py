"""Eggs in whole packs: the fewest over, then the fewest packs."""

from collections.abc import Sequence


def packs_for(count: int, packs: Sequence[int]) -> dict[int, int]:
    """Packs to buy for so many eggs, by what a pack holds; empty where no pack is known.

    >>> packs_for(17, [6, 10]), packs_for(17, [10]), packs_for(17, []), packs_for(0, [6])
    ({6: 3}, {10: 2}, {}, {})
    """
    if not packs or count <= 0:
        return {}
    sizes = sorted(set(packs), reverse=True)
    most = count + sizes[-1]
    best: list[tuple[int, ...] | None] = [tuple(0 for _ in sizes)] + [None] * most
    for total in range(1, most + 1):
        for index, size in enumerate(sizes):
            before = best[total - size] if total >= size else None
            if before is None:
                continue
            after = tuple(n + (i == index) for i, n in enumerate(before))
            current = best[total]
            if current is None or (sum(after), after[::-1]) < (sum(current), current[::-1]):
                best[total] = after
    found = next(best[total] for total in range(count, most + 1) if best[total] is not None)
    return {size: n for size, n in zip(sizes, found or (), strict=True) if n}
