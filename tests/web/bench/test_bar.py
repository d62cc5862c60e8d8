"""The bar of a bowl measures: pieces in grams, ticks at a round step."""

from krume.web.bench.bar import Part, bar_of


def part(got_g: float, target_g: float, *, is_now: bool = False) -> Part:
    return Part(got_g, target_g, is_now)


def test_what_is_in_what_goes_in_and_what_is_to_come_fill_the_rule() -> None:
    bar = bar_of((part(50, 50), part(12, 12), part(0, 34, is_now=True), part(0, 48)))
    assert bar is not None
    assert [p.kind for p in bar.pieces] == ["in", "in", "now", "open"]
    assert bar.pieces[0].width == round(50 / 144 * 326 - 1.4, 1)
    assert bar.mark == round(1 + 96 / 144 * 326, 1)
    assert [label.text for label in bar.labels] == ["0", "50", "144"]
    assert len(bar.ticks) == 15
    assert bar.words == "62 of 144 grams are in the bowl, 34 go in now"


def test_more_than_planned_makes_the_rule_longer() -> None:
    bar = bar_of((part(26, 20, is_now=True), part(0, 10)))
    assert bar is not None
    assert bar.labels[-1].text == "36"


def test_a_bowl_of_unknown_grams_has_no_bar() -> None:
    assert bar_of((part(0, 0, is_now=True),)) is None
