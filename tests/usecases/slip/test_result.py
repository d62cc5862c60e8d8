"""The answer of the slip job as plain values."""

from collections.abc import Callable

import pytest

from krume.usecases import Asked, SlipWish, rescue_slip
from krume.usecases.asking.as_json import plain
from tests.usecases.slip.test_slip import SLIP


def test_every_way_can_be_checked_again_from_its_own_grams(demo: Asked) -> None:
    result = rescue_slip("F2", SlipWish(SLIP), demo).result
    for way in result.ways:
        assert way.total_g == pytest.approx(sum(line.mass_g for line in way.lines))
        assert len(way.card) == 11
        flour = sum(line.mass_g or 0 for line in way.card[:5])
        assert way.percent["egg"] == pytest.approx(100 * (way.card[5].mass_g or 0) / flour)


def test_a_finding_carries_its_band(demo: Asked) -> None:
    hold = rescue_slip("F2", SlipWish(SLIP), demo).result.options[2]
    (finding,) = hold.findings
    assert (finding.code, finding.low, finding.high) == ("starch-low", 30.0, 50.0)
    assert not hold.in_band


def test_an_answer_has_a_plain_form_and_names_what_is_declined(demo: Asked) -> None:
    result = rescue_slip("F6", SlipWish(("white rice=66",)), demo).result
    found = plain(result)
    assert isinstance(found, dict)
    assert found["declined"]
    assert result.declined[0].kind == "second"


def test_a_question_leaves_the_ways_out(demo: Asked) -> None:
    result = rescue_slip("F2", SlipWish(("starch=33",)), demo).result
    assert (result.options, result.more) == ((), ())


def test_in_band_is_not_known_where_a_figure_is_not(
    demo: Asked, write: Callable[[str], str]
) -> None:
    text = "Open\nFamily: separated\n\n100 g white rice flour\n5 eggs, EU M\n130 g caster sugar\n"
    slipped = SlipWish(("sugar=140",))
    closed = rescue_slip(write(text), slipped, demo).result.options[0]
    assert (closed.in_band, closed.unknown) == (True, ())
    open_ = rescue_slip(write(text + "some butter\n"), slipped, demo).result.options
    assert {each.unknown for each in open_} == {("Added fat",)}
    assert True not in {each.in_band for each in open_}
