"""What a person types of eggs in the house and the shop."""

import pytest

from krume.base import Problem
from krume.plan import EggStock, Liquid, read_house, read_shop


def house(text: str, region: str | None = "eu") -> EggStock | Problem:
    return read_house(text, where="--have", region=region)


@pytest.mark.parametrize(
    ("text", "size", "count"),
    [("10 EU M", "eu-m", 10), ("10 eggs, EU M", "eu-m", 10), ("6x large", "eu-l", 6),
     ("12 US Large", "us-large", 12), ("10 NZ 7", "nz-7", 10), ("٦ EU L", "eu-l", 6),
     ("8 mittel", "eu-m", 8)],
)  # fmt: skip
def test_a_count_and_a_size(text: str, size: str, count: int) -> None:
    found = house(text)
    assert isinstance(found, EggStock) and found.house == ((size, count),)


@pytest.mark.parametrize(
    ("text", "liquid"),
    [("200 g pasteurised yolk", Liquid("yolk", 200.0)),
     ("0,5 kg pasteurized egg white", Liquid("white", 500.0)),
     ("300 g sugared yolk", Liquid("yolk", 300.0, 10.0)),
     ("250 g liquid whole egg", Liquid("whole", 250.0))],
)  # fmt: skip
def test_grams_of_a_pack(text: str, liquid: Liquid) -> None:
    found = house(text)
    assert isinstance(found, EggStock) and found.liquids == (liquid,)


def test_the_sugar_of_a_pack_is_what_the_pack_says() -> None:
    found = read_house("100 g sugared yolk", where="--have", region=None, sugar_pct=8.0)
    assert isinstance(found, EggStock) and found.liquids[0].sugar_pct == 8.0


def test_a_size_of_two_rules_is_asked_with_lines_to_type() -> None:
    found = house("10 medium", region=None)
    assert isinstance(found, Problem) and found.code == "egg-size-missing"
    assert [option.line for option in found.options] == ["10 EU M", "10 US Medium"]
    assert "EU M 51 g" in found.ask


@pytest.mark.parametrize(
    "text",
    ["", "some eggs", "EU M", "ten EU M", "10 ostrich", "-3 EU M", "99999 EU M", "nan g yolk",
     "0 g pasteurised yolk", "5 g cream", "1e9 kg pasteurised white"],
)  # fmt: skip
def test_what_is_no_eggs_is_said(text: str) -> None:
    found = house(text)
    assert isinstance(found, Problem) and found.code == "eggs-unread"
    assert found.where == "--have" and "10 EU M" in found.ask


def test_the_shop_has_sizes_packs_or_nothing() -> None:
    def shop(text: str) -> EggStock | Problem:
        return read_shop(text, where="--shop", region="eu")

    assert shop("EU L") == EggStock(shop=("eu-l",))
    assert shop("none") == EggStock(shop=())
    assert shop("pasteurised white") == EggStock(shop=(), liquids=(Liquid("white", None),))
    found = shop("goose")
    assert isinstance(found, Problem) and "pasteurised white, or none" in found.ask
