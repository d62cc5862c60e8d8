"""Find the nearest blend when a flour is missing.

python3 run.py python examples/choose_a_blend.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, BlendResult, BlendWish, choose_blend, load_demo


def main() -> BlendResult:
    """Come near the blend of F2 without teff, with the starch and the sweet rice kept."""
    wish = BlendWish(
        "white rice flour, buckwheat flour, potato starch, maize starch, sweet rice flour",
        match="F2",
        limits=("starch 30..50", "sweet rice 9 g", "rice >= 25 g", "buckwheat <= 16 g"),
    )
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = choose_blend(wish, asked).result

    for part in found.parts:
        print(f"{part.mass_g:g} g {part.name}, was {part.was_g:g} g")
    print(f"Distance {found.distance:.3f}")
    return found


if __name__ == "__main__":
    main()
