"""How long a formula bakes, when to look first, how sure that is, and what another tin does.

python3 run.py python examples/bake_in_a_tin.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, BakeResult, BakeWish, draw_bake, load_demo


def main() -> BakeResult:
    """Bake F1 in its own tin and oven, beside a dark tin of the same size, and draw it."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        wish = BakeWish(beside="dark round 20 x 7 cm")
        picture = Path(folder) / "f1.svg"
        found = draw_bake("F1", wish, asked, to=picture).result
        drawn = len(picture.read_text(encoding="utf-8"))

    minutes = found.minutes
    if minutes is not None:
        print(f"{minutes.low:.0f} to {minutes.high:.0f} min, look first at {found.check_from_min}")
    print(f"The core to reach is {found.core_c} C ({found.core_from}).")
    if found.beside is not None:
        print(found.beside.text)
    print(f"The picture has {drawn // 1000} kB.")
    return found


if __name__ == "__main__":
    main()
