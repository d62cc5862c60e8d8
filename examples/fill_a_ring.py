"""How much of a cream fills a ring: litres, grams, whole cartons, and leaves by both rules.

python3 run.py python examples/fill_a_ring.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, FillResult, FillWish, fill_ring, load_demo


def main() -> FillResult:
    """Fill a ring of 24 x 6 cm with C2 of the demo studio, two discs in it."""
    wish = FillWish("24 x 6 cm", discs=("2 x 22 cm x 12 mm",), waste_pct=4.0)
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = fill_ring("C2", wish, asked).result

    print(f"{found.title}: {found.cream_l:.2f} l, {found.needed_g:.1f} g in the ring")
    for line in found.lines:
        print(f"  {line.mass_g:.1f} g {line.name}")
    for carton in found.cartons:
        print(f"  {carton.cartons} cartons of {carton.name}, {carton.left_ml:.0f} ml left")
    for gel in found.gels:
        silver = next(swap for swap in gel.leaves if swap.leaf.key == "silver")
        print(f"  {silver.by_root_count:.1f} or {silver.by_ratio_count:.1f} silver leaves")
    return found


if __name__ == "__main__":
    main()
