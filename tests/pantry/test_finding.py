"""What words are taken for: known, asked, close, known elsewhere, unknown."""

import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.pantry import Ingredient, find, ingredient

DEMO = {
    "buckwheat flour": "flour-buckwheat-whole",
    "white rice flour": "flour-rice-white",
    "potato starch": "starch-potato-ciqual",
    "sweet rice flour": "flour-rice-sweet-shiratama",
    "ground hazelnuts, toasted": "hazelnuts",
    "eggs, medium, separated": "egg-whole-fresh",
    "eggs, large, separated": "egg-whole-fresh",
    "egg, medium": "egg-whole-fresh",
    "caster sugar": "sugar-granulated",
    "fine salt": "salt",
    "lemon juice": "lemon-juice",
    "vanilla extract": "vanilla-extract",
    "teff flour": "teff-grain-raw",
    "maize starch": "starch-corn",
    "butter, melted": "butter-82-ciqual",
    "butter, soft": "butter-82-ciqual",
    "cold butter": "butter-82-ciqual",
    "butter, 20 C": "butter-82-ciqual",
    "butter": "butter-82-ciqual",
    "millet flour": "flour-millet",
    "xanthan gum": "xanthan-gum",
    "sunflower oil": "oil-sunflower-linoleic",
    "lemon zest": "lemon-peel",
    "ground walnuts": "walnuts-english",
    "orange zest": "orange-peel",
    "orange juice": "orange-juice",
    "baking powder": "baking-powder-phosphate",
    "egg yolks, medium": "egg-yolk-fresh",
    "egg whites, medium": "egg-white-fresh",
    "milk": "milk-whole",
    "whole milk": "milk-whole",
    "icing sugar": "sugar-powdered",
    "psyllium husk powder": "psyllium-husk",
    "powdered gelatine, 200 bloom": "gelatin-dry",
    "water": "water-tap",
    "whipping cream, 35 % fat": "cream-heavy-whipping",
    "thick yoghurt, 10 % fat": "yogurt-greek-plain-whole",
    "dark chocolate, 60 %": "chocolate-dark-60-69",
    "dark chocolate 60 %": "chocolate-dark-60-69",
    "blackcurrant puree": "currant-black-raw",
    "blackcurrant purée": "currant-black-raw",
    "pasteurised egg white": "egg-white-frozen-pasteurized",
    "ground pistachios": "pistachios-raw",
    "ground sunflower kernels": "sunflower-kernels-dried",
}


@pytest.mark.parametrize(("words", "key"), DEMO.items())
def test_every_ingredient_of_the_demo_studio_is_found(words: str, key: str) -> None:
    found = find(words)
    assert (found.kind, found.key) == ("known", key)


KITCHENS = {
    # US, UK, Australia
    "unsalted butter, softened": "butter-82-ciqual",
    "cold unsalted butter, cubed": "butter-82-ciqual",
    "confectioners' sugar": "sugar-powdered",
    "powdered sugar, sifted": "sugar-powdered",
    "bicarbonate of soda": "baking-soda",
    "bicarb soda": "baking-soda",
    "thickened cream": "cream-heavy-whipping",
    "golden syrup": "syrup-cane",
    "black treacle": "molasses",
    "sultanas": "raisin-golden",
    "flour, rice, white": "flour-rice-white",
    "fine brown rice flour": "flour-rice-brown",
    "tapioca starch/flour": "starch-tapioca",
    "finely grated zest of 2 oranges": "orange-peel",
    "gluten-free oats": "oats-rolled-dry",
    "oat flour, certified gluten-free": "flour-oat-certified",
    "70% dark chocolate": "chocolate-dark-70-85",
    "gelatine leaves": "gelatin-leaf",
    # old cookbooks
    "whites of eggs": "egg-white-fresh",
    "yolk of 1 egg": "egg-yolk-fresh",
    "saleratus": "baking-soda",
    "Indian meal": "cornmeal-whole-yellow",
    "rye meal": "flour-rye-light",
    "Graham flour": "flour-wheat-wholegrain",
    "loaf sugar": "sugar-granulated",
    "grated rind of a lemon": "lemon-peel",
    "English walnut meats, broken in pieces": "walnuts-english",
    "New Orleans molasses": "molasses",
    "sour milk": "buttermilk-cultured-lowfat",
    "yeast cake dissolved in lukewarm water": "yeast-compressed",
    "shredded cocoanut": "coconut-desiccated-unsweetened",
    "2 squares chocolate": "chocolate-unsweetened",
    "carbonate of soda": "baking-soda",
    "raisins, seeded and cut in pieces": "raisin-seedless",
    "Jordan almonds": "almonds",
    "flour for dredging": "flour-wheat-all-purpose",
    # German kitchens
    "Buchweizenmehl": "flour-buckwheat-whole",
    "Kartoffelstaerke": "starch-potato-ciqual",
    "Kartoffelstarke": "starch-potato-ciqual",
    "Eiweiß": "egg-white-fresh",
    "Eigelb": "egg-yolk-fresh",
    "gemahlene Haselnüsse": "hazelnuts",
    "zimmerwarme Butter": "butter-82-ciqual",
    "abgeriebene Schale von 1 Bio-Zitrone": "lemon-peel",
    "Saft von 1 Zitrone": "lemon-juice",
    "Flohsamenschalen": "psyllium-husk",
    "Kirschwasser": "kirsch",
    "Zartbitterschokolade": "chocolate-dark-45-59",
    "schwarze Johannisbeeren": "currant-black-raw",
    "Natron": "baking-soda",
    "Weinstein": "cream-of-tartar",
}


