"""What the page of a keeping shows: nothing predicted unasked, differences of what is in it."""

from krume.usecases import Asked, KeepWish, differences_of, keep_shown


def test_nothing_is_predicted_unasked(demo: Asked) -> None:
    found = keep_shown("T1", KeepWish(), demo).result
    assert (found.cooling, found.freezing, found.road) == (None, (), ())
    asked = keep_shown("T1", KeepWish(freeze=True), demo).result
    assert asked.freezing
    assert asked.cold_hours == found.cold_hours


def test_differences_are_those_of_what_is_in_it(demo: Asked) -> None:
    assert [each.of for each in differences_of("T1", demo)] == ["sponge", "custard", "gelatine"]
    assert [each.of for each in differences_of("TART", demo)] == []
    assert [each.of for each in differences_of("C2", demo)] == ["gelatine"]
