"""Labels beside a drawing: each as near to its mark as the others let it be."""

from collections.abc import Sequence


def spread(wanted: Sequence[float], gap: float) -> list[float]:
    """Places at least `gap` apart, in the order given, nearest to the wanted ones.

    The squared distances are least: places that would overlap move together.

    >>> spread([0.0, 1.0, 20.0], 6.0)
    [-2.5, 3.5, 20.0]
    """
    blocks: list[tuple[float, int]] = []
    for index, place in enumerate(wanted):
        mean, count = place - index * gap, 1
        while blocks and blocks[-1][0] > mean:
            before, many = blocks.pop()
            mean = (before * many + mean * count) / (many + count)
            count += many
        blocks.append((mean, count))
    level = [mean for mean, count in blocks for _ in range(count)]
    return [mean + index * gap for index, mean in enumerate(level)]
