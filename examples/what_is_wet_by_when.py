"""What becomes of a torte: which layers hold, which give water, when a tart base is soft.

python3 run.py python examples/what_is_wet_by_when.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, BuildResult, build_in_time, load_demo


def main() -> BuildResult:
    """Build the demo studio's tart and look three days ahead."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = build_in_time("TART", asked, moves=True).result

    print(found.name)
    for line in found.standing.lines if found.standing else ():
        print(f"  {line}")
    for line in found.moisture.lines if found.moisture else ():
        print(f"  {line}")
    return found


if __name__ == "__main__":
    main()
