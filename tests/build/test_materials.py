"""Materials: every family that can be built has its mark, and tints are those of the tokens."""

import re
from importlib.resources import files

import pytest

from krume.build import materials, working
from krume.design import families


@pytest.mark.parametrize("family", [family.key for family in families()])
def test_every_family_has_a_mark_of_its_own_in_the_table(family: str) -> None:
    found = working(family)
    assert found.family == family
    assert found.material in materials()


def test_the_tints_are_those_of_the_tokens() -> None:
    css = files("krume.publish").joinpath("static", "tokens.css").read_text("utf-8")
    tokens = dict(re.findall(r"--([a-z-]+): (#[0-9a-f]{6});", css))
    assert {key: tokens[key] for key in materials()} == {k: m.tint for k, m in materials().items()}


def test_an_unknown_family_goes_by_its_place() -> None:
    assert working(None, piece="shell").material == "tart"
    assert working("no such family", piece="layer").material == "sponge"
