"""Which lines of a formula to weigh twice, and what they do to figures and minutes.

python3 run.py python examples/weigh_these_twice.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, BakeWish, CheckResult, bake_formula, check_formula, load_demo


def main() -> CheckResult:
    """Ask it of the roulade of the demo studio."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = check_formula("F3", asked, lines=True).result
        baked = bake_formula("F3", BakeWish(lines=True), asked).result.lines

    print(found.weigh_twice_text)
    for line in found.lines or ():
        print(f"  {line.name}: {line.slip_g:g} g does {line.slip_effect:.2f} to {line.figure}")
    if baked is not None:
        print(baked.text)
    return found


if __name__ == "__main__":
    main()
