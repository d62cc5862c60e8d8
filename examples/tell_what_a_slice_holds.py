"""What a slice of a torte holds for who doses by it, and the panel beside it.

python3 run.py python examples/tell_what_a_slice_holds.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import (
    Asked,
    LabelNutrition,
    LabelWish,
    NutritionWish,
    label_of,
    load_demo,
)


def main() -> LabelNutrition:
    """Nutrition of T1 cut into 16, in the words of the EU."""
    wish = LabelWish(market="eu", nutrition=NutritionWish(slices=16))
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = label_of("T1", wish, asked).result.nutrition
    if found is None or found.panel is None or found.carbohydrate is None:
        raise SystemExit("A mass in it is not known.")

    print(found.carbohydrate.text)
    print(found.carbohydrate.caution)
    for column in (found.panel, *found.beside):
        print(f"{column.head}:")
        for row in column.rows:
            print(f"  {row.label}: {row.text or 'not known'}")
    return found


if __name__ == "__main__":
    main()
