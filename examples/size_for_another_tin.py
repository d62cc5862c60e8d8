"""Fit a formula to another tin with whole eggs.

python3 run.py python examples/size_for_another_tin.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, SizeResult, SizeWish, load_demo, size_formula


def main() -> SizeResult:
    """Size F2 of the demo studio for a smaller round tin."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = size_formula("F2", SizeWish(("round 18 x 7 cm",)), asked).result

    for option in found.options:
        print(f"x {option.factor:g}: {option.text}")
    return found


if __name__ == "__main__":
    main()
