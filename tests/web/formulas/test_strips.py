"""Bands drawn over the middle half of their own line."""

from pathlib import Path

from krume.base import Interval
from krume.usecases import Asked, CheckBand, check_formula
from krume.usecases.formula.own_formulas import CheckOwn
from krume.web.formulas.strips import WIDTH, _strip, strips


def test_what_is_inside_stands_in_the_middle_half_and_what_is_not_beside_it(
    demo_book: Path, tmp_path: Path
) -> None:
    for each in strips(check_formula("F2", Asked(book=demo_book)).result):
        assert each.place != "outside"
        assert all(WIDTH / 4 <= x <= 3 * WIDTH / 4 for x in each.marks)
    text = tmp_path / "sweet.txt"
    text.write_text(
        "Sweet\nFamily: separated\n\n100 g white rice flour\n5 eggs, EU M\n300 g sugar\n"
    )
    found = {each.key: each for each in strips(check_formula(str(text), Asked()).result)}
    assert found["sugar"].place == "outside"
    assert found["sugar"].marks[0] > 3 * WIDTH / 4


def test_a_value_that_is_not_settled_is_a_length() -> None:
    own = CheckOwn(0, 0, (), None, None, None, None, 90.0, None, "too few")
    band = CheckBand(
        "egg", "Egg", Interval(211.5, 228.0, 245.2), 200, 340, None, "%", "flour",
        "common practice", "common-practice", own,
    )  # fmt: skip
    found = _strip(band, {}, {})
    assert found.marks == (69.9, 98.7)
    assert found.value == "211.5–245.2"