@pytest.mark.parametrize(("words", "key"), KITCHENS.items())
def test_kitchens_of_other_places_and_times_are_understood(words: str, key: str) -> None:
    found = find(words)
    assert (found.kind, found.key) == ("known", key)


@pytest.mark.parametrize(
    ("words", "keys"),
    [
        ("potato flour", {"starch-potato-ciqual", "flour-potato"}),
        ("corn flour", {"starch-corn", "flour-corn-whole-yellow"}),
        ("cornflour", {"starch-corn", "flour-corn-whole-yellow"}),
        (
            "rice flour",
            {"flour-rice-white", "flour-rice-brown", "flour-rice-sweet-shiratama"},
        ),
        ("Kartoffelmehl", {"starch-potato-ciqual", "flour-potato"}),
        ("🥜 flour", {"hazelnuts", "almonds", "walnuts-english", "pecans"}),
        ("butter or margarine", {"butter-82-ciqual", "margarine-stick-80-unsalted"}),
    ],
)
def test_goods_that_share_a_name_are_asked(words: str, keys: set[str]) -> None:
    found = find(words)
    assert (found.kind, found.key) == ("ask", None)
    assert {choice.key for choice in found.choices} == keys
    assert found.question


def test_bare_flour_is_read_as_wheat_and_says_that_it_holds_gluten() -> None:
    found = find("flour")
    assert found.key == "flour-wheat-all-purpose"
    assert found.notice == "read as wheat flour: contains gluten"


@pytest.mark.parametrize(
    ("words", "key"),
    [("cream", "cream-heavy-whipping"), ("chocolate", "chocolate-dark-60-69")],
)
def test_a_good_of_several_strengths_has_one_preferred_row_and_says_which(
    words: str, key: str
) -> None:
    found = find(words)
    assert found.key == key
    assert found.notice.startswith("read as")


@pytest.mark.parametrize("words", ["gluten-free flour", "GF flour", "glutenfreies Mehl"])
def test_a_gluten_free_blend_is_asked_and_never_read_as_wheat(words: str) -> None:
    assert find(words).kind == "ask"


@pytest.mark.parametrize("words", ["gluten-free pasta", "gluten-free semolina", "GF couscous"])
def test_what_grows_as_wheat_is_not_found_by_calling_it_gluten_free(words: str) -> None:
    found = find(words)
    assert found.key is None
    assert found.good is None


@pytest.mark.parametrize(
    ("words", "meant"),
    [
        ("buckweat flour", "buckwheat flour"),
        ("hazlenuts", "hazelnut"),
        ("vanila extract", "vanilla extract"),
        ("sorgum flour", "sorghum flour"),
        ("Valencia orange juice", "orange juice"),
    ],
)
def test_a_slip_of_the_keyboard_is_asked_and_never_taken(words: str, meant: str) -> None:
    found = find(words)
    assert (found.kind, found.key) == ("close", None)
    assert meant in [choice.words for choice in found.choices]
    assert meant in found.question
    assert words in found.question


@pytest.mark.parametrize("words", ["fonio flour", "tonka flour", "mystery powder", "qwrtz"])
def test_an_unknown_good_is_asked_for_its_class(words: str) -> None:
    found = find(words)
    assert (found.kind, found.key) == ("unknown", None)
    assert len(found.choices) == 4
    answered = find(found.choices[1].words)
    assert (answered.kind, answered.good.role if answered.good else None) == ("good", "starch")


