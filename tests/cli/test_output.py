"""Standard output and input may be closed, full, or of another alphabet."""

import io
import json
import os
import subprocess
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest

from krume.base import InputError
from krume.cli.output import (
    OutputError,
    let_go_of_stdout,
    typed_text,
    write_json,
    write_stdout,
    write_text,
)
from krume.store import FILE_LIMIT


class Stream(io.TextIOWrapper):
    """A text stream over bytes, as standard streams are."""

    def __init__(self, data: bytes = b"", encoding: str = "utf-8") -> None:
        super().__init__(io.BytesIO(data), encoding=encoding)


class Refusing(io.BytesIO):
    """A byte stream that cannot be read."""

    def read(self, _: int | None = None) -> bytes:
        raise OSError(9, "closed")


def test_json_is_utf_8_in_a_terminal_of_another_alphabet(monkeypatch: pytest.MonkeyPatch) -> None:
    stream = Stream(encoding="ascii")
    monkeypatch.setattr(sys, "stdout", stream)
    write_json({"name": "Mürbeteig ½", "broken": "a\udcff"})
    assert json.loads(stream.buffer.getvalue().decode("utf-8")) == {  # type: ignore[attr-defined]
        "name": "Mürbeteig ½",
        "broken": "a?",
    }


def test_a_number_that_is_none_is_refused() -> None:
    with pytest.raises(ValueError, match="JSON"):
        write_json({"value": float("nan")})


def test_text_in_a_terminal_of_another_alphabet_loses_signs_and_not_the_answer(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    stream = Stream(encoding="ascii")
    monkeypatch.setattr(sys, "stdout", stream)
    write_text("34–40 min\n")
    assert stream.buffer.getvalue() == b"34?40 min\n"  # type: ignore[attr-defined]


def test_a_closed_output_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdout", None)
    with pytest.raises(OutputError, match="Standard output is closed") as caught:
        write_stdout(b"x")
    assert caught.value.exit_code == 5


def test_only_a_lone_dash_reads_standard_input(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", Stream(b"85 g \xff"))
    assert typed_text("F1") is None
    assert typed_text("-") == b"85 g \xff"


def test_a_closed_input_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", None)
    with pytest.raises(InputError, match="Standard input is closed; name a file"):
        typed_text("-")


def test_an_input_that_breaks_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", SimpleNamespace(buffer=Refusing()))
    with pytest.raises(InputError, match="could not be read"):
        typed_text("-")


def test_an_endless_input_stops_at_the_limit(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stdin", Stream(b"x" * (FILE_LIMIT + 1)))
    with pytest.raises(InputError, match="longer than 8 MB"):
        typed_text("-")


def krume(words: str, book: Path) -> "subprocess.CompletedProcess[str]":
    """A shell line with krume in it, as a person types it."""
    line = words.replace("krume", f"{sys.executable} -m krume")
    return subprocess.run(
        ["bash", "-c", line],
        capture_output=True,
        text=True,
        env={**os.environ, "KRUME_BOOK": str(book)},
        check=False,
    )


def test_a_reader_that_leaves_early_is_no_error(book: Path) -> None:
    done = krume("set -o pipefail; krume schema read | true", book)
    assert (done.returncode, done.stdout, done.stderr) == (0, "", "")


def test_a_full_disk_behind_the_output_is_one_sentence(book: Path) -> None:
    done = krume("krume schema read > /dev/full", book)
    assert done.returncode == 5
    assert done.stderr.startswith("Standard output could not be written to (no space left")
    assert "Traceback" not in done.stderr


def test_an_output_closed_by_the_shell_is_one_sentence(book: Path) -> None:
    done = krume("krume schema read >&-", book)
    assert done.returncode == 5
    assert "Standard output is closed" in done.stderr
    assert "Traceback" not in done.stderr


def test_letting_go_twice_is_harmless(capfd: pytest.CaptureFixture[str]) -> None:
    kept = os.dup(1)
    try:
        let_go_of_stdout()
        let_go_of_stdout()
    finally:
        os.dup2(kept, 1)
        os.close(kept)
    assert capfd.readouterr().out == ""
