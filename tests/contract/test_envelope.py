"""The envelope, the exit codes and the answers that are edits, as the contract fixes them."""

import json
from pathlib import Path

import pytest

from tests.contract.conftest import Ask, run

COMMANDS = (("read", "F1"), ("check", "F1"), ("size", "F2", "--tin", "round 20 x 5 cm"))
EGGS = "Plain sponge\n\n100 g white rice flour\n5 eggs\n120 g caster sugar\n\nWhisk and bake.\n"


@pytest.mark.parametrize("words", COMMANDS)
def test_every_answer_is_one_envelope(ask: Ask, words: tuple[str, ...]) -> None:
    code, said = ask(*words)
    assert code == 0
    assert {"krume", "command", "ok", "result", "problems", "notices", "sources"} <= said.keys()
    assert said["krume"] == 1 and said["command"] == words[0] and said["ok"] is True


def test_a_missing_egg_size_is_asked_and_the_rest_is_still_told(ask: Ask, tmp_path: Path) -> None:
    text = tmp_path / "plain.txt"
    text.write_text(EGGS, encoding="utf-8")
    code, said = ask("read", str(text))
    (problem,) = [p for p in said["problems"] if p["code"] == "egg-size-missing"]
    assert code == 3 and said["ok"] is False
    assert problem["where"] == "line 4" and problem["read"] == "5 eggs"
    assert len(said["result"]["lines"]) == 3


def test_every_option_of_the_egg_question_answers_it(ask: Ask, tmp_path: Path) -> None:
    text = tmp_path / "plain.txt"
    text.write_text(EGGS, encoding="utf-8")
    _, said = ask("read", str(text))
    for option in said["problems"][0]["options"]:
        _, again = ask("read", str(text), "--answer", f"line 4={option['line']}")
        assert not [p for p in again["problems"] if p["code"] == "egg-size-missing"], option


def test_an_answer_can_be_kept_in_a_new_text(ask: Ask, tmp_path: Path) -> None:
    text, new = tmp_path / "plain.txt", tmp_path / "new.txt"
    text.write_text(EGGS, encoding="utf-8")
    code, _ = ask("read", str(text), "--answer", "line 4=5 eggs, EU M", "--write", str(new))
    assert code == 0
    assert new.read_text(encoding="utf-8") == EGGS.replace("5 eggs", "5 eggs, EU M")
    assert text.read_text(encoding="utf-8") == EGGS


def test_a_text_may_come_from_standard_input(ask: Ask) -> None:
    code, said = ask("check", "-", stdin=EGGS.replace("5 eggs", "5 eggs, EU M"))
    assert code == 0
    assert said["result"]["percent"]["egg"] == pytest.approx(255.0, abs=0.05)


def test_wrong_usage_is_exit_2() -> None:
    assert run("read").returncode == 2
    assert run("no-such-command").returncode == 2


def test_a_missing_file_is_named_and_nothing_else_happens(ask: Ask) -> None:
    code, said = ask("read", "no-such-formula.txt")
    assert code == 3 and "no-such-formula.txt" in json.dumps(said)


def test_sheets_of_an_open_question_are_not_written(ask: Ask, tmp_path: Path) -> None:
    text, out = tmp_path / "plain.txt", tmp_path / "out"
    text.write_text(EGGS, encoding="utf-8")
    code, _ = ask("sheet", str(text), "--out", str(out))
    assert code == 3 and not out.exists()


def test_sheets_of_order_101_are_bench_cards_of_its_four_formulas(ask: Ask, tmp_path: Path) -> None:
    out = tmp_path / "out"
    code, said = ask("sheet", "101", "--out", str(out))
    files = said["result"]["files"]
    assert code == 0
    assert {f["kind"] for f in files} >= {"bench-card"}
    cards = [f for f in files if f["kind"] == "bench-card" and f["path"].endswith(".pdf")]
    assert len(cards) == 4
    assert all(Path(f["path"]).stat().st_size > 0 for f in files)
