"""Draw a bake for docs/models: `python3 run.py python -m tests.house.make_pictures`."""

import tempfile
from pathlib import Path

from krume.publish import Shown, cuts_drawing, drawing_file, stacked_drawing
from krume.usecases import Asked, BakeWish, build_in_time, load_demo
from krume.usecases.bake.bake import bake_formula, bake_ground
from krume.usecases.bake.more import with_more
from krume.usecases.bake.pictures import BakePictures, pictures_of
from tests.house.source import ROOT

FOLDER = ROOT / "docs" / "models"
BESIDE = "dark round 20 x 7 cm"


def pictures() -> dict[str, str]:
    """Each drawing by its file: F1's cuts, F1 beside a dark tin, water of T1 and of the tart."""
    found = _demo()
    course = Shown("Core and top over the minutes", found.course_svg(), found.said)
    pair = Shown(
        f"Both at {found.pair[0].section.time_min:.0f} minutes",
        cuts_drawing(found.pair, ident="pair", columns=2),
    )
    beside = stacked_drawing((course, pair), title="F1 in two tins", ident="f1-beside")
    return {
        "moisture-t1.svg": drawing_file(_water("T1")),
        "moisture-tart.svg": drawing_file(_water("TART")),
        "bake-f1-cuts.svg": drawing_file(cuts_drawing(found.cuts, ident="f1", columns=3)),
        "bake-f1-beside.svg": drawing_file(beside),
    }


def _water(name: str) -> str:
    """Water of a demo torte over the hours."""
    with tempfile.TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        moved = build_in_time(name, asked, moves=True).result.moisture
    if moved is None or moved.svg is None:
        raise ValueError(name)
    return moved.svg


def _demo() -> BakePictures:
    """F1 of the demo studio, in its own tin and beside a dark one."""
    with tempfile.TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        wish = BakeWish(beside=BESIDE)
        ground = bake_ground("F1", wish, asked)
        answer, second = with_more(bake_formula("F1", wish, asked), ground, wish, asked)
        found = pictures_of(ground, answer.result, second)
    if found is None:
        raise ValueError(answer.problems)
    return found


def main() -> None:
    """Write each of them."""
    for name, svg in pictures().items():
        (FOLDER / name).write_text(svg, encoding="utf-8")


if __name__ == "__main__":
    main()