def test_letters_of_another_script_are_asked() -> None:
    found = find("ѕugar")
    assert (found.kind, found.key) == ("lookalike", None)
    assert found.question.startswith("'ѕugar' looks like sugar, is spelled with another letter")
    assert find("сахар").kind == "unknown"


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("onion", "vegetable"),
        ("chicken stock", "stock"),
        ("oysters", "mollusc"),
        ("salt pork", "meat"),
        ("parsley", "herb"),
        ("suet", "meat"),
        ("barley malt", "grain"),
        ("stale bread crumbs", "bread"),
    ],
)
def test_a_known_word_without_a_row_is_named_and_not_guessed(words: str, kind: str) -> None:
    found = find(words)
    assert (found.kind, found.key) == ("good", None)
    assert found.good is not None
    assert found.good.kind == kind
    assert "not in the composition table" in found.notice


@pytest.mark.parametrize(
    ("words", "key"),
    [
        ("cream, 30 % fat", "cream-light-whipping"),
        ("cream 35%", "cream-heavy-whipping"),
        ("milk, 1.5 % fat", "milk-semi-skimmed-uht-ciqual"),
        ("chocolate, 70 %", "chocolate-dark-70-85"),
        ("butter, 82 %", "butter-82-ciqual"),
        ("rum, 54 % vol", "spirits-over-50"),
    ],
)
def test_a_percent_figure_chooses_the_row(words: str, key: str) -> None:
    assert find(words).key == key


def test_a_row_with_another_fat_than_the_text_says_so() -> None:
    assert find("thick yoghurt, 10 % fat").notice.endswith("5 % fat; the text says 10 %")
    assert find("butter, 82 %").notice == ""


def test_a_name_as_long_as_a_page_is_not_searched_for() -> None:
    found = find("butter " * 40)
    assert found.kind == "unknown"
    assert "200 signs" in found.question


@pytest.mark.parametrize(
    ("words", "keys"),
    [
        ("lemon or lime juice", {"lemon-juice", "lime-juice"}),
        ("tapioca starch/flour", {"starch-tapioca"}),
        ("honey or maple syrup", {"honey", "syrup-maple"}),
    ],
)
def test_either_of_two_goods_is_asked_unless_both_are_one(words: str, keys: set[str]) -> None:
    found = find(words)
    if len(keys) == 1:
        assert {found.key} == keys
    else:
        assert {choice.key for choice in found.choices} == keys


def test_a_generic_name_does_not_swallow_an_unknown_word_behind_its_comma() -> None:
    assert find("flour, fonio").key is None
    assert find("hazelnuts, in a mill").key == "hazelnuts"


def test_one_s_own_ingredient_goes_before_the_packed_one_and_leaves_no_trace() -> None:
    mine = Ingredient("own-butter", "Butter", "butter", "fat", "fat")
    assert find("butter", own=(mine,)).key == "own-butter"
    assert find("butter").key == "butter-82-ciqual"
    assert ingredient("own-butter", own=(mine,)) is mine


@given(st.text(max_size=80))
def test_no_text_makes_the_search_fail_or_guess(text: str) -> None:
    found = find(text)
    assert found.kind in ("known", "ask", "close", "lookalike", "good", "unknown")
    assert (found.key is not None) is (found.kind == "known")
    assert found.question or found.kind in ("known", "good")


@given(st.sampled_from(sorted(DEMO)), st.sampled_from(["{}", " {} ", "{} ", "{}."]))
def test_space_and_case_do_not_change_what_is_found(words: str, frame: str) -> None:
    assert find(frame.format(words.upper())).key == find(words).key


def test_known_names_are_found_without_the_library_for_likeness() -> None:
    code = (
        "import sys; from krume.pantry import find; find('soft butter'); "
        "sys.exit('rapidfuzz' in sys.modules)"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


@pytest.mark.parametrize(
    "words",
    ["gf all purpose flour", "g.f. plain flour", "GF AP flour", "gf allpurpose flour",
     "gluten free strong white flour", "gf self raising flour"],
)  # fmt: skip
def test_a_gluten_free_flour_is_asked_about_and_never_taken_for_wheat(words: str) -> None:
    found = find(words)
    assert found.kind == "ask"
    assert [c.key for c in found.choices if c.key and ingredient(c.key).gluten_grain] == []


@pytest.mark.parametrize(
    ("words", "whole"),
    [
        ("veg. oil", "vegetable oil"), ("EVOO", "extra virgin olive oil"),
        ("AP flour", "all-purpose flour"), ("conf. sugar", "confectioners' sugar"),
        ("powd. sugar", "powdered sugar"), ("dark choc", "dark chocolate"),
        ("B. powder", "baking powder"), ("bicarbonate soda", "bicarbonate of soda"),
        ("potato starch flour", "potato starch"), ("pot. starch", "potato starch"),
    ],
)  # fmt: skip
def test_a_name_cut_short_is_the_whole_name(words: str, whole: str) -> None:
    assert find(words).kind == "known"
    assert (find(words).key, find(words).notice) == (find(whole).key, find(whole).notice)
