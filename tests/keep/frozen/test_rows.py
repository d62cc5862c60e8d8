"""Which component takes freezing; what nobody knows is not known."""

import pytest

from krume.keep.frozen import frozen_figures, hardest_to_freeze, takes_freezing


@pytest.mark.parametrize(
    ("family", "takes"),
    [
        ("separated", "well"), ("set-cream", "well"), ("custard", "no"), ("jelly", "no"),
        ("custard-lightened", "some-loss"), ("cooked-white-buttercream", "well"),
    ],
)  # fmt: skip
def test_each_family_has_its_word(family: str, takes: str) -> None:
    found = takes_freezing(family, frozenset())
    assert found.takes == takes
    assert (found.frozen_days is None) == (takes == "no")
    assert found.status == "common practice"


def test_the_hardest_of_family_and_trait_wins() -> None:
    assert takes_freezing("set-cream", frozenset({"fresh-fruit"})).takes == "no"
    assert takes_freezing("set-cream", frozenset({"nuts"})).takes == "well"


def test_what_nobody_knows_is_unknown_and_of_nothing_too() -> None:
    assert takes_freezing(None, frozenset()).takes == "unknown"
    assert takes_freezing("no-such-family", frozenset({"raw-egg"})).takes == "no"
    assert hardest_to_freeze([]) == "unknown"


def test_every_figure_has_its_papers() -> None:
    assert all(figure.status and figure.source for figure in frozen_figures().values())
