"""Egg sizes: what the rules and tables print, what a word may mean, and that parts add up."""

import itertools

import pytest

from krume.base import NotFoundError
from krume.pantry import egg_size, egg_size_named, egg_sizes, region_named
from tests.agreement import agrees

OZ_G = 28.349523125


@pytest.mark.source("usda-sr28", "WEIGHT, items 01123, 01124, 01125")
@pytest.mark.parametrize(
    ("key", "part", "printed"),
    [
        ("us-large", "whole", "50"),
        ("us-large", "white", "33"),
        ("us-large", "yolk", "17"),
        ("us-medium", "whole", "44"),
        ("us-xl", "whole", "56"),
        ("us-jumbo", "whole", "63"),
        ("us-small", "whole", "38"),
    ],
)
def test_us_sizes_weigh_what_the_table_prints(key: str, part: str, printed: str) -> None:
    assert agrees(egg_size(key).part_g(part).best, printed)


@pytest.mark.source("usda-ams-56", "weight classes, ounces per dozen")
@pytest.mark.parametrize(
    ("key", "ounces"),
    [
        ("us-jumbo", "30"),
        ("us-xl", "27"),
        ("us-large", "24"),
        ("us-medium", "21"),
        ("us-small", "18"),
        ("us-peewee", "15"),
    ],
)
def test_us_classes_begin_at_their_ounces_a_dozen(key: str, ounces: str) -> None:
    low = egg_size(key).shell_low_g
    assert low is not None
    assert agrees(low * 12 / OZ_G, ounces, within="0.01", why="limits are kept to 0.01 g")


@pytest.mark.source("eu-2023-2465", "weight classes of class A eggs")
@pytest.mark.parametrize(
    ("key", "low", "high"),
    [("eu-xl", "73", None), ("eu-l", "63", "73"), ("eu-m", "53", "63"), ("eu-s", None, "53")],
)
def test_eu_classes_have_the_limits_of_the_regulation(
    key: str, low: str | None, high: str | None
) -> None:
    size = egg_size(key)
    for value, printed in ((size.shell_low_g, low), (size.shell_high_g, high)):
        assert agrees(value, printed) if printed else value is None


def test_the_uk_kept_the_same_classes() -> None:
    for name in ("xl", "l", "m", "s"):
        eu, uk = egg_size(f"eu-{name}"), egg_size(f"uk-{name}")
        assert (eu.shell_low_g, eu.shell_high_g) == (uk.shell_low_g, uk.shell_high_g)


@pytest.mark.parametrize(
    ("key", "whole", "yolk", "white"),
    [("eu-s", 43, 15, 28), ("eu-m", 51, 17.5, 33.5), ("eu-l", 60, 19.5, 40.5)],
)
def test_eu_planning_masses_are_those_of_the_trade(
    key: str, whole: float, yolk: float, white: float
) -> None:
    size = egg_size(key)
    assert (size.whole_g.best, size.yolk_g.best, size.white_g.best) == (whole, yolk, white)
    assert (size.whole_g.low, size.whole_g.high) == (whole - 4, whole + 4)
    assert size.status == "common practice"


def test_white_and_yolk_come_to_the_whole_of_every_size() -> None:
    for size in egg_sizes():
        assert size.white_g.best + size.yolk_g.best == pytest.approx(size.whole_g.best), size.key


def test_an_egg_weighs_less_shelled_than_its_class_allows_in_the_shell() -> None:
    for size in egg_sizes():
        if size.shell_high_g is not None:
            assert size.whole_g.best < size.shell_high_g, size.key


def test_classes_of_one_region_follow_one_another_without_overlap() -> None:
    for region in {size.region for size in egg_sizes()}:
        lows = sorted(
            (size.shell_low_g or 0.0, size.shell_high_g or 1000.0, size.whole_g.best)
            for size in egg_sizes()
            if size.region == region
        )
        for (_, high, lighter), (low, _, heavier) in itertools.pairwise(lows):
            assert high <= low + 0.1
            assert lighter < heavier


@pytest.mark.parametrize(
    ("words", "region", "keys"),
    [
        ("medium", None, ["eu-m", "us-medium"]),
        ("large", None, ["eu-l", "us-large"]),
        ("medium", "eu", ["eu-m"]),
        ("medium", "EU sizes", ["eu-m"]),
        ("EU M", None, ["eu-m"]),
        ("US Large", None, ["us-large"]),
        ("US Large", "eu", ["us-large"]),
        ("size L", "eu", ["eu-l"]),
        ("Gr. M", "eu", ["eu-m"]),
        ("Größe M", "eu", ["eu-m"]),
        ("extra large", None, ["eu-xl", "us-xl"]),
        ("jumbo", None, ["us-jumbo"]),
        ("size 7", None, ["nz-7"]),
        ("king-size", None, ["au-king"]),
        ("large free-range eggs", "au", []),
        ("UK medium", None, ["uk-m"]),
        ("golden", None, []),
        ("", None, []),
    ],
)
def test_words_of_a_size_mean_these_classes(
    words: str, region: str | None, keys: list[str]
) -> None:
    assert [size.key for size in egg_size_named(words, region)] == keys


def test_a_region_is_read_from_words_around_it() -> None:
    assert region_named("EU sizes") == "eu"
    assert region_named("eggs are US") == "us"
    assert region_named("from the neighbour") is None


def test_keys_are_read_as_people_type_them() -> None:
    assert egg_size("EU M").key == "eu-m"
    assert egg_size("us_large").key == "us-large"


def test_an_unknown_size_lists_what_may_be_typed() -> None:
    with pytest.raises(NotFoundError, match=r"Type one of eu-xl, eu-l, eu-m"):
        egg_size("ostrich")


def test_an_egg_has_three_parts_and_no_other() -> None:
    with pytest.raises(NotFoundError, match="whole, white or yolk"):
        egg_size("eu-m").part_g("shell")
