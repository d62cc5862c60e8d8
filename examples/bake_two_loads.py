"""Two tins at once, and a roll ten minutes later: how much later each is done, and why.

python3 run.py python examples/bake_two_loads.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, LoadWish, TogetherResult, TogetherWish, bakes_together, load_demo


def main() -> TogetherResult:
    """Bake F1, and F3 in the same oven ten minutes after it."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        wish = TogetherWish((LoadWish("F1"), LoadWish("F3", in_min=10.0)))
        found = bakes_together(wish, asked).result

    print(found.text)
    for load in found.loads:
        if load.minutes is not None and load.alone_min is not None:
            alone, minutes = load.alone_min, load.minutes
            print(
                f"{load.formula}: first check {minutes.low:.0f} min after its door "
                f"({alone.low:.0f} alone): {load.text}"
            )
    print(f"From the first door to the last out the heaters give {found.oven_kwh} kWh.")
    return found


if __name__ == "__main__":
    main()
