"""When a sponge may be cut, when a sheet must be rolled, and by two readings of a probe.

python3 run.py python examples/cool_a_cake.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.bake import cool_left
from krume.usecases import Asked, BakeWish, CoolingResult, cooling_of, load_demo


def main() -> CoolingResult | None:
    """Cool F1 and F3, then ask two readings."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        sponge = cooling_of("F1", BakeWish(), asked).result
        sheet = cooling_of("F3", BakeWish(), asked).result

    for found in (sponge, sheet):
        if found is not None:
            print(*found.lines, sep="\n")
    left = cool_left([20, 40], [70, 52], room_c=21, goal_c=30).left_min
    print(f"By the probe: cold in another {left.low:.0f} to {left.high:.0f} min.")
    return sponge


if __name__ == "__main__":
    main()
