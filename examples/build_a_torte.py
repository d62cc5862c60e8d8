"""What a torte comes to: its height, its grams, its layers from the bottom up.

python3 run.py python examples/build_a_torte.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, BuildResult, build_torte, load_demo


def main() -> BuildResult:
    """Build T1 of the demo studio."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = build_torte("T1", asked).result

    print(f"{found.name}: {found.height_mm} mm, {found.mass_g:.1f} g")
    for layer in found.layers:
        print(f"  {layer.name}: {layer.height_mm} mm, {layer.mass_g:.1f} g")
    return found


if __name__ == "__main__":
    main()
