"""Six grams too many in the bowl: the ways out, and what each changes.

python3 run.py python examples/rescue_a_slip.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, SlipResult, SlipWish, load_demo, rescue_slip


def main() -> SlipResult:
    """Rescue F2 of the demo studio with 26 g of teff where 20 were planned."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = rescue_slip("F2", SlipWish(("white rice=40", "teff=26")), asked).result

    for way in found.options:
        print(f"{way.title}, worst shift {way.worst_shift_pct:.1f} {way.shift_basis}:")
        print(f"  {way.text}")
    return found


if __name__ == "__main__":
    main()
