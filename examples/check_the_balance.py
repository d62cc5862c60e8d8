"""Hold a formula against the usual bands of its family.

python3 run.py python examples/check_the_balance.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, CheckResult, check_formula, load_demo


def main() -> CheckResult:
    """Check F2 of the demo studio."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = check_formula("F2", asked).result

    print(f"{found.name}, a {found.family_label}: 100 is {found.basis}, {found.basis_g} g")
    for key, percent in found.percent.items():
        if isinstance(percent, float) and percent > 0:
            print(f"  {key}: {percent:.1f} %")
    print(f"{len(found.findings)} figures lie outside their band.")
    return found


if __name__ == "__main__":
    main()
