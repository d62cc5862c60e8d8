"""Print a label on an endless roll, with its net weight, its lot and the date its kind asks for.

python3 run.py python examples/print_a_label.py
"""

from datetime import date
from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, LabelResult, LabelWish, PrintWish, label_sheets, load_demo


def main() -> LabelResult:
    """Write the label of T3 in every form; its cream was made the day before."""
    wish = LabelWish(
        market="eu",
        made=date(2027, 6, 11),
        made_parts=(("C2", date(2027, 6, 10)),),
        with_panel=False,
    )
    more = PrintWish(code="270611-1", net_g=1574)
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        out = Path(folder) / "labels"
        found = label_sheets("T3", wish, asked, out=out, layout="roll-62", more=more).result
        print((out / "t3-label.txt").read_text(encoding="utf-8"))

    label = found.labels[0]
    print(f"{label.durability.deciding} runs out first: {label.durability.use_by}.")
    return found


if __name__ == "__main__":
    main()
