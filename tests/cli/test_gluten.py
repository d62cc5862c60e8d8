"""`krume gluten`: the answer in a sentence, the one JSON object, the page on paper."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run


@pytest.mark.parametrize("name", ["T1", "T3", "C1", "102"])
def test_the_answer_fits_its_schema_and_is_the_labels_own(run: Run, name: str) -> None:
    answer = run("gluten", name, "--json")
    assert answer.code == 0
    label = run("label", name, "--json").json["result"]["gluten"]
    assert set(answer.json["result"]["missing"]) == set(label["missing"])
    assert answer.json["result"]["claim_allowed"] is label["claim_allowed"] is False


@pytest.mark.parametrize("columns", [40, 100])
def test_the_first_thing_to_read_is_the_answer(run: Run, columns: int) -> None:
    out = run("gluten", "101", columns=columns).out
    paragraphs = [" ".join(each.split()) for each in out.split("\n\n")]
    assert paragraphs[1].startswith("No. Please do not give Orl hazel torte")
    assert paragraphs[2].startswith("What this does not prove")
    assert "safe" not in out.casefold()
    assert all(len(line) <= columns for line in out.splitlines())


def test_the_page_is_written_and_its_paths_stand_last(run: Run, tmp_path: Path) -> None:
    out = run("gluten", "T1", "--out", str(tmp_path)).out
    paths = [line for line in out.splitlines() if line.startswith(str(tmp_path))]
    assert len(paths) == 2
    assert all(Path(path).is_file() for path in paths)


def test_a_name_the_book_does_not_know_is_asked(run: Run) -> None:
    assert run("gluten", "T9").code == 3
