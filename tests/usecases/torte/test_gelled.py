"""What sets a cream is read from its lines: grams, strength, water, spirit."""

import pytest

from krume.design import read
from krume.usecases.torte.gelled import bloom_of, gel_of


def test_the_demo_cream_is_set_by_gelatine_of_its_written_strength() -> None:
    text = "Cream\n\n300 g whole milk\n8 g powdered gelatine, 200 bloom\n40 g water\n60 g rum\n"
    gel = gel_of(read(text).value)
    assert gel is not None
    assert (gel.key, gel.mass_g, gel.strength_bloom, gel.is_leaf, gel.has_liquid) == (
        "gelatine",
        8.0,
        200.0,
        False,
        True,
    )
    assert gel.spirit_g == 60.0
    assert gel.alcohol_g == pytest.approx(60 * 0.334, rel=0.02)


def test_a_spirit_stronger_than_the_pantrys_has_alcohol_nobody_knows() -> None:
    text = "Grog\n\n40 g water\n8 g powdered gelatine, 200 bloom\n200 g rum, 54 % vol\n"
    gel = gel_of(read(text).value)
    assert gel is not None
    assert gel.alcohol_g is None and gel.spirit_g == 200.0


def test_a_powder_among_dry_things_has_nothing_to_bloom_in() -> None:
    gel = gel_of(read("Dust\n\n100 g icing sugar\n8 g powdered gelatine, 200 bloom\n").value)
    assert gel is not None and not gel.has_liquid


@pytest.mark.parametrize(
    ("words", "bloom"),
    [
        ("8 g gelatine, 180 bloom", 180.0),
        ("4 sheets gold gelatine", 200.0),
        ("8 g gelatine", None),
        ("8 g gelatine, 900 bloom", None),
    ],
)
def test_a_strength_is_read_by_number_or_by_grade(words: str, bloom: float | None) -> None:
    assert bloom_of(words) == bloom


def test_a_jam_of_agar_is_known_and_a_plain_syrup_is_set_by_nothing() -> None:
    found = gel_of(read("Jelly\n\n500 g water\n5 g agar\n").value)
    assert found is not None and found.key == "agar"
    assert gel_of(read("Syrup\n\n500 g water\n500 g caster sugar\n").value) is None
