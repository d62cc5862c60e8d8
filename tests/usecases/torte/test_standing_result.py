"""`krume.usecases.torte.standing_result`: what the answer of standing holds."""

from dataclasses import fields

from krume.usecases.torte.standing_result import StandingPart, StandingResult


def test_every_word_has_its_twin_for_the_warm_room() -> None:
    for kind, names in ((StandingResult, ("verdict",)), (StandingPart, ("verdict", "low_pa"))):
        held = {each.name for each in fields(kind)}
        for name in names:
            assert {name, f"warm_{name}"} <= held
