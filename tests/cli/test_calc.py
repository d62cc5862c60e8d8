"""`krume calc`: the list, and each example in it as a person would type it."""

import shlex

import pytest

from krume.usecases import list_sums
from tests.cli.conftest import Run

EXAMPLES = [each.example for each in list_sums().result.sums]


@pytest.mark.parametrize("example", EXAMPLES)
def test_every_example_of_the_list_runs_as_it_is_printed(run: Run, example: str) -> None:
    words = shlex.split(example)
    said = run("calc", *words, "--json")
    assert said.code == 0
    assert said.json["result"]["sum"] == words[0]
    assert run("calc", *words).code == 0


@pytest.mark.parametrize("columns", [40, 80])
def test_the_list_names_each_sum_and_its_example(run: Run, columns: int) -> None:
    said = run("calc", columns=columns)
    assert said.code == 0
    for example in EXAMPLES:
        assert f"  krume calc {example}\n" in said.out
    assert [each["name"] for each in run("calc", "--json").json["result"]["sums"]]


@pytest.mark.parametrize(
    ("words", "key", "printed"),
    [
        (["bloom", "mass=8", "from=200", "to=160"], "by_root_g", 8.944),
        (["tin-volume", "shape=round", "diameter=20", "height=7"], "volume_ml", 2199.1),
        (["egg-count", "mass=195.8", "size=eu-m"], "make_up_g", -8.2),
        (["roll", "length=22.86", "thickness=1.2", "cream=0.7", "core=0"], "turns", 1.96),
        (["dial", "want=157C", "offset=-12"], "set_c", 169),
    ],
)
def test_figures_worked_out_by_hand(run: Run, words: list[str], key: str, printed: float) -> None:
    digits = len(str(printed).partition(".")[2])
    found = run("calc", *words, "--json").json["result"][key]
    assert found == pytest.approx(printed, abs=0.5 * 10**-digits + 1e-9)


def test_unknown_is_a_word_for_a_person_and_null_for_a_program(run: Run) -> None:
    words = ("calc", "gluten-mix", "parts=50:8,94:?")
    assert run(*words, "--json").json["result"]["ppm"] is None
    assert "unknown" in run(*words).out


def test_minus_and_equals_signs_belong_to_the_value(run: Run) -> None:
    said = run("calc", "dial", "want=157", "offset=-12", "--json")
    assert said.json["result"]["inputs"]["offset"] == "-12"


@pytest.mark.parametrize(
    ("words", "sentence"),
    [
        (("dail",), "No sum is called 'dail'. Did you mean dial?"),
        (("dial",), "dial needs want"),
        (("dial", "want"), "'want' is no input. Type name=value"),
        (("dial", "want=1", "want=2"), "want was given twice"),
        (("egg-count", "mass=abc", "size=eu-m"), "abc"),
        (("egg-count", "mass=nan", "size=eu-m"), "nan"),
    ],
)
def test_an_input_that_cannot_be_used_is_one_sentence(
    run: Run, words: tuple[str, ...], sentence: str
) -> None:
    said = run("calc", *words)
    assert said.code == 3
    assert sentence in said.err
    assert said.out == ""


def test_a_value_is_explained(run: Run) -> None:
    words = ("calc", "tin-volume", "shape=round", "diameter=8in", "height=3in")
    result = run(*words, "--json", "--explain", "volume_ml").json["result"]
    assert result["explain"]["key"] == "volume_ml"
    assert "How much a tin holds" in run(*words, "--explain", "volume").out
