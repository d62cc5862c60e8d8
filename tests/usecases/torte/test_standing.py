"""`krume.usecases.torte.standing`: how the demo studio's tortes stand, in sentences."""

from pathlib import Path

import pytest

from krume.usecases import Asked, StandingResult
from krume.usecases.torte.build import torte_of
from krume.usecases.torte.standing import standing_of


def stands(demo: Asked, name: str) -> StandingResult:
    found = standing_of(torte_of(name, demo))
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("name", "cold", "warm"),
    [
        ("T1", "firm enough", "borderline"),
        ("T2", "firm enough", "borderline"),
        ("T3", "borderline", "borderline"),
        ("TART", "firm enough", "firm enough"),
    ],
)
def test_the_demo_tortes_stand(demo: Asked, name: str, cold: str, warm: str) -> None:
    found = stands(demo, name)
    assert (found.verdict, found.warm_verdict) == (cold, warm)
    assert found.lines[0] == f"In the cold: {cold}. At 25 °C: {warm}."


def test_a_jelly_is_judged_by_its_gelatine_of_a_litre(demo: Asked) -> None:
    jelly = stands(demo, "T3").parts[-1]
    assert jelly.of == "C4"
    assert jelly.verdict == "firm enough"
    assert jelly.low_pa == pytest.approx(80 * (13.85 / 1.08 / 12) ** 1.8, rel=0.02)


def test_a_sentence_carries_its_numbers_and_their_status(demo: Asked) -> None:
    text = stands(demo, "T1").parts[0].text
    for words in ("firm enough", "674 g", "72 Pa", "170 to 710 Pa", "(assumed)", "At 25 °C"):
        assert words in text


def test_no_word_promises_that_it_is_safe(demo: Asked) -> None:
    found = stands(demo, "T3")
    said = " ".join((*found.lines, found.caution, *(part.text for part in found.parts)))
    assert "safe" not in said.casefold()


def test_what_cannot_be_built_does_not_stand(demo: Asked, tmp_path: Path) -> None:
    file = tmp_path / "high.txt"
    file.write_text("High\n\n3 layers of F1, 20 mm\n", encoding="utf-8")
    assert standing_of(torte_of(str(file), demo)) is None


def test_a_cream_without_gelatine_is_whipped_cream(demo: Asked, tmp_path: Path) -> None:
    cream = "Soft\nFamily: set-cream\nDensity: 0.5 g/ml\n\n"
    cream += "500 g whipping cream, 35 % fat\n40 g caster sugar\n"
    (tmp_path / "K9.txt").write_text(cream, encoding="utf-8")
    torte = tmp_path / "soft.txt"
    torte.write_text(
        "Soft torte\nSlices: 12\n\n2 layers of F1, 14 mm\n10 mm K9 between the layers\n",
        encoding="utf-8",
    )
    found = stands(demo, str(torte))
    assert found.parts[0].low_pa == 30
    assert "borderline" in found.parts[0].verdict
    assert "paper collar" in found.lines[1]


def test_set_chocolate_is_no_cream_and_tiers_are_judged_one_by_one(
    demo: Asked, tmp_path: Path
) -> None:
    (tmp_path / "K2.txt").write_text(
        "Brush\nDensity: 1.3 g/ml\n\n100 g dark chocolate, 60 %\n", encoding="utf-8"
    )
    tart = tmp_path / "choc.txt"
    tart.write_text(
        "Choc\nSlices: 10\n\n1 shell of F7\n40 g K2 in the shell\n380 g C3 in the shell\n",
        encoding="utf-8",
    )
    assert [part.of for part in stands(demo, str(tart)).parts] == ["C3"]
    tiers = tmp_path / "tiers.txt"
    tiers.write_text("Two\nSlices: 30\n\ntier of T3\ntier of T1\n", encoding="utf-8")
    found = stands(demo, str(tiers))
    assert found.verdict == "borderline"
    assert {part.name.partition(":")[0] for part in found.parts} == {"Tier 1", "Tier 2"}
    assert any("supports and a board of its own" in line for line in found.lines)
