"""Sources of an answer: each once, in the order of use."""

from krume.usecases import Asked
from krume.usecases.asking.read import formula_of
from krume.usecases.asking.sources import line_sources, practice_notice, source_keys


def test_each_key_stands_once_and_a_blank_names_nothing() -> None:
    assert source_keys(("b", "", "a"), (), ("a", "c")) == ("b", "a", "c")


def test_lines_bring_their_sources(demo: Asked) -> None:
    formula = formula_of("F1", demo).formula
    found = line_sources(formula)
    assert found
    assert set(found) == {line.source for line in formula.lines if line.source}


def test_habit_is_said_and_law_is_not() -> None:
    (notice,) = practice_notice(["law", "from memory", "common practice"])
    assert notice.code == "common-practice"
    assert "common practice and from memory" in notice.text
    assert practice_notice(["law", "published"]) == ()
