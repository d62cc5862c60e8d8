"""`krume.cli.in_time`: how a torte stands and what is wet by when, in words."""

import re

import jsonschema
import pytest

from krume.usecases import command_schema
from tests.cli.conftest import Run


def test_a_build_says_in_one_breath_how_it_stands(run: Run) -> None:
    out = run("build", "T1").out
    assert "In the cold: firm enough. At 25 °C: borderline." in out
    assert "--standing" in out
    assert "Water between" not in out


def test_standing_names_each_cream_with_its_numbers_and_the_caution(run: Run) -> None:
    out = " ".join(run("build", "T1", "--standing").out.split())
    assert "between layers 1 and 2: firm enough. It carries 674 g." in out
    assert "in a cut slice" in out
    assert "no bowl of yours was measured" in out


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART"])
def test_moisture_fits_the_schema_and_its_grams_add_up(run: Run, name: str) -> None:
    said = run("build", name, "--moisture", "--json")
    assert said.code == 0
    jsonschema.validate(said.json, command_schema("build").result)
    water = said.json["result"]["moisture"]
    assert abs(sum(part["day_3_g"]["best"] for part in water["parts"])) < 1e-6
    assert water["svg"].startswith("<svg")
    assert "guillard-2003" in said.json["sources"]


def test_without_asking_no_water_is_worked_out(run: Run) -> None:
    found = run("build", "T1", "--json").json["result"]
    assert found["moisture"] is None
    assert found["standing"]["verdict"] == "firm enough"


def test_moisture_is_a_table_where_there_is_room_and_sentences_where_there_is_none(
    run: Run,
) -> None:
    wide = run("build", "T1", "--moisture").out
    assert "3 days, g" in wide
    narrow = run("build", "T1", "--moisture", columns=40).out
    assert "3 days, g" not in narrow
    assert re.search(r"Orl hazel sponge takes \d+ g \(\d+ to \d+\)", " ".join(narrow.split()))


def test_the_caution_stands_under_the_water(run: Run) -> None:
    out = " ".join(run("build", "TART", "--moisture").out.split())
    assert "never tested on a torte" in out
    assert "soft already" in out


def test_a_torte_that_cannot_be_has_neither(run: Run) -> None:
    said = run("build", "-", "--moisture", "--json", typed="High\n\n3 layers of F1, 20 mm")
    assert said.code == 4
    assert said.json["result"]["standing"] is None
    assert said.json["result"]["moisture"] is None
