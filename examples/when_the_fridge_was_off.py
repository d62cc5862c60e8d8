"""A night without current: what is kept, what stops; then the freezer and the road.

python3 run.py python examples/when_the_fridge_was_off.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import (
    Asked,
    FridgeResult,
    FridgeWish,
    KeepWish,
    fridge_off,
    keep_wished,
    load_demo,
)


def main() -> FridgeResult:
    """Judge what stood in the fridge, then freeze and carry what is made anew."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = fridge_off(FridgeWish(("T1",), since="22:30", before_c=4.0), asked).result
        wish = KeepWish(freeze=True, outside_c=30.0, box="foam", packs_g=400.0)
        kept = keep_wished("101", wish, asked).result

    print(f"Off for {found.hours:g} h.")
    for part in found.components:
        print(f"  {part.name}: {part.verdict}. {part.text}")
    for order in found.orders:
        print(f"{order.title}: {order.text}")
    for line in (*kept.freezing[0].lines, *kept.road[0].lines):
        print(f"  {line}")
    return found


if __name__ == "__main__":
    main()
