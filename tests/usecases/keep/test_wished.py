"""How long it keeps with freezing, the road and a heating asked beside."""

import pytest

from krume.base import InputError, NotFoundError, OutOfRangeError
from krume.usecases import Asked, KeepWish, keep_wished

COVERS = ["cold_body", "frozen_way", "heated", "road_way"]


def test_nothing_is_asked_and_nothing_more_is_answered(demo: Asked) -> None:
    found = keep_wished("T1", KeepWish(), demo).result
    assert (found.freezing, found.road, found.heat) == ((), (), None)
    assert [place.place for place in found.places] == ["uk", "uk", "eu"]


def test_a_torte_takes_freezing_as_its_hardest_component_does(demo: Asked) -> None:
    (t1,) = keep_wished("T1", KeepWish(freeze=True), demo).result.freezing
    (t3,) = keep_wished("T3", KeepWish(freeze=True), demo).result.freezing
    assert t1.takes == "some-loss"
    assert {part.name: part.takes for part in t3.parts}["C4"] == "no"
    assert t3.takes == "no"
    assert t1.freeze_h is not None
    assert t1.thaw_h is not None
    assert t1.freeze_h.high <= t1.thaw_h.high


def test_an_order_is_taken_out_before_its_own_hand_over(demo: Asked) -> None:
    (found,) = keep_wished("101", KeepWish(freeze=True), demo).result.freezing
    assert found.ready is not None
    assert found.take_out is not None
    assert found.thaw_h is not None
    hours = (found.ready - found.take_out).total_seconds() / 3600
    assert hours >= found.thaw_h.high
    assert 7 <= found.take_out.hour <= 21
    assert any("out of the freezer into the fridge by Friday" in line for line in found.lines)


def test_of_a_cream_no_hours_are_predicted_and_why_is_said(demo: Asked) -> None:
    (found,) = keep_wished("C2", KeepWish(freeze=True), demo).result.freezing
    assert (found.freeze_h, found.thaw_h) == (None, None)
    assert "Its shape is not known" in found.unknown
    assert found.takes == "well"


def test_the_road_of_an_order_is_its_own_drive_and_its_verdict_stays_not_shown(
    demo: Asked,
) -> None:
    (found,) = keep_wished("101", KeepWish(outside_c=30.0), demo).result.road
    assert found.minutes == 35
    assert found.verdict == "not-shown"
    assert found.predicted == "over"
    assert found.counts_min == 35
    assert found.limit_min == 240
    assert found.warmest_c is not None
    assert found.warmest_c.high <= 31
    assert any("two readings" in line for line in found.lines)


def test_readings_may_stand_with_spaces_or_commas_between(demo: Asked) -> None:
    texts = ("0=20, 6=62, 8=63", "0=20 6=62 8=63", "0 = 20; 6 min = 62 °C, 8=63", "0:20,6:62,8:63")
    found = [keep_wished("C1", KeepWish(heat=text), demo).result.heat for text in texts]
    assert len({each.text for each in found if each is not None}) == 1


def test_a_road_without_minutes_is_asked(demo: Asked) -> None:
    with pytest.raises(InputError, match="How many minutes"):
        keep_wished("T1", KeepWish(outside_c=30.0), demo)


def test_a_heating_is_information_about_the_cream_alone(demo: Asked) -> None:
    wish = KeepWish(heat="0=20, 6=62, 8=63 C, 8.5 = 63")
    found = keep_wished("T1", wish, demo).result.heat
    assert found is not None
    assert found.of == ("C1", "C5")
    assert found.is_more or found.log_reduction_count > 0
    assert "no promise" in found.text
    kept = keep_wished("T1", wish, demo).result
    assert kept.cold_hours == keep_wished("T1", KeepWish(), demo).result.cold_hours


@pytest.mark.parametrize(
    ("wish", "error", "words"),
    [
        (KeepWish(heat="hot"), InputError, "is no reading"),
        (KeepWish(heat="0=20, 6"), InputError, "is no reading"),
        (KeepWish(heat="6=70, 0=20"), OutOfRangeError, "the times of a log rise"),
        (KeepWish(freezer_c=-3.0), OutOfRangeError, "A freezer is asked about"),
        (KeepWish(road_min=-5.0), OutOfRangeError, "The road is asked about"),
        (KeepWish(road_min=30.0, packs_g=-1.0), OutOfRangeError, "asked about from 0"),
        (KeepWish(road_min=30.0, box="basket"), NotFoundError, "Type one of"),
        (KeepWish(freeze=True, ready="2027-06-01 10:00"), InputError, "is before"),
    ],
)
def test_what_cannot_be_is_refused_in_words(
    demo: Asked, wish: KeepWish, error: type[Exception], words: str
) -> None:
    with pytest.raises(error, match=words):
        keep_wished("T1", wish, demo)


@pytest.mark.parametrize("name", ["T2", "T3", "F1"])
def test_no_line_calls_anything_safe_and_every_prediction_says_it_is_none(
    demo: Asked, name: str
) -> None:
    wish = KeepWish(freeze=True, road_min=40.0, outside_c=28.0, packs_g=400.0, box="foam")
    found = keep_wished(name, wish, demo).result
    lines = [*found.freezing[0].lines, *found.road[0].lines]
    assert "safe" not in " ".join(lines).casefold()
    assert any("no evidence" in line for line in found.freezing[0].lines)
    assert any("no evidence" in line for line in found.road[0].lines)


def test_what_nobody_knows_is_not_predicted(bare: Asked) -> None:
    typed = Asked(book=bare.book, typed=b"Blue wobble\n\n100 g wobble\n3 g salt\n")
    found = keep_wished("-", KeepWish(freeze=True, road_min=30.0), typed).result
    assert found.freezing[0].takes == "unknown"
    assert found.freezing[0].unknown
    assert found.road[0].predicted == "unknown"
    assert found.road[0].counts_min == 30
