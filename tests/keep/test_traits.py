"""What a formula's lines and steps say of egg, cream, fruit, spirit, nuts and hot sugar."""

import pytest

from krume.design import read
from krume.keep import traits
from krume.label import family_key


def of(text: str) -> frozenset[str]:
    """Traits of a typed formula."""
    formula = read(text, eggs_region="eu").value
    return traits(formula, family_key(formula))


EGG_CREAM = "Cream\nFamily: set-cream\n\n200 g whipping cream\n2 egg yolks, EU M\n20 g sugar\n\n"


@pytest.mark.parametrize(
    ("steps", "trait"),
    [
        ("Whip it all and fold.", "raw-egg"),
        ("Warm the yolks to 60 C, then whip.", "raw-egg"),
        ("Do not boil the yolks.", "raw-egg"),
        ("Warm the yolks to 71 C, stirring.", "heated-egg"),
        ("Warm the yolks to 160 F, stirring.", "heated-egg"),
        ("Boil the yolks with the milk.", "heated-egg"),
        ("", "egg-heat-unknown"),
    ],
)
def test_how_the_egg_was_treated_is_what_the_steps_say(steps: str, trait: str) -> None:
    found = of(EGG_CREAM + steps)
    assert trait in found
    assert len(found & {"raw-egg", "heated-egg", "egg-heat-unknown"}) == 1


def test_pasteurised_egg_is_heated_egg() -> None:
    assert "heated-egg" in of("Cream\nFamily: set-cream\n\n50 g pasteurised egg white\n\nWhip.")


def test_a_bake_heats_its_egg_and_its_batter_is_not_for_tasting() -> None:
    found = of("Sponge\nFamily: separated\n\n5 eggs, EU M\n100 g rice flour, white\n100 g sugar\n")
    assert {"heated-egg", "raw-batter"} <= found


@pytest.mark.parametrize(
    ("line", "trait"),
    [
        ("10 g honey", "honey"),
        ("20 g rum, 40 %", "alcohol"),
        ("8 g powdered gelatine", "gelatine"),
        ("40 g ground hazelnuts", "nuts"),
        ("40 g buckwheat flour", "buckwheat"),
    ],
)
def test_goods_that_must_be_spoken_of_are_seen(line: str, trait: str) -> None:
    plain = "Cream\nFamily: set-cream\n\n200 g whipping cream\n"
    assert trait not in of(plain)
    assert trait in of(f"{plain}{line}\n")


def test_cream_that_nothing_sets_is_told_from_set_cream() -> None:
    loose = "Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n\nWhip it."
    assert "whipped-cream" in of(loose)
    assert "whipped-cream" not in of(loose.replace("\n\nWhip", "\n8 g powdered gelatine\n\nWhip"))


def test_raw_fruit_counts_until_it_is_boiled() -> None:
    text = "Mousse\nFamily: fruit-mousse\n\n300 g strawberries\n200 g whipping cream\n\n"
    assert "fresh-fruit" in of(f"{text}Crush and fold.")
    assert "fresh-fruit" not in of(f"{text}Boil the fruit, cool, fold.")


@pytest.mark.parametrize(
    ("step", "is_hot"),
    [
        ("Boil sugar and water to 118 C.", True),
        ("Make a caramel.", True),
        ("Beat the yolks with the sugar.", False),
        ("Toast the nuts at 150 C and grind with the sugar.", False),
    ],
)
def test_hot_sugar_is_told(step: str, is_hot: bool) -> None:
    text = "Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n\n"
    assert ("hot-sugar" in of(text + step)) is is_hot
