"""What each line counts as."""

from typing import Any

import pytest

from krume.base import Interval
from krume.design.shares import counted_as, sums
from krume.pantry import Composition, Ingredient
from tests.design import planned as p


def classes(key: str, **more: Any) -> dict[str, float | None]:
    counted = counted_as(p.line(3, key, 10.0, **more))
    assert counted is not None
    return {each.name: each.factor for each in counted}


@pytest.mark.parametrize(
    ("key", "names"),
    [
        (p.RICE, {"flour"}),
        (p.SWEET_RICE, {"flour", "sweet_rice"}),
        (p.POTATO, {"flour", "starch"}),
        (p.MAIZE, {"flour", "starch"}),
        (p.SUGAR, {"sugar"}),
        (p.ICING, {"sugar"}),
        (p.HAZELNUT, {"nut", "nut_fat"}),
        (p.LEMON, {"acid"}),
        (p.ORANGE, {"liquid"}),
        (p.MILK, {"dairy", "milk", "liquid"}),
        (p.WATER, {"water", "liquid"}),
        (p.VANILLA, {"flavour"}),
        (p.ZEST, {"flavour"}),
        (p.SALT, {"salt"}),
        (p.XANTHAN, {"binder", "xanthan"}),
        (p.PSYLLIUM, {"binder", "psyllium"}),
        (p.POWDER, {"leavening", "baking_powder"}),
        (p.TARTAR, {"acid", "cream_of_tartar"}),
        (p.BUTTER, {"fat", "butter", "added_fat", "packed_fat"}),
        (p.OIL, {"fat", "added_fat", "packed_fat"}),
        (p.GELATINE, {"gel", "gelatine"}),
        (p.CHOCOLATE, {"chocolate"}),
        (p.CURRANT, {"fruit"}),
    ],
)
def test_a_line_counts_into_the_classes_of_its_ingredient(key: str, names: set[str]) -> None:
    assert set(classes(key)) == names


def test_cream_counts_as_cream_but_not_as_milk() -> None:
    assert {"dairy", "cream"} <= set(classes(p.CREAM))
    assert "milk" not in classes(p.CREAM)
    assert "cream" not in classes("cream-cheese")


def test_butter_counts_at_its_planning_share_of_fat() -> None:
    assert classes(p.BUTTER)["added_fat"] == 0.82
    assert classes(p.OIL)["added_fat"] == 1.0


def test_a_whole_egg_splits_by_its_own_size() -> None:
    medium = classes(p.EGG, egg_size="eu-m")
    assert medium["egg_white"] == pytest.approx(33.5 / 51, abs=1e-12)
    large = classes(p.EGG, egg_size="us-large")
    assert large["egg_white"] == pytest.approx(33 / 50, abs=1e-12)


def test_a_part_of_an_egg_counts_as_that_part_alone() -> None:
    white = classes(p.EGG, part="white")
    assert (white["egg"], white["egg_white"]) == (1.0, 1.0)
    assert "egg_yolk" not in white
    assert "egg_yolk" in classes(p.YOLK)


def test_dried_egg_is_not_taken_for_shelled_egg() -> None:
    added = sums([p.line(3, "egg-white-dried", 10.0)])
    assert not added.total("egg").is_known


def test_an_unknown_ingredient_counts_into_nothing_and_is_kept() -> None:
    odd = p.line(4, None, 12.0)
    assert counted_as(odd) is None
    added = sums([p.line(3, p.RICE, 100.0), odd])
    assert added.unclassed == [odd]
    assert added.loose.best == 12.0
    assert added.total("flour").best == 100.0
    assert added.all.best == 112.0


def test_a_key_the_pantry_does_not_have_is_unknown_too() -> None:
    assert counted_as(p.line(3, "moon-dust", 10.0)) is None


def test_a_line_without_a_mass_makes_its_class_unknown() -> None:
    added = sums([p.line(3, p.SUGAR, 100.0), p.line(4, p.SUGAR, None)])
    assert not added.total("sugar").is_known
    assert not added.all.is_known
    assert added.total("flour").is_known
    assert [each.number for each in added.unweighed] == [4]


def test_a_mass_that_is_not_settled_keeps_its_ends() -> None:
    added = sums([p.line(3, p.SUGAR, Interval(90.0, 100.0, 125.0)), p.line(4, p.SUGAR, 10.0)])
    total = added.total("sugar")
    assert (total.low, total.best, total.high) == (100.0, 110.0, 135.0)


def test_one_egg_weighs_what_the_line_says() -> None:
    assert sums([p.eggs(3, 5)]).egg_each_g == pytest.approx(51.0, abs=1e-12)
    assert sums([p.line(3, p.EGG, 255.0)]).egg_each_g is None


def test_ones_own_ingredient_goes_before_the_packed_one() -> None:
    mine = Ingredient(
        p.SUGAR, "own", "own", "flour", "flour", composition=Composition(), status="declared"
    )
    added = sums([p.line(3, p.SUGAR, 100.0)], own=(mine,))
    assert added.total("flour").best == 100.0
    assert added.total("sugar").best == 0.0


def test_nuts_of_unknown_composition_leave_their_fat_unknown() -> None:
    mine = Ingredient("odd-nut", "odd nut", "odd nut", "nut", "nut")
    added = sums([p.line(3, "odd-nut", 40.0)], own=(mine,))
    assert added.total("nut").best == 40.0
    assert not added.total("nut_fat").is_known
