"""What a blend holds, summed by hand from the table's own rows."""

import pytest

from krume.base import InputError
from krume.calc import answer

BLEND = "white rice flour:40,teff flour:20,potato starch:30,sweet rice flour:9,maize starch:6"


def test_a_blend_holds_the_mean_of_its_flours_by_mass() -> None:
    values = answer("blend-composition", {"parts": BLEND}).values
    protein = (40 * 5.95 + 20 * 13.3 + 30 * 0.0 + 9 * 6.3 + 6 * 0.26) / 105
    fibre = (40 * 2.4 + 20 * 8.0 + 30 * 0.55 + 9 * 0.5 + 6 * 0.9) / 105
    assert values["protein_g"] == pytest.approx(protein)
    assert values["fibre_g"] == pytest.approx(fibre)
    assert values["starch_pct"] == pytest.approx(100 * 36 / 105)
    assert values["sweet_rice_pct"] == pytest.approx(100 * 9 / 105)


def test_grams_may_be_any_mass_and_keys_serve_as_names() -> None:
    one = answer("blend-composition", {"parts": "flour-rice-white:1kg,starch-corn:500"}).values
    two = answer("blend-composition", {"parts": ["white rice flour:2", "maize starch:1"]}).values
    assert one["total_g"] == 1500
    assert one["fat_g"] == pytest.approx(two["fat_g"])


def test_what_is_not_known_of_one_is_not_known_of_all() -> None:
    found = answer("blend-composition", {"parts": "white rice flour:46,psyllium husk powder:3"})
    assert found.values["protein_g"] is None
    assert found.values["starch_pct"] == 0
    assert "composition-blank" in [notice.code for notice in found.notices]


@pytest.mark.parametrize(
    "parts",
    ["white rice flour", "rice flour:40", "blarg:40", "white rice flour:0", "teff flour:-1"],
)
def test_a_part_that_cannot_be_used_is_refused(parts: str) -> None:
    with pytest.raises(InputError):
        answer("blend-composition", {"parts": parts})
