"""Words and day of a date: by the kind of cake, by the part that runs out first."""

from datetime import date

import pytest

from krume.base import InputError
from krume.design import read
from krume.keep import Keeping, assess
from krume.usecases import Asked, LabelWish, label_of
from krume.usecases.label.durability import (
    MadeOn,
    check_parts,
    durability_of,
    is_perishable,
    mark_words,
)
from tests.agreement import agrees

SPONGE = "Sponge\n\n100 g rice flour\n3 eggs, EU M\n90 g sugar\n"
CREAM = "Cream\n\n200 g whipping cream\n20 g sugar\n"
MADE = date(2027, 6, 11)


def keeping(**families: str) -> Keeping:
    """A cake of a sponge and a cream, by the families of its parts."""
    texts = {"sponge": SPONGE, "cream": CREAM}
    formulas = {name: read(texts[name]).value for name in families}
    return assess(formulas, dict(families))


def test_a_baked_sponge_is_best_before_and_with_cream_it_is_use_by() -> None:
    plain = keeping(sponge="separated")
    filled = keeping(sponge="separated", cream="set-cream")
    assert mark_words(plain, "eu") == "Best before"
    assert mark_words(filled, "eu") == "Use by"
    assert mark_words(plain, "us") == "Best if used by"
    assert mark_words(filled, "ca") == "Best before"


def test_a_part_of_which_nothing_is_known_is_perishable() -> None:
    unknown = assess({"sponge": read(SPONGE).value}, {"sponge": None})
    assert all(map(is_perishable, unknown.components))
    assert mark_words(unknown, "eu") == "Use by"


def test_a_market_without_a_row_says_use_by() -> None:
    assert mark_words(keeping(sponge="separated"), "moon") == "Use by"


def test_the_part_made_first_may_decide_the_day() -> None:
    cake = keeping(sponge="separated", cream="set-cream")
    together = durability_of(cake, "eu", MadeOn(MADE))
    assert (together.use_by, together.deciding) == ("2027-06-13", "cream")
    old_sponge = MadeOn(MADE, (("sponge", date(2027, 6, 6)),))
    said = durability_of(cake, "eu", old_sponge)
    assert (said.use_by, said.deciding) == ("2027-06-10", "sponge")


def test_an_old_part_never_makes_the_day_later() -> None:
    cake = keeping(sponge="separated", cream="set-cream")
    days = [durability_of(cake, "eu", MadeOn(MADE, (("cream", date(2027, 6, day)),))).use_by
            for day in range(5, 12)]  # fmt: skip
    assert days == sorted(days, key=str)
    assert days[-1] == durability_of(cake, "eu", MadeOn(MADE)).use_by


@pytest.mark.source("eu-1169-2011", "annex X no. 2: use by, the date, the conditions of storage")
def test_the_words_the_day_and_then_how_it_is_kept() -> None:
    text = durability_of(keeping(cream="set-cream"), "eu", MadeOn(MADE)).text
    assert text == "Use by: 13 June 2027. Keep cold, at 5 °C (41 °F) or below."
    assert agrees(durability_of(keeping(cream="set-cream"), "eu", MadeOn(MADE)).cold_most_c, "5")


def test_without_a_day_of_making_there_is_a_blank_and_no_day() -> None:
    said = durability_of(keeping(cream="set-cream"), "eu", MadeOn())
    assert said.use_by is None
    assert said.text.startswith("Use by: ____")
    only_one = MadeOn(None, (("cream", MADE),))
    assert durability_of(keeping(sponge="separated", cream="set-cream"), "eu", only_one).use_by is (
        None
    )


def test_a_part_nobody_has_or_made_after_the_whole_is_refused() -> None:
    names = ("sponge", "cream")
    with pytest.raises(InputError, match="there are: sponge, cream"):
        check_parts(MadeOn(MADE, (("jelly", MADE),)), names)
    with pytest.raises(InputError, match="after the whole"):
        check_parts(MadeOn(MADE, (("cream", date(2027, 6, 12)),)), names)
    check_parts(MadeOn(MADE, (("cream", MADE),)), names)


def test_a_part_of_one_thing_of_an_order_counts_for_that_thing_alone(demo: Asked) -> None:
    wish = LabelWish(market="eu", made=MADE, made_parts=(("C3", date(2027, 6, 6)),))
    found = {each.name: each.durability for each in label_of("102", wish, demo).result.labels}
    plain = label_of("102", LabelWish(market="eu", made=MADE), demo).result.labels
    same = {each.name: each.durability for each in plain}
    assert found["TART"].use_by == "2027-06-10"
    assert found["T2"] == same["T2"]
    with pytest.raises(InputError, match="there are: F3"):
        label_of("102", LabelWish(market="eu", made_parts=(("C9", MADE),)), demo)


def test_the_demos_torte_is_decided_by_its_custard(demo: Asked) -> None:
    wish = LabelWish(market="eu", made=MADE, made_parts=(("C1", date(2027, 6, 10)),))
    label = label_of("T1", wish, demo).result.labels[0]
    assert (label.durability.use_by, label.durability.deciding) == ("2027-06-12", "C1")
    assert label.durability.mark == "Use by"
