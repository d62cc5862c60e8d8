"""Which bowl a line goes into: what the steps say first, else the kind of ingredient."""

import pytest

from krume.design import Weighing, weigh_out
from tests.design.studio import C1, C2, F3, F4, Named, eggs, formula, item


def bowl_of(weighing: Weighing, take: str) -> list[str]:
    return [row.bowl for row in weighing.rows if row.take == take]


def test_what_comes_into_the_yolks_later_waits_in_a_cup_of_its_own() -> None:
    weighing = weigh_out(F3)
    assert bowl_of(weighing, "sunflower oil") == ["liquid"]
    assert bowl_of(weighing, "lemon juice") == ["liquid", "white"]
    assert [row.add_g for row in weighing.rows if row.take == "lemon juice"] == [6, 4]


def test_nuts_ground_with_sugar_have_their_own_bowl_before_the_flours() -> None:
    weighing = weigh_out(F4)
    first = [row for row in weighing.rows if row.bowl == "nut" and row.kind == "add"]
    assert [(row.take, row.display_g) for row in first] == [
        ("ground walnuts", 115),
        ("caster sugar", 145),
    ]
    assert bowl_of(weighing, "potato starch") == ["dry"]
    assert [row.bowl for row in weighing.rows].index("nut") == 0


def test_yolks_that_are_boiled_go_into_the_pot_last_and_the_butter_waits() -> None:
    pot = [row for row in weigh_out(C1).rows if row.bowl == "pot"]
    assert pot[-1].take == "5 egg yolks"
    assert pot[-2].take == "Pot again: set the scale to 0"
    assert bowl_of(weigh_out(C1), "butter") == ["butter"]


def test_water_no_step_names_soaks_the_gelatine() -> None:
    assert bowl_of(weigh_out(C2), "water") == ["gelatine"]
    assert bowl_of(weigh_out(C2), "lemon juice") == ["dairy"]


def test_a_creamed_cake_has_butter_bowl_egg_bowl_and_liquid_cup() -> None:
    made = formula(
        "Harbour butter sponge",
        (
            item(150, "butter, soft"),
            item(150, "caster sugar"),
            eggs(3),
            item(64, "white rice flour"),
            item(4.8, "baking powder"),
            item(30, "milk"),
            item(4, "vanilla extract"),
            item(1.5, "fine salt"),
        ),
        (
            "All at 20 to 22 C. Cream butter and sugar 6 minutes.",
            "Add the eggs one by one, a spoon of flour with the last.",
            "Stir in the dry mix and the milk in two turns.",
        ),
        (
            Named(0, "butter"),
            Named(0, "caster sugar", words="sugar"),
            Named(1, "eggs"),
            Named(1, "white rice flour", words="flour"),
            Named(2, "milk"),
        ),
        family="butter",
    )
    weighing = weigh_out(made)
    butter = [row.take for row in weighing.rows if row.bowl == "butter" and row.kind == "add"]
    assert butter == ["butter, soft", "caster sugar"]
    assert bowl_of(weighing, "3 eggs") == ["egg"]
    assert bowl_of(weighing, "vanilla extract") == bowl_of(weighing, "milk") == ["liquid"]
    assert bowl_of(weighing, "fine salt") == bowl_of(weighing, "white rice flour") == ["dry"]


def test_butter_rubbed_into_the_dry_mix_is_weighed_apart_and_the_sugar_with_the_flour() -> None:
    made = formula(
        "Buckwheat tart base",
        (
            item(100, "white rice flour"),
            item(110, "cold butter"),
            item(65, "icing sugar"),
            eggs(1),
            item(4, "psyllium husk powder"),
        ),
        ("Rub butter into the dry mix, bind with the egg, rest cold 1 hour.",),
        (Named(0, "cold butter", words="butter"), Named(0, "eggs", words="egg")),
        family="tart",
    )
    weighing = weigh_out(made)
    assert bowl_of(weighing, "icing sugar") == bowl_of(weighing, "psyllium husk powder") == ["dry"]
    assert bowl_of(weighing, "cold butter") == ["butter"]
    assert bowl_of(weighing, "1 egg") == ["egg"]


def test_melted_butter_is_weighed_into_a_pot_of_its_own() -> None:
    made = formula(
        "Vanilla sponge",
        (item(40, "white rice flour"), item(20, "butter, melted"), eggs(2, note="separated")),
        ("Melt the butter and keep it at 40 C.", "Fold in the butter last."),
        (Named(0, "butter"), Named(1, "butter")),
    )
    assert bowl_of(weigh_out(made), "butter, melted") == ["fat"]


