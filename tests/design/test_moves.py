"""What a step is about, in the words bakers use."""

import pytest

from krume.design.moves import kinds_in, move_of


def kind(step: str, words: str = "") -> str:
    return move_of(step, words=words, name="").kind


@pytest.mark.parametrize(
    ("step", "about"),
    [
        ("Soak the gelatine in the water 10 minutes.", "soak"),
        ("Gelatine einweichen.", "soak"),
        ("Sift the flours with the xanthan twice.", "sift"),
        ("Weigh the five flours into one bowl, sift twice.", "sift"),
        ("Mehl und Stärke zweimal sieben.", "sift"),
        ("Beat the yolks with 60 g of the sugar.", "yolks"),
        ("Stir the yolks with the sugar.", "yolks"),
        ("Eigelb mit Zucker schaumig schlagen.", "yolks"),
        ("Whisk the whites with the salt to soft peaks.", "whites"),
        ("Eiweiß steif schlagen.", "whites"),
        ("Warm white and sugar over water to 71 C, stirring.", "warm whites"),
        ("Cream butter and sugar 6 minutes.", "cream butter"),
        ("Butter cremig rühren.", "cream butter"),
        ("Rub butter into the dry mix, bind with the egg.", "rub"),
        ("Melt the butter and keep it at 40 C.", "melt"),
        ("Whip the cream to soft peaks and fold in at 18 to 20 C.", "whip cream"),
        ("Fold in the cream whipped to soft peaks.", "whip cream"),
        ("Boil milk, yolks, sugar, starch and salt, stirring.", "boil"),
        ("Milch aufkochen.", "boil"),
        ("Toast the walnuts at 150 C for 8 minutes, grind them.", "nuts"),
        ("Whisk the eggs and the sugar until thick.", "eggs"),
        ("Off the heat stir in butter and gelatine.", "other"),
        ("Fold a third of the whites into the yolks, then the rest.", "other"),
        ("Roll loosely while warm.", "other"),
        ("Add the white rice flour.", "other"),
    ],
)
def test_a_step_is_about_one_thing(step: str, about: str) -> None:
    assert kind(step) == about


def test_a_mention_belongs_to_its_own_sentence() -> None:
    step = "Melt the butter. Whisk the whites with 75 g sugar."
    assert kind(step, "butter") == "melt"
    assert kind(step, "75 g sugar") == "whites"


def test_in_one_sentence_a_mention_belongs_to_the_egg_named_last_before_it() -> None:
    step = "Whisk the yolks with 30 g sugar and beat the whites with 50 g sugar."
    assert (kind(step, "30 g sugar"), kind(step, "50 g sugar")) == ("yolks", "whites")
    assert kinds_in(step) == {"yolks", "whites"}


def test_a_mention_before_either_egg_belongs_to_the_first_named() -> None:
    assert kind("With 30 g sugar whisk the yolks, then the whites.", "30 g sugar") == "yolks"


def test_what_follows_then_comes_in_later() -> None:
    step = "Beat the yolks with 40 g of the sugar, then the oil."
    assert not move_of(step, words="40 g of the sugar", name="").is_late
    assert move_of(step, words="oil", name="").is_late


def test_a_decimal_point_does_not_end_a_sentence() -> None:
    step = "Whisk the whites with 0.75 g salt and 60.5 g sugar."
    assert move_of(step, words="60.5 g sugar", name="").sentence == step


def test_words_that_are_not_there_are_looked_for_by_the_name_and_its_last_word() -> None:
    step = "Melt the butter. Beat the yolks with the juice."
    assert move_of(step, words="", name="lemon juice").kind == "yolks"
    assert move_of(step, words="nowhere", name="nothing").kind == "melt"


def test_a_step_of_a_hundred_thousand_letters_is_looked_at_once() -> None:
    step = "stir the white rice flour and heat " * 3000
    assert kind(step, "flour") == "boil"
