"""Findings: unusual heights, syrup outside its band, a full ring, the bend of a roll."""

from dataclasses import replace

import pytest

from krume.build import Torte
from tests.build.studio import C2, F3, demo, torte_of


def texts(torte: Torte) -> dict[str, str]:
    return {finding.code: finding.text for finding in torte.findings}


def test_a_thick_cream_says_how_much_gelatine_it_wants_and_has() -> None:
    said = texts(demo("T3"))["cream-high"]
    assert "14 mm, thicker than the usual 10" in said
    assert "gelatine of 9 to 10 g/kg, and has 9.4" in said


def test_a_thick_cream_of_unknown_gelatine_says_so() -> None:
    torte = torte_of(
        "1 layer of F1, 14 mm\n14 mm C2 on the layer", C2=replace(C2, gelatine_g_kg=None)
    )
    assert "how much it has is not known" in texts(torte)["cream-high"]


def test_a_thick_buttercream_wants_no_gelatine() -> None:
    torte = torte_of("1 layer of F1, 14 mm\n14 mm C5 on the layer")
    assert "gelatine" not in texts(torte)["cream-high"]


def test_a_usual_torte_has_no_finding() -> None:
    assert demo("T1").findings == ()


def test_a_full_ring_says_so() -> None:
    assert texts(demo("T3"))["ring-full"] == "The ring is full: 60 of 60 mm, 0 mm to spare."


@pytest.mark.parametrize(("height", "code"), [(9.9, "layer-low"), (15.1, "layer-high"), (10, None)])
def test_layers_outside_10_to_15_mm_are_a_finding(height: float, code: str | None) -> None:
    found = set(texts(torte_of(f"1 layer of F1, {height} mm")))
    assert found == (set() if code is None else {code})


@pytest.mark.parametrize(
    ("amount", "code"),
    [("0.09", "syrup-low"), ("0.21", "syrup-high"), ("0.10", None), ("0.2", None)],
)
def test_syrup_outside_its_band_is_a_finding(amount: str, code: str | None) -> None:
    torte = torte_of(f"1 layer of F1, 12 mm\n{amount} g/cm2 S1 on the layer")
    assert set(texts(torte)) == (set() if code is None else {code})


def test_the_bend_of_a_roll_is_told_as_an_upper_estimate() -> None:
    (finding,) = demo("T2").findings
    assert finding.code == "roll-bend"
    assert finding.value == pytest.approx(100 * 6 / (19 + 6))
    assert "Upper estimates" in finding.text


def test_a_thick_sheet_is_told_to_crack_with_the_nearest_that_rolls() -> None:
    thick = replace(F3, baked_height_mm=20.0)
    codes = {}
    for high in (12, 13, 16):
        torte = torte_of(f"1 sheet of F3, {high} mm, rolled from the long side", F3=thick)
        codes[high] = [f.text for f in torte.findings if f.code == "roll-crack"]
    assert codes[12] == []
    assert "it is borderline" in codes[13][0]
    assert "expect cracks" in codes[16][0] and "Nearest: 12 mm" in codes[16][0]
