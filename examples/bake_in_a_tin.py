"""How long a formula bakes, when to look first, and how sure that is.

python3 run.py python examples/bake_in_a_tin.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, BakeResult, BakeWish, bake_formula, load_demo


def main() -> BakeResult:
    """Bake F1 in its own tin and oven."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = bake_formula("F1", BakeWish(), asked).result

    minutes = found.minutes
    if minutes is not None:
        print(f"{minutes.low:.0f} to {minutes.high:.0f} min, look first at {found.check_from_min}")
    print(f"The core to reach is {found.core_c} C ({found.core_from}).")
    return found


if __name__ == "__main__":
    main()
