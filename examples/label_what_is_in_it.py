"""What the buyer must be told, and what keeps the gluten sentence off.

python3 run.py python examples/label_what_is_in_it.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, LabelResult, LabelWish, label_of, load_demo


def main() -> LabelResult:
    """Label T1 in the words of the EU."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = label_of("T1", LabelWish(market="eu"), asked).result

    print(found.ingredients)
    print(f"Contains {', '.join(found.contains)}.")
    print(f"May it say gluten-free? {found.gluten.claim_allowed}")
    for opens in found.gluten.opens:
        print(f"  {opens}")
    return found


if __name__ == "__main__":
    main()
