"""What the book knows of a blend's flours: records, allergens, prices, what is in the house."""

from collections.abc import Callable
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

from krume.usecases import Asked, BlendWish, choose_blend
from krume.usecases.blend.papers import flours_in_house, ran_out
from krume.usecases.sold.papers import papers_of
from tests.usecases.blends import FLOURS, WITHOUT_TEFF


def test_the_house_has_the_flours_of_its_lots_and_nothing_else(demo: Asked) -> None:
    papers = papers_of(demo)
    assert flours_in_house(papers) == (
        "white rice flour",
        "teff flour",
        "buckwheat flour",
        "millet flour",
        "potato starch",
        "maize starch",
        "sweet rice flour",
    )
    assert [name for name in flours_in_house(papers) if ran_out(name, papers)] == ["millet flour"]


def test_each_flour_at_hand_tells_its_lot_and_how_it_stands(demo: Asked) -> None:
    records = choose_blend(WITHOUT_TEFF, demo).result.evidence
    by_lot = {record.lot: record for record in records}
    assert by_lot["L-004"].state == "expired"
    assert "2027-05-31" in by_lot["L-004"].text
    assert by_lot["L-001"].state == "good"
    assert "L-002" not in by_lot


def test_a_flour_without_a_lot_has_no_record(demo: Asked) -> None:
    wish = BlendWish("sorghum flour, white rice flour, potato starch", match="F2")
    records = choose_blend(wish, demo).result.evidence
    sorghum = next(each for each in records if each.name == "sorghum flour")
    assert (sorghum.lot, sorghum.state) == (None, "missing")


def test_a_book_without_lots_says_nothing_of_records(
    bare: Asked, write: Callable[[str], str]
) -> None:
    text = "Test\n\n60 g white rice flour\n40 g potato starch\n"
    result = choose_blend(BlendWish(FLOURS, match=write(text)), bare).result
    assert result.parts
    assert result.evidence == ()
    assert result.open_blend is None
    assert result.price is None


def test_allergens_are_gained_and_lost_against_the_formulas_own_blend(
    demo: Asked, write: Callable[[str], str]
) -> None:
    text = "Test\n\n60 g white rice flour\n40 g ground almonds\n40 g chickpea flour\n"
    wish = BlendWish("white rice flour, soy flour", match=write(text), limits=("soy >= 10",))
    allergens = choose_blend(wish, demo).result.allergens
    assert allergens is not None
    assert allergens.gained == ("soybean",)
    assert choose_blend(WITHOUT_TEFF, demo).result.allergens is not None
    back = BlendWish("white rice flour", match=write(text.replace("chickpea", "soy")))
    lost = choose_blend(back, demo).result.allergens
    assert lost is not None
    assert lost.lost == ("soybean",)


def test_the_price_is_the_mean_by_mass_to_the_cent(demo: Asked) -> None:
    result = choose_blend(WITHOUT_TEFF, demo).result
    per_kg = {
        "flour-rice-white": Decimal("3.20"),
        "flour-buckwheat-whole": Decimal("4.10"),
        "flour-millet": Decimal("3.60"),
        "starch-potato-ciqual": Decimal("2.90"),
        "starch-corn": Decimal("2.80"),
        "flour-rice-sweet-shiratama": Decimal("5.40"),
    }
    each = (per_kg[part.ingredient] * Decimal(str(part.mass_g)) for part in result.parts)
    paid = sum(each, Decimal(0))
    assert result.price is not None
    assert result.price.per_kg == (paid / 105).quantize(Decimal("0.01"))
    assert result.price.was_per_kg == Decimal("4.10")


def test_a_missing_price_is_no_zero(demo: Asked) -> None:
    wish = BlendWish("sorghum flour, potato starch", match="F2")
    price = choose_blend(wish, demo).result.price
    assert price is not None
    assert price.per_kg is None
    assert price.missing == ("sorghum flour",)
    kept = choose_blend(replace(wish, most_price_per_kg=4.0), demo)
    assert [problem.code for problem in kept.problems] == ["flour-unpriced"]


def test_a_price_limit_is_kept(demo: Asked) -> None:
    result = choose_blend(BlendWish(FLOURS, match="F2", most_price_per_kg=3.3), demo).result
    assert result.price is not None
    assert result.price.per_kg is not None
    assert result.price.per_kg <= Decimal("3.30")


def test_no_more_goes_in_than_is_in_the_house(own_demo: Asked) -> None:
    assert own_demo.book is not None
    packs = "item,pack_g,where,stock_g\nbuckwheat flour,500,mill,7\n"
    (Path(own_demo.book) / "packs.csv").write_text(packs, encoding="utf-8")
    answer = choose_blend(replace(WITHOUT_TEFF, by_stock=True), own_demo)
    masses = {part.ingredient: part.mass_g for part in answer.result.parts}
    assert masses["flour-buckwheat-whole"] <= 7
    silent = next(n for n in answer.notices if n.code == "stock-not-written")
    assert "buckwheat" not in silent.text


WHEAT = BlendWish("wheat flour, white rice flour, potato starch", match="F2")


def test_a_gluten_grain_at_hand_is_named_even_where_it_is_not_used(demo: Asked) -> None:
    result = choose_blend(WHEAT, demo).result
    (grain,) = result.gluten_grains
    assert (grain.name, grain.is_used) == ("wheat flour", False)
    assert grain.grain == "cereals containing gluten (wheat)"
    assert choose_blend(WITHOUT_TEFF, demo).result.gluten_grains == ()


def test_a_gluten_grain_is_named_without_any_lots(bare: Asked) -> None:
    wish = BlendWish("oat flour, rye flour, potato starch", want="protein 6, fat 2, fibre 4")
    names = [grain.name for grain in choose_blend(wish, bare).result.gluten_grains]
    assert names == ["oat flour", "rye flour"]


def test_what_each_other_blend_brings_stands_beside_it(demo: Asked) -> None:
    result = choose_blend(WHEAT, demo).result
    told = [(other.parts, other.gained) for other in result.alternatives]
    told += [(swap.parts, swap.gained) for swap in result.one_for_one]
    for parts, gained in told:
        assert bool(gained) == any(part.name == "wheat flour" for part in parts)
    assert any(other.gained for other in result.alternatives)


def test_the_open_blend_never_holds_a_gluten_grain(demo: Asked) -> None:
    wish = replace(WHEAT, limits=("wheat >= 10",))
    shut = choose_blend(wish, demo).result
    assert shut.allergens is not None
    assert shut.allergens.gained == ("cereals containing gluten (wheat)",)
    assert shut.gluten_grains[0].is_used
    assert shut.open_blend is None
    free = choose_blend(replace(WHEAT, limits=("potato starch <= 1",)), demo).result
    assert free.open_blend is None or "wheat flour" in free.open_blend.without
