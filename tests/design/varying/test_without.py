"""Steps of a child never go on using what its lines no longer have."""

import re

import pytest

from krume.design.varying.without import step_without
from tests.design.varying.studio import demo


@pytest.mark.parametrize(
    ("step", "gone", "others", "said"),
    [
        ("Melt the butter and keep it at 40 C.", "butter", "sugar", ""),
        (
            "Fold whites and flours into the yolks in turns, the butter last with a spoon of "
            "batter stirred in.",
            "butter",
            "flour",
            "Fold whites and flours into the yolks in turns.",
        ),
        (
            "Sift the flours and the starch together twice and stir in the hazelnuts.",
            "hazelnut",
            "flour",
            "Sift the flours and the starch together twice.",
        ),
        (
            "Off the heat stir in butter and gelatine.",
            "butter",
            "gelatine",
            "Off the heat stir in butter and gelatine (without the butter).",
        ),
        (
            "All at 20 to 22 C. Cream butter and sugar 6 minutes.",
            "butter",
            "sugar",
            "All at 20 to 22 C. Cream butter and sugar 6 minutes (without the butter).",
        ),
        (
            "Beat the yolks with 40 g of the sugar, then the oil, 6 g of the juice and the zest.",
            "oil",
            "sugar",
            "Beat the yolks with 40 g of the sugar, 6 g of the juice and the zest.",
        ),
        ("Bake 30 minutes.", "butter", "sugar", "Bake 30 minutes."),
    ],
)
def test_a_step_is_written_without_what_is_gone(
    step: str, gone: str, others: str, said: str
) -> None:
    assert step_without(step, [gone], [others]) == said


@pytest.mark.parametrize("name", ["F1", "F2", "F3", "F4", "F5", "F6", "F7", "C1", "C2", "C3"])
def test_no_step_of_the_studio_uses_what_is_gone_unmarked(name: str) -> None:
    found = demo(name)
    for line in found.lines:
        word = line.name.split()[-1].rstrip("s")
        others = [x.name.split()[-1].rstrip("s") for x in found.lines if x is not line]
        if word in others:
            continue
        for step in found.steps:
            kept = step_without(step, [word], others)
            named = re.search(rf"\b{word}(?:e?s)?\b", kept, re.IGNORECASE)
            assert named is None or f"(without the {word}" in kept, (word, kept)
