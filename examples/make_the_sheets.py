"""All sheets of an order in a folder, and later whether they still hold.

python3 run.py python examples/make_the_sheets.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import (
    Asked,
    SheetResult,
    load_demo,
    make_sheets,
    save_text,
    text_now,
    verify_sheets,
)


def main() -> SheetResult:
    """Make the sheets of order 101, change a text, and see which sheets are stale."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        made = make_sheets("101", asked, out=Path(folder) / "sheets").result
        for hold in made.held:
            print(f"Held: {hold.text} {hold.opens}")
        print(f"{len(made.files)} files were written.")

        now = text_now("formula", "C5", asked)
        text = now.text.replace("300 g butter", "290 g butter")
        save_text("formula", "C5", text, asked, seen=now.revision)
        found = verify_sheets(Path(folder) / "sheets", asked).result

    for each in found.verified:
        print(f"{each.file}: {each.text}")
    return found


if __name__ == "__main__":
    main()
