"""What a torte costs, and what a price leaves.

python3 run.py python examples/cost_and_price.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, CostResult, CostWish, cost_of, load_demo


def main() -> CostResult:
    """Cost T1 and look at the price of 96."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = cost_of("T1", CostWish(price="96"), asked).result

    print(f"Material {found.material}, direct {found.direct}, full {found.full}.")
    print(f"At 96.00 the margin is {found.margin_pct} %; {found.price_for_margin} leaves 30 %.")
    print(found.text)
    return found


if __name__ == "__main__":
    main()
