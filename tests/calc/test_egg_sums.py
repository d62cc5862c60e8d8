"""Egg sums as people and checks call them."""

import pytest

from krume.base import InputError, OutOfRangeError
from krume.calc import answer, run
from krume.calc.declaring import Json
from tests.agreement import agrees


def best(values: Json) -> float:
    assert isinstance(values, dict)
    found = values["best"]
    assert isinstance(found, float)
    return found


@pytest.mark.source("usda-sr28", "portions of eggs: R41")
@pytest.mark.parametrize(
    ("size", "part", "printed"),
    [("us-large", "yolk", "17"), ("us-large", "white", "33"), ("us-large", "whole", "50"),
     ("us-medium", "whole", "44"), ("us-xl", "whole", "56"), ("us-jumbo", "whole", "63"),
     ("us-small", "whole", "38")],
)  # fmt: skip
def test_shelled_eggs_weigh_what_is_printed(size: str, part: str, printed: str) -> None:
    assert agrees(best(run("eggs-shelled", count=1, size=size, part=part)["mass_g"]), printed)


@pytest.mark.source("reference-book", "egg-count of the checks")
def test_counts_and_make_up_are_the_printed_ones() -> None:
    many = run("egg-count", mass=269.6, size="eu-m")
    assert agrees(many["count"], "5") and agrees(many["make_up_g"], "14.6")  # type: ignore[arg-type]
    few = run("egg-count", mass=195.8, size="eu-m")
    assert agrees(few["count"], "4") and agrees(few["make_up_g"], "−8.2")  # type: ignore[arg-type]


def test_an_interval_widens_with_the_count() -> None:
    found = run("eggs-shelled", count=5, size="eu-m")["mass_g"]
    assert found == {"low": 235.0, "best": 255.0, "high": 275.0}


def test_an_exact_half_egg_goes_down() -> None:
    assert run("egg-count", mass=25.5, size="eu-m") == {"count": 0, "make_up_g": 25.5}
    assert run("egg-count", mass="4.5 oz", size="US Large", part="whole")["count"] == 3


def test_sizes_are_read_as_words_too_and_what_is_unclear_is_refused() -> None:
    assert run("egg-count", mass=100, size="US Large")["count"] == 2
    with pytest.raises(InputError, match="eu-m, us-medium"):
        run("egg-count", mass=100, size="medium")
    with pytest.raises(InputError, match="no egg size"):
        run("egg-count", mass=100, size="ostrich")
    with pytest.raises(InputError, match="yolk"):
        run("egg-count", mass=100, size="eu-m", part="shell")
    with pytest.raises(OutOfRangeError):
        run("egg-count", mass=-1, size="eu-m")
    with pytest.raises(OutOfRangeError):
        run("eggs-shelled", count=-1, size="eu-m")


def test_a_size_that_is_no_published_one_says_so() -> None:
    found = answer("eggs-shelled", {"count": 1, "size": "eu-m"})
    assert "common practice" in found.notices[0].text
    assert found.sources == ("common-practice",)


@pytest.mark.source("reference-book", "twelve tortes: eggs")
def test_sixty_eggs_and_thirty_yolks_leave_1005_g_of_white() -> None:
    found = run("eggs-to-crack", whole=60, yolks=30, size="eu-m")
    assert agrees(found["eggs"], "90") and agrees(found["left_whites_g"], "1005")  # type: ignore[arg-type]
    assert found["left_yolks"] == 0.0


def test_a_yolk_and_a_white_come_from_one_egg() -> None:
    found = run("eggs-to-crack", yolks=9, whites=8)
    assert (found["eggs"], found["left_whites"], found["left_yolks"]) == (9, 1.0, 0.0)
    assert found["left_whites_g"] is None
    assert [n.code for n in answer("eggs-to-crack", {"yolks": 9}).notices] == ["egg-size-missing"]


@pytest.mark.parametrize(
    "given", [{}, {"whole": -1}, {"yolks": "many"}, {"whole": 1, "size": "medium"}]
)
def test_what_gives_no_eggs_is_refused(given: dict[str, object]) -> None:
    with pytest.raises(InputError):
        run("eggs-to-crack", **given)
