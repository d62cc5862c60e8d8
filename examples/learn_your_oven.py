"""What an oven is off its dial, how strong it is, and what that does to the minutes.

python3 run.py python examples/learn_your_oven.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, BakeWish, OvenWish, bake_formula, load_demo, ovens_of

READINGS = ("dial 160, 2027-06-01: 148, 152, 145", "dial 200, 2027-06-02: 188, 186, 190")
BAKES = (
    "F1, dial 182, 40 min, core 95, 2027-06-03",
    "F2, dial 182, 38 min, core 95, 2027-06-04",
    "F1, dial 182, 37-41 min, skewer, 2027-06-05",
)


def main() -> list[str]:
    """Two readings and three bakes, and the sponge before and after them."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        before = bake_formula("F1", BakeWish(), asked)
        oven = ovens_of(OvenWish(READINGS, BAKES), asked).result.ovens[0]
        after = bake_formula("F1", BakeWish(), asked)

    said = [oven.offset_text, oven.heat_text]
    for answer in (before, after):
        said += [n.text for n in answer.notices if n.code == "oven-learnt"]
    for line in said:
        print(line)
    return said


if __name__ == "__main__":
    main()
