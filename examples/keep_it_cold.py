"""How long a torte keeps, and why not longer.

python3 run.py python examples/keep_it_cold.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, KeepResult, keep_of, load_demo


def main() -> KeepResult:
    """Judge how long T1 keeps."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = keep_of("T1", asked).result

    print(f"Count on {found.days} days at {found.cold_most_c:g} C or below.")
    print(found.reasons[0])
    for caution in found.cautions:
        print(f"  {caution}")
    return found


if __name__ == "__main__":
    main()
