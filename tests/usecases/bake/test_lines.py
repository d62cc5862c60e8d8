"""What each weighing does to a bake, through the book."""

from krume.usecases import Asked, BakeLines, BakeWish, bake_formula
from krume.usecases.formula.matters import SEED


def lines_of(name: str, demo: Asked) -> BakeLines:
    found = bake_formula(name, BakeWish(lines=True), demo).result.lines
    assert found is not None
    return found


def test_without_being_asked_no_line_is_baked_again(demo: Asked) -> None:
    assert bake_formula("F3", BakeWish(), demo).result.lines is None


def test_of_the_roulades_lines_the_eggs_move_the_minutes_most_and_the_oven_more(
    demo: Asked,
) -> None:
    found = lines_of("F3", demo)
    first = found.lines[0]
    assert (first.name, first.slip_from, first.step_min) == ("eggs", "eggs", None)
    assert first.slip_g == 16
    assert "16 g of eggs move the minutes most, by 0.3" in found.text
    assert "the oven ± 2.7 °C by" in found.text
    assert found.seed == SEED
    assert len(found.lines) == 11


def test_the_baked_height_goes_with_the_depth_by_the_formulas_own_plan(demo: Asked) -> None:
    result = bake_formula("F3", BakeWish(lines=True), demo).result
    assert result.lines is not None
    assert result.depth_cm is not None
    for line in result.lines.lines:
        assert line.baked_mm is not None
        assert abs(line.baked_mm - line.depth_mm * 13 / (10 * result.depth_cm)) < 0.005


def test_xanthan_that_matters_to_the_balance_does_not_show_in_the_minutes(demo: Asked) -> None:
    xanthan = next(each for each in lines_of("F3", demo).lines if each.name == "xanthan gum")
    assert not xanthan.shows


def test_no_minutes_no_lines(demo: Asked) -> None:
    answer = bake_formula("F3", BakeWish(oven="90 C", lines=True), demo)
    assert answer.exit_code == 4
    assert answer.result.lines is None
