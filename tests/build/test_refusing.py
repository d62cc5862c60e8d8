"""What cannot be is refused, and each clash names what there is and what is needed."""

from dataclasses import replace

import pytest

from krume.base import Clash, Infeasible
from krume.build import ComponentFormula, build_torte
from tests.build.studio import F1, PARTS, demo, plan_of, torte_of

ROLL = "\n1 sheet of F3, 12 mm, rolled from the long side"


def clashes(text: str, **changed: ComponentFormula) -> tuple[Clash, ...]:
    answer = build_torte(plan_of(f"A torte\n{text}"), {**PARTS, **changed})
    assert isinstance(answer, Infeasible)
    return answer.clashes


@pytest.mark.parametrize(
    ("text", "name", "has", "needs"),
    [
        ("\n3 layers of F1, 20 mm", "the cake of F1", "50 mm of height", "60 mm"),
        ("\n2 layers of F1, 14 mm\n1 layer of F1, 25 mm", "the cake of F1", "50 mm of height",
         "53 mm"),
        ("\n2 layers of F4, 17 mm", "the cake of F4", "32 mm of height", "34 mm"),
        ("\n1 layer of F1, 14 mm, trimmed to 24 cm", "the cake of F1", "20 cm across", "24 cm"),
        ("Ring: 18 x 6 cm\n\n1 layer of F1, 14 mm", "the ring", "18 cm across", "20 cm"),
        ("Ring: 22 x 3 cm\n\n1 layer of F1, 14 mm\n20 mm C2 on the layer", "the ring",
         "30 mm of height", "34 mm"),
        ("\n1 shell of F7\n1200 g C3 in the shell", "the shell", "25 mm of height", "27.3 mm"),
        ("\n1 sheet of F3, 14 mm, rolled from the long side", "the cake of F3", "13 mm of height",
         "14 mm"),
        (ROLL + "\n7 mm C2 on the sheet, 23 cm left free at the far edge",
         "the side that is rolled up", "22.86 cm", "more than 23 cm"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_with_its_numbers(
    text: str, name: str, has: str, needs: str
) -> None:
    (clash,) = clashes(text)
    assert (clash.name, clash.has, clash.needs) == (name, has, needs)
    assert clash.limit


def test_a_round_cake_in_a_square_frame_is_cut_round() -> None:
    (clash,) = clashes("Frame: 18 x 18 x 6 cm\n\n1 layer of F1, 14 mm")
    assert "“, trimmed to 18 cm” behind the layers" in clash.said
    assert torte_of("1 layer of F1, 14 mm, trimmed to 18 cm").mass_g


def test_layers_that_use_the_cake_to_the_last_millimetre_are_allowed() -> None:
    assert torte_of("5 layers of F1, 10 mm").height_mm == pytest.approx(50.0)


def test_layers_are_cut_from_as_many_cakes_as_there_are_tins() -> None:
    assert F1.tin is not None
    two = replace(F1, tin=replace(F1.tin, count=2))
    assert len(torte_of("4 layers of F1, 20 mm", F1=two).layers) == 4
    assert clashes("\n2 layers of F1, 30 mm\n2 layers of F1, 25 mm", F1=two)


def test_two_flat_sheets_are_two_bakes() -> None:
    torte = torte_of("2 sheets of F3, 12 mm")
    assert (torte.batches[0].batches, torte.batches[0].made_g) == (2.0, 716.0)


def test_a_ring_that_is_just_full_holds() -> None:
    assert demo("T3").ring_spare_mm == pytest.approx(0.0)


def test_a_coat_goes_on_when_the_ring_is_off() -> None:
    torte = torte_of("2 layers of F4, 12 mm\n4 mm C5 around and on top")
    ringed = build_torte(
        plan_of("A\nRing: 22 x 2.4 cm\n\n2 layers of F4, 12 mm\n4 mm C5 around and on top"), PARTS
    )
    assert not isinstance(ringed, Infeasible)
    assert ringed.value.mass_g == pytest.approx(torte.mass_g)
