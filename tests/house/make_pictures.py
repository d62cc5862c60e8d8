"""Draw the pictures of a bake in docs/models: `python3 run.py python -m tests.house.make_pictures`."""

import tempfile
from pathlib import Path

from krume.bake import likeliest
from krume.base import Infeasible
from krume.publish import Shown, cuts_drawing, drawing_file, stacked_drawing
from krume.usecases import Asked, BakeWish, load_demo
from krume.usecases.bake import bake_ground, with_bake
from krume.usecases.bake_beside import beside_of
from krume.usecases.bake_pictures import BakePictures, pictures_of
from tests.house.source import ROOT

FOLDER = ROOT / "docs" / "models"
BESIDE = "dark round 20 x 7 cm"


def pictures() -> dict[str, str]:
    """Each drawing by its file: F1's cuts, and F1 in its own tin beside a dark one."""
    found = _demo()
    course = Shown("Core and top over the minutes", found.course_svg(), found.said)
    pair = Shown(
        f"Both tins at {found.pair[0].section.time_min:.0f} minutes",
        cuts_drawing(found.pair, ident="pair", columns=2),
    )
    beside = stacked_drawing((course, pair), title="F1 in two tins", ident="f1-beside")
    return {
        "bake-f1-cuts.svg": drawing_file(cuts_drawing(found.cuts, ident="f1", columns=3)),
        "bake-f1-beside.svg": drawing_file(beside),
    }


def _demo() -> BakePictures:
    """The likeliest bake of F1 in an oven nobody knows: the demo's own oven learns."""
    with tempfile.TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        wish = BakeWish(beside=BESIDE)
        ground = bake_ground("F1", wish, asked)
        if ground.batter is None or ground.tin is None or ground.oven is None:
            raise ValueError(ground.bare.problems)
        bake = likeliest(ground.batter, ground.tin, ground.oven)
        if isinstance(bake, Infeasible):
            raise ValueError(bake.clashes)
        second = beside_of(ground, wish, asked)
        result = with_bake(ground.bare.result, ground.batter, bake)
        found = pictures_of(ground, result, second)
    if found is None:
        raise ValueError(result)
    return found


def main() -> None:
    """Write each of them."""
    for name, svg in pictures().items():
        (FOLDER / name).write_text(svg, encoding="utf-8")


if __name__ == "__main__":
    main()