def test_german_steps_find_the_same_bowls() -> None:
    made = formula(
        "Haselbiskuit",
        (
            item(60, "Buchweizenmehl"),
            eggs(4, note="getrennt"),
            item(100, "Zucker"),
            item(1, "Salz"),
            item(20, "Butter"),
        ),
        (
            "Mehl zweimal sieben.",
            "Eigelb mit 40 g Zucker schaumig schlagen.",
            "Eiweiß mit Salz steif schlagen, die restlichen 60 g Zucker einrieseln lassen.",
            "Butter schmelzen und zuletzt unterheben.",
        ),
        (
            Named(1, "Zucker", 40),
            Named(2, "Salz"),
            Named(2, "Zucker", 60),
            Named(3, "Butter"),
        ),
        egg_size="eu-m",
    )
    weighing = weigh_out(made)
    assert bowl_of(weighing, "Zucker") == ["yolk"]
    assert bowl_of(weighing, "Zucker, for the whites") == ["sugar"]
    assert bowl_of(weighing, "Salz") == ["white"]
    assert bowl_of(weighing, "Butter") == ["fat"]


def test_one_step_with_yolks_and_whites_keeps_their_sugars_apart() -> None:
    made = formula(
        "Short",
        (item(50, "white rice flour"), eggs(3, note="separated"), item(80, "caster sugar")),
        ("Whisk the yolks with 30 g sugar and beat the whites with 50 g sugar.",),
        (Named(0, "caster sugar", 30, "30 g sugar"), Named(0, "caster sugar", 50, "50 g sugar")),
    )
    weighing = weigh_out(made)
    assert bowl_of(weighing, "caster sugar") == ["yolk"]
    assert bowl_of(weighing, "caster sugar, for the whites") == ["sugar"]


def test_grams_the_steps_forget_are_weighed_all_the_same_and_named() -> None:
    made = formula(
        "Forgetful",
        (eggs(2, note="separated"), item(135, "caster sugar")),
        ("Beat the yolks with 60 g of the sugar.", "Whisk the whites."),
        (Named(0, "caster sugar", 60, "sugar"),),
    )
    weighing = weigh_out(made)
    assert [row.add_g for row in weighing.rows if row.take.startswith("caster")] == [60, 75]
    assert "75 g of caster sugar" in weighing.notices[0].text
    assert weighing.total_g == pytest.approx(102 + 135)


def test_steps_that_name_more_than_there_is_weigh_only_what_there_is() -> None:
    made = formula(
        "Too much",
        (eggs(2, note="separated"), item(100, "caster sugar")),
        ("Beat the yolks with 60 g sugar.", "Whisk the whites with 80 g sugar."),
        (Named(0, "caster sugar", 60, "sugar"), Named(1, "caster sugar", 80, "sugar")),
    )
    assert weigh_out(made).total_g == pytest.approx(202)


def test_dried_milk_is_dry_and_sour_cream_is_not_whipped() -> None:
    dry = ("skim milk powder", "cinnamon", "cocoa powder", "cream of tartar")
    made = formula("Kinds", tuple(item(10, name) for name in (*dry, "sour cream", "quark")))
    bowls = {row.take: row.bowl for row in weigh_out(made).rows if row.kind == "add"}
    assert bowls == {**dict.fromkeys(dry, "dry"), "sour cream": "dairy", "quark": "dairy"}


def test_a_line_no_amount_is_named_for_is_found_by_a_word_only_it_has() -> None:
    made = formula(
        "Overlooked",
        (
            eggs(2, note="separated"),
            item(60, "caster sugar"),
            item(3, "vanilla extract"),
            item(12, "white rice flour"),
            item(2, "lemon zest"),
            item(2, "orange zest"),
        ),
        ("Beat the yolks with the vanilla and the orange zest.", "Whisk the whites."),
    )
    weighing = weigh_out(made)
    assert bowl_of(weighing, "vanilla extract") == bowl_of(weighing, "orange zest") == ["yolk"]
    assert bowl_of(weighing, "lemon zest") == ["liquid"]
    assert bowl_of(weighing, "white rice flour") == ["dry"]


def test_salt_no_step_names_goes_where_the_whites_from_a_carton_are() -> None:
    made = formula(
        "Buttercream",
        (item(120, "egg white"), item(190, "caster sugar"), item(300, "butter"), item(1, "salt")),
        ("Warm white and sugar over water to 71 C.", "Whisk until 24 C, add the butter in pieces."),
        (Named(0, "caster sugar", words="sugar"), Named(1, "butter")),
    )
    weighing = weigh_out(made)
    assert bowl_of(weighing, "salt") == bowl_of(weighing, "caster sugar") == ["white"]
    assert bowl_of(weighing, "butter") == ["butter"]
