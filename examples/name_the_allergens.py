"""The same torte in the words of five markets, and what none of their lists names.

python3 run.py python examples/name_the_allergens.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.pantry import MARKETS
from krume.usecases import Asked, LabelResult, LabelWish, label_of, load_demo


def main() -> dict[str, LabelResult]:
    """Label T1 for each market, with each part's own list for the first."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = {
            market: label_of("T1", LabelWish(market=market, by_part=True), asked).result
            for market in MARKETS
        }

    for part in found["eu"].labels[0].parts:
        print(part.line)
    for market, label in found.items():
        print(f"{market:6} contains {', '.join(label.contains)}")
    for told in found["us"].labels[0].beside:
        print(told)
    return found


if __name__ == "__main__":
    main()
