"""A cream for a ring: litres, grams, whole cartons, and what is asked or refused."""

from dataclasses import replace

import pytest

from krume.usecases import Asked, FillWish, fill_ring

WISH = FillWish("24 x 6 cm")


def test_a_ring_wants_its_volume_and_whole_cartons(demo: Asked) -> None:
    found = fill_ring("C2", replace(WISH, discs=("2 x 22 cm x 12 mm",)), demo).result
    assert found.cream_ml == pytest.approx(2714.34 - 912.32, abs=0.02)
    assert found.needed_g == pytest.approx((found.cream_ml or 0) * 0.72)
    (cream,) = found.cartons
    assert cream.cartons * cream.carton_ml == pytest.approx(cream.needed_ml + cream.left_ml)
    assert 0 <= cream.left_ml < cream.carton_ml
    masses = [line.mass_g or 0.0 for line in found.lines]
    assert sum(masses) == pytest.approx(found.made_g, rel=1e-6)


def test_waste_is_made_beside_what_goes_in(demo: Asked) -> None:
    found = fill_ring("C2", replace(WISH, waste_pct=10.0), demo).result
    assert found.made_g == pytest.approx((found.needed_g or 0) / 0.9)
    assert found.waste_g == pytest.approx((found.made_g or 0) * 0.1)


def test_gelatine_is_told_for_what_is_made(demo: Asked) -> None:
    found = fill_ring("C2", WISH, demo).result
    (gel,) = found.gels
    assert gel.mass_g == pytest.approx(8.0 * (found.factor or 0))


@pytest.mark.parametrize(
    ("name", "wish", "code", "exit_code"),
    [
        ("S1", FillWish("24 x 6 cm"), "density-missing", 3),
        ("C2", FillWish("24"), "ring-height-missing", 3),
        ("C2", FillWish("24 x 6 cm", ("big",)), "disc-unread", 3),
        ("C2", FillWish("24 x 6 cm", high_mm=70.0), "fill-height", 3),
        ("C2", FillWish("24 x 6 cm", high_mm=-3.0), "fill-height", 3),
        ("C2", FillWish("24 x 6 cm", carton_ml=0.0), "carton-unread", 3),
        ("C2", FillWish("24 x 6 cm", waste_pct=80.0), "waste-unread", 3),
        ("C2", FillWish("24 x 6 cm", ("1 x 25 cm x 12 mm",)), "limits-clash", 4),
        ("C2", FillWish("24 x 2 cm", ("2 x 20 cm x 12 mm",)), "limits-clash", 4),
    ],
)
def test_what_cannot_be_filled_is_asked_or_refused(
    demo: Asked, name: str, wish: FillWish, code: str, exit_code: int
) -> None:
    answer = fill_ring(name, wish, demo)
    assert code in [problem.code for problem in answer.problems]
    assert answer.exit_code == exit_code
    assert answer.result.cream_ml is None
