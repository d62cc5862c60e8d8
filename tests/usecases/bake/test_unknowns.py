"""What one reading or one more bake would leave of the minutes."""

import pytest

from krume.bake import Batter, Oven
from krume.usecases import Asked, BakeUnknown, BakeWish, bake_with_more
from krume.usecases.bake.unknowns import _steps

BATTER = Batter(500, 0.48, 0.4, 0.08, 0.1, 0.4, 0.01, 0.01, 0.25)


@pytest.fixture(scope="module")
def unknowns(tmp_path_factory: pytest.TempPathFactory) -> dict[str, BakeUnknown]:
    text = (
        "Plain sponge\nTin: round 20 x 7 cm\nOven: 170 C\nFamily: separated\n\n"
        "100 g white rice flour\n5 eggs, EU M, separated\n120 g caster sugar\n\nFold, bake.\n"
    )
    folder = tmp_path_factory.mktemp("unknowns")
    (folder / "plain.txt").write_text(text, encoding="utf-8")
    asked = Asked(book=folder / "book")
    found = bake_with_more(str(folder / "plain.txt"), BakeWish(doubt=True), asked).result
    return {each.key: each for each in found.unknowns}


def test_one_timed_bake_narrows_an_unknown_oven_most(unknowns: dict[str, BakeUnknown]) -> None:
    spans = {key: each.then_min for key, each in unknowns.items() if each.then_min}
    widths = {key: span.high - span.low for key, span in spans.items()}
    assert set(widths) == {"oven-heat", "oven-temperature", "density"}
    assert min(widths, key=lambda key: widths[key]) == "oven-heat"
    assert next(iter(unknowns)) == "oven-heat"
    assert unknowns["oven-heat"].narrows
    assert not unknowns["crust"].narrows and unknowns["crust"].then_min is None


def test_what_is_known_already_is_not_advised_again() -> None:
    calm = Oven(170.0, ln_heat_sd=0.07, temp_half_width_c=2.0)
    assert [key for key, _, _ in _steps(BATTER, calm)] == ["density"]
    assert len(_steps(BATTER, Oven(170.0))) == 3
