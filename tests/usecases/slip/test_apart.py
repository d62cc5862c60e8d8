"""Whites and yolks weighed apart, of eggs the formula names whole."""

from pathlib import Path

import pytest

from krume.usecases import Asked, SlipWish, rescue_slip
from krume.usecases.slip.apart import part_named


@pytest.mark.parametrize(
    ("name", "part"),
    [
        ("whites", "white"),
        ("egg white", "white"),
        ("Eiweiß", "white"),
        ("yolks", "yolk"),
        ("Eigelb", "yolk"),
        ("white rice flour", None),
        ("white rice", None),
        ("eggs", None),
    ],
)
def test_a_name_means_a_part_of_the_egg_or_none(name: str, part: str | None) -> None:
    assert part_named(name) == part


def test_whites_of_whole_eggs_are_those_whites_and_no_rice(demo: Asked) -> None:
    answer = rescue_slip("F2", SlipWish(weighed=("whites=190",)), demo)
    (held,) = answer.result.in_bowl
    assert (held.name, held.planned_g, held.over_g) == ("egg whites", 167.5, 22.5)
    assert any(n.code == "eggs-apart" for n in answer.notices)
    exact = next(w for w in answer.result.ways if w.kind == "scale-exact")
    grams = {line.name: line.mass_g for line in exact.lines}
    assert exact.factor == pytest.approx(190 / 167.5)
    assert grams["egg yolks"] == pytest.approx(87.5 * 190 / 167.5, abs=0.05)


def test_the_family_stays_that_of_the_formula(demo: Asked) -> None:
    for name in ("F1", "F2", "F3", "F4"):
        whole = rescue_slip(name, SlipWish(weighed=("salt=1",)), demo).result
        apart = rescue_slip(name, SlipWish(weighed=("whites=200",)), demo).result
        assert apart.bands == whole.bands


def test_yolks_that_are_all_there_is_make_the_cake_smaller(demo: Asked) -> None:
    wish = SlipWish(weighed=("yolks=70",), no_more=("yolks",))
    answer = rescue_slip("F2", wish, demo)
    down = next(way for way in answer.result.ways if way.kind == "down")
    assert down.factor == pytest.approx(0.8)
    grams = {line.name: line.mass_g for line in down.lines}
    assert (grams["egg yolks"], grams["egg whites"]) == (70.0, 134.0)


def test_white_alone_beside_a_white_flour_is_that_flour(demo: Asked) -> None:
    answer = rescue_slip("F2", SlipWish(weighed=("white=41",)), demo)
    assert answer.result.in_bowl[0].name == "white rice flour"


def test_the_chosen_way_is_written_with_its_yolks_and_whites(demo: Asked, tmp_path: Path) -> None:
    wish = SlipWish(weighed=("whites=190",), choose=1, out=tmp_path / "out")
    answer = rescue_slip("F2", wish, demo)
    assert not answer.problems
    (text,) = [f for f in answer.result.files if f.kind == "corrected-formula"]
    said = Path(text.path).read_text(encoding="utf-8")
    assert "190 g egg whites, medium" in said
    assert "eggs, medium, separated" not in said


def test_a_formula_that_has_both_parts_is_left_as_it_is(demo: Asked) -> None:
    answer = rescue_slip("F5", SlipWish(weighed=("whites=190",)), demo)
    assert answer.result.in_bowl[0].name == "egg whites"
    assert all(n.code != "eggs-apart" for n in answer.notices)
