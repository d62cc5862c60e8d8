"""`krume read`: the person's own lines beside what was understood; bad inputs in one sentence."""

from collections.abc import Callable
from pathlib import Path

import pytest

from krume.store import FILE_LIMIT
from tests.cli.conftest import Run

TEXT = "Plain sponge\n\n100 g white rice flour\n5 eggs, EU M\n120 g caster sugar\n"


def test_two_egg_lines_and_a_tube(run: Run) -> None:
    result = run("read", "F5", "--json").json["result"]
    parts = {x["part"]: x["mass_g"] for x in result["lines"] if x["part"] in ("yolk", "white")}
    assert parts == {"yolk": pytest.approx(70.0), "white": pytest.approx(167.5)}
    assert result["tin"]["shape"] == "tube"
    assert result["tin"]["hole_cm"] == 6


@pytest.mark.parametrize("columns", [40, 80, 120])
def test_own_lines_stand_beside_what_they_were_taken_for(run: Run, columns: int) -> None:
    said = run("read", "F1", columns=columns)
    assert said.code == 0
    assert said.out.startswith("Orl hazel sponge\n")
    for words in ("50 g buckwheat flour", "Core: 95 °C", "Bake: 34–40 min"):
        assert words in said.out
    assert max(len(line) for line in said.out.splitlines()) <= columns


def test_every_formula_of_the_demo_is_read_without_a_question(run: Run) -> None:
    for name in ("F1", "F2", "F3", "F4", "F5", "F6", "F7", "C1", "C2", "C3", "C4", "C5", "S1"):
        said = run("read", name, "--json")
        assert said.code == 0, (name, said.json["problems"])


def test_an_answer_may_be_written_down(
    run: Run, write: Callable[[str], str], tmp_path: Path
) -> None:
    new = tmp_path / "new.txt"
    said = run("read", write(TEXT), "--answer", "line 4=4 eggs, EU M", "--write", str(new))
    assert said.code == 0
    assert said.out.splitlines()[-1] == str(new)
    assert new.read_text(encoding="utf-8") == TEXT.replace("5 eggs", "4 eggs")
    again = run("read", write(TEXT), "--write", str(new), "--json")
    assert again.code == 5
    assert "left as it is" not in new.read_text(encoding="utf-8")


def test_markup_escapes_and_right_to_left_signs_do_not_act(
    run: Run, write: Callable[[str], str]
) -> None:
    said = run("read", write("A\x1b[31m [bold]name[/]\n\n100 g white rice flour\n"))
    assert "\x1b" not in said.out
    assert "[bold]name[/]" in said.out


BAD = [
    (("read", "no-such.txt"), 3, "There is no file no-such.txt here"),
    (("read", "."), 3, "is a folder"),
    (("check", "no/such/text.txt"), 3, "There is no file"),
    (("size", "nowhere", "--tin", "round 20 cm"), 3, "There is no file"),
    (("sheet", "nowhere", "--out", "out"), 3, "There is no file"),
]


@pytest.mark.parametrize(("words", "code", "sentence"), BAD)
def test_what_cannot_be_read_is_one_sentence(
    run: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...], code: int,
    sentence: str,
) -> None:  # fmt: skip
    monkeypatch.chdir(tmp_path)
    said = run(*words)
    assert said.code == code
    assert sentence in said.err
    assert said.out == ""
    assert "Traceback" not in said.err
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"   \n\n\t\n",
        b"Only a title\n",
        b"\x00\x01\x02\xff\xfe\x00",
        b"\x89PNG\r\n\x1a\n" + bytes(range(256)) * 4,
        "Sponge\n\n½ tsp salt\n".encode("cp1252"),
        "Sponge\n\n85 g flour\n".encode("utf-16"),
        b"99999999999999999999999999 g sugar\nNaN g flour\n-30 g sugar\n",
        ("x" * 200_000).encode(),
    ],
)
@pytest.mark.parametrize("command", ["read", "check"])
def test_no_text_breaks_the_program(run: Run, tmp_path: Path, data: bytes, command: str) -> None:
    path = tmp_path / "text.txt"
    path.write_bytes(data)
    said = run(command, str(path), "--json")
    assert said.code in (0, 3)
    assert said.json["ok"] is (said.code == 0)
    assert said.err == ""
    assert path.read_bytes() == data


def test_a_text_above_the_limit_is_refused_kindly(run: Run, tmp_path: Path) -> None:
    path = tmp_path / "text.txt"
    path.write_bytes(b"x" * (FILE_LIMIT + 1))
    said = run("read", str(path))
    assert said.code == 3
    assert "larger than 8 MB" in said.err
