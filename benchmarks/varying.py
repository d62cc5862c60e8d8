"""A thousand variations of one formula, with their papers, on one core."""

import time
from pathlib import Path
from tempfile import TemporaryDirectory

from benchmarks.measure import Row

COUNT = 1_000
MOST_S = 30.0


def rows() -> list[Row]:
    """A thousand swaps of a part of a line; the peer is the time they may take."""
    return [Row(f"{COUNT:,} variations", taken_s(COUNT), MOST_S, "s", "what they may take", 1.0)]


def taken_s(count: int) -> float:
    """Processor time of so many variations of the demo's F1."""
    from krume.usecases import Asked, VaryWish, load_demo, vary_each

    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        names = ("pistachio", "sunflower", "walnuts", "pecans")
        swaps = (f"{5 + n % 350 / 10} g hazelnut={names[n % len(names)]}" for n in range(count))
        start = time.process_time()
        wishes = (VaryWish((swap,)) for swap in swaps)
        answered = sum(answer.is_answered for answer in vary_each("F1", wishes, asked))
        taken = time.process_time() - start
    if answered != count:
        message = f"{count - answered} of {count} variations were not answered"
        raise RuntimeError(message)
    return taken


if __name__ == "__main__":
    print(f"{taken_s(COUNT):.2f} s")
