"""Put sunflower kernels in place of the hazelnuts, and see what else changes.

python3 run.py python examples/vary_a_formula.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, VaryResult, VaryWish, load_demo, vary_formula


def main() -> VaryResult:
    """Vary F1 of the demo studio."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        child = vary_formula("F1", VaryWish(swaps=("hazelnut=sunflower",)), asked).result

    if child.allergens is not None:
        print("lost:", ", ".join(child.allergens.lost))
    for change in child.changes:
        print(f"{change.before_g:g} -> {change.after_g:g} g {change.name}: {change.why}")
    return child


if __name__ == "__main__":
    main()
