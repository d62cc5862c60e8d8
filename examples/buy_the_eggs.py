"""The fewest eggs for twelve tortes, what goes into each bowl, and who takes the whites.

python3 run.py python examples/buy_the_eggs.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, EggsResult, EggsWish, eggs_of, load_demo


def main() -> EggsResult:
    """Eggs for twelve hazel tortes, in packs of ten."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = eggs_of(("T1*12",), EggsWish(packs=(10,)), asked).result

    for buy in found.buy:
        print(f"buy {buy.count} {buy.label}")
    for row in found.formulas:
        print(f"{row.formula}: {row.text}")
    for left in found.left:
        print(f"left: {left.text}")
    for taker in found.takers:
        print(taker.text)
    return found


if __name__ == "__main__":
    main()
