"""Tiers: heights and boards add up, masses are those of the tortes, supports are told."""

import pytest

from krume.base import Infeasible
from krume.build import Torte, build_torte, cross_section, side_view
from tests.build.studio import PARTS, demo, plan_of, torte_of, tree

SMALL = torte_of("2 discs of F1, 14 mm, trimmed to 14 cm\n8 mm C1 between the layers")
TORTES = {"T1": demo("T1"), "T3": demo("T3"), "SMALL": SMALL, "T2": demo("T2")}


def tiers_of(text: str) -> Torte:
    """A torte of tiers about which nothing is asked."""
    read = build_torte(plan_of(f"A\n\n{text}"), PARTS, TORTES)
    assert not isinstance(read, Infeasible), read
    assert read.problems == (), read.problems
    return read.value


def test_heights_masses_and_cakes_are_those_of_the_tiers_and_the_board() -> None:
    torte = tiers_of("1 tier of T3\n1 tier of SMALL\n10 x 6 g C5 on top, piped")
    assert torte.height_mm == pytest.approx(60 + 3 + 36)
    assert torte.mass_g == pytest.approx(TORTES["T3"].mass_g + SMALL.mass_g + 60)  # type: ignore[operator]
    assert sum(x.mass_g or 0 for x in torte.layers) == pytest.approx(torte.mass_g)
    assert [tier.bottom_mm for tier in torte.tiers] == [0.0, 63.0]
    assert {b.name: b.batches for b in torte.batches if b.kind == "cake"} == {"F4": 1.0, "F1": 1.0}


def test_supports_are_told_with_what_stands_on_them() -> None:
    torte = tiers_of("1 tier of T3\n1 tier of SMALL")
    (said,) = [each for each in torte.findings if each.code == "tier-supports"]
    assert said.value == SMALL.mass_g
    assert "supports of 60 mm" in said.text


def test_the_surface_of_tiers_is_what_shows() -> None:
    torte = tiers_of("1 tier of T3\n1 tier of SMALL")
    assert torte.skin is not None
    assert torte.skin.top_cm2 == pytest.approx(3.14159265 / 4 * 22**2)


def test_a_wider_tier_on_a_narrower_one_is_refused() -> None:
    answer = build_torte(plan_of("A\n\n1 tier of SMALL\n1 tier of T3"), PARTS, TORTES)
    assert isinstance(answer, Infeasible)
    assert "wider torte first" in answer.clashes[0].said


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("1 tier of T3\n1 tier of T9", "tier-missing"),
        ("1 tier of T3\n1 tier of T2", "tier-kind"),
        ("1 tier of T3\n4 mm C5 around and on top", "not-on-tiers"),
        ("1 tier of T3\n1 layer of F1, 14 mm", "tier-beside-layer"),
    ],
)
def test_what_cannot_stand_as_a_tier_is_asked(text: str, code: str) -> None:
    read = build_torte(plan_of(f"A\n\n{text}"), PARTS, TORTES)
    assert not isinstance(read, Infeasible)
    assert code in [problem.code for problem in read.problems]
    assert read.value.mass_g is None


def test_tiers_are_drawn_each_on_its_board() -> None:
    torte = tiers_of("1 tier of T3\n1 tier of SMALL")
    assert tree(cross_section(torte)) is not None
    assert tree(side_view(torte)) is not None
