"""The bootstrap: what it takes for whole, and what it says when it cannot go on."""

import errno
import importlib.util
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest

from tests.house.source import ROOT


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """A copy of what the bootstrap reads, without an environment."""
    folder = tmp_path / "krume"
    for name in ("run.py", "pyproject.toml", "locks/run.txt", "locks/test.txt"):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copy(ROOT / name, folder / name)
    return folder


@pytest.fixture
def run(copy: Path) -> ModuleType:
    """The copy's `run.py` as a module."""
    spec = importlib.util.spec_from_file_location("run", copy / "run.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def make_whole(run: ModuleType, level: str) -> None:
    """An environment that looks whole: an interpreter and the stamp."""
    run.PYTHON.parent.mkdir(parents=True)
    run.PYTHON.symlink_to(sys.executable)
    run.write_stamp(level)


def test_an_environment_without_a_stamp_is_not_whole(run: ModuleType) -> None:
    assert not run.is_ready("run")
    make_whole(run, "run")
    assert run.is_ready("run")
    run.STAMP.unlink()
    assert not run.is_ready("run")


def test_the_tests_environment_serves_the_runs_but_not_the_other_way(run: ModuleType) -> None:
    make_whole(run, "run")
    assert not run.is_ready("test")
    run.write_stamp("test")
    assert run.is_ready("test")
    assert run.is_ready("run")


@pytest.mark.parametrize("name", ["locks/run.txt", "pyproject.toml"])
def test_a_change_of_what_it_depends_on_makes_it_stale(
    run: ModuleType, copy: Path, name: str
) -> None:
    make_whole(run, "run")
    with (copy / name).open("a", encoding="utf-8") as file:
        file.write("# more\n")
    assert not run.is_ready("run")


def test_another_interpreter_makes_it_stale(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    make_whole(run, "run")
    monkeypatch.setattr(sys, "version", "3.99.0 (another build)")
    assert not run.is_ready("run")


def test_an_interpreter_that_is_gone_makes_it_stale(run: ModuleType) -> None:
    make_whole(run, "run")
    run.PYTHON.unlink()
    run.PYTHON.symlink_to("no-such-interpreter")
    assert not run.is_ready("run")


def test_a_whole_environment_is_started_without_looking_further(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    make_whole(run, "run")
    monkeypatch.setattr(run, "able", lambda _: pytest.fail("another interpreter was asked"))
    monkeypatch.setattr(run.subprocess, "run", lambda *_, **__: pytest.fail("something was run"))
    run.make_environment("run")


def test_a_stopped_install_leaves_no_stamp(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(run, "need_room", lambda _: None)
    monkeypatch.setattr(run, "make_empty_environment", lambda: make_whole(run, "run"))
    monkeypatch.setattr(run, "install", lambda _: (_ for _ in ()).throw(KeyboardInterrupt))
    make_whole(run, "run")
    shutil.rmtree(run.VENV)
    with pytest.raises(KeyboardInterrupt):
        run.make_environment("test")
    assert run.is_ready("run"), "the pretended environment was made"
    with pytest.raises(KeyboardInterrupt):
        run.make_environment("test")
    assert not run.STAMP.exists()


def test_an_environment_that_somebody_else_made_is_left_alone(run: ModuleType) -> None:
    run.VENV.mkdir()
    (run.VENV / "kept.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(run.Stop, match="was not made by run"):
        run.make_empty_environment()
    assert (run.VENV / "kept.txt").read_text(encoding="utf-8") == "mine"


def test_what_a_stopped_run_left_behind_goes_before_a_new_start(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(run, "called", lambda *_: None)
    run.make_empty_environment()
    (run.VENV / "half.txt").write_text("half", encoding="utf-8")
    run.make_empty_environment()
    assert [path.name for path in run.VENV.iterdir()] == [run.OWNER.name]
    assert not run.VENV.with_name(".venv.gone").exists()


def test_a_python_without_the_means_names_the_package(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(run, "able", lambda _: False)
    with pytest.raises(run.Stop, match=r"apt-get install python3\.\d+-venv"):
        run.need_able_python()


def test_an_old_python_is_told_what_is_needed(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(run, "able", lambda _: False)
    monkeypatch.setattr(run, "OLDEST", (99, 0))
    with pytest.raises(run.Stop, match=r"needs Python 3\.11 or newer"):
        run.need_able_python()


def test_a_stand_in_that_does_not_run_is_not_able(run: ModuleType, tmp_path: Path) -> None:
    shim = tmp_path / "python3"
    shim.write_text("#!/bin/sh\nexit 127\n", encoding="utf-8")
    shim.chmod(0o755)
    assert not run.able(str(shim))
    assert not run.able(str(tmp_path / "nothing"))
    assert not run.able("")
    assert run.able(sys.executable)


def test_a_full_disk_is_found_before_anything_is_written(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(run, "NEEDED_MB", {"run": 10**12, "test": 10**12})
    with pytest.raises(OSError, match="No space left") as full:
        run.make_environment("run")
    assert run.sentence_for(full.value).startswith("The disk is full: ")
    assert not run.VENV.exists()


@pytest.mark.parametrize(
    ("number", "words"),
    [
        (errno.ENOSPC, "The disk is full"),
        (errno.EROFS, "cannot be written here"),
        (errno.EACCES, "cannot be written here"),
        (errno.EIO, "Input/output error"),
    ],
)
def test_a_failed_write_is_told_in_one_line(run: ModuleType, number: int, words: str) -> None:
    sentence = run.sentence_for(OSError(number, os.strerror(number), "a-file"))
    assert words in sentence
    assert "a-file" in sentence
    assert "\n" not in sentence


def test_a_program_that_fails_for_want_of_space_is_a_full_disk(run: ModuleType) -> None:
    code = "import sys; sys.exit('OSError: [Errno 28] No space left on device')"
    with pytest.raises(OSError, match="No space left"):
        run.called([sys.executable, "-c", code], "Nothing could be done")


def test_a_program_that_fails_is_told_by_its_last_line(run: ModuleType) -> None:
    with pytest.raises(run.Stop, match=r"^Nothing could be done: the end$"):
        run.called(
            [sys.executable, "-c", "import sys; print('a'); sys.exit('b\\nthe end')"],
            "Nothing could be done",
        )


def told(folder: Path, *words: str) -> tuple[int, str, str]:
    """Exit code, output and messages of a fresh run."""
    done = subprocess.run(
        [sys.executable, "run.py", *words], cwd=folder, capture_output=True, text=True
    )
    return done.returncode, done.stdout, done.stderr


def test_a_wrong_word_is_answered_with_the_right_ones(copy: Path) -> None:
    code, _, message = told(copy, "bake")
    assert code == 2
    assert "`bake`" in message
    assert "test, krume, python, serve, bench" in message
    assert message.count("\n") == 1


def test_help_names_every_command_and_makes_nothing(copy: Path, run: ModuleType) -> None:
    code, text, _ = told(copy, "--help")
    assert code == 0
    assert set(re.findall(r"run\.py (\w+)", text)) == set(run.COMMANDS)
    assert not (copy / ".venv").exists()


def test_a_path_with_a_space_is_refused_before_anything_is_made(copy: Path) -> None:
    spaced = copy.rename(copy.with_name("my krume"))
    code, _, message = told(spaced)
    assert code == 2
    assert "holds a space" in message
    assert not (spaced / ".venv").exists()


def test_only_what_is_pinned_by_hash_and_needs_no_building_is_installed(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    calls: list[list[str]] = []
    monkeypatch.setattr(run, "called", lambda words, _: calls.append(words))
    run.install("test")
    assert {"--require-hashes", "--no-deps", "--only-binary=:all:"} <= set(calls[0])
    assert calls[0][-1].endswith("locks/test.txt")


def test_variables_that_mix_other_packages_in_do_not_reach_krume(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PYTHONPATH", "elsewhere")
    monkeypatch.setenv("KRUME_BOOK", "my-book")
    environ = run.clean_environ()
    assert "PYTHONPATH" not in environ
    assert environ["KRUME_BOOK"] == "my-book"


class Machine:
    """A machine whose browser starts only once it has been installed."""

    def __init__(self, run: ModuleType, monkeypatch: pytest.MonkeyPatch, *, user: int) -> None:
        self.calls: list[list[str]] = []
        self.has_browser = False
        monkeypatch.setattr(run, "browser_runs", lambda: self.has_browser)
        monkeypatch.setattr(run.os, "geteuid", lambda: user)
        monkeypatch.setattr(run.shutil, "which", lambda name: f"/usr/bin/{name}")
        monkeypatch.setattr(run.subprocess, "run", self.call)

    def call(self, words: list[str], **_: object) -> None:
        """Note a call; an install brings the browser."""
        self.calls.append(words)
        self.has_browser = "install" in words


def test_a_missing_browser_is_installed_where_that_is_allowed(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    machine = Machine(run, monkeypatch, user=0)
    run.find_browser()
    assert [words[1] for words in machine.calls] == ["update", "install"]
    assert machine.calls[1][-2:] == ["chromium", "libatomic1"]
    assert "will fail" not in capsys.readouterr().err


def test_a_missing_browser_is_asked_for_where_it_is_not(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    machine = Machine(run, monkeypatch, user=1000)
    run.find_browser()
    assert machine.calls == []
    message = capsys.readouterr().err
    assert "The browser tests will fail" in message
    assert message.endswith("sudo apt-get install chromium libatomic1\n")


def test_a_browser_that_is_there_is_left_as_it_is(
    run: ModuleType, monkeypatch: pytest.MonkeyPatch
) -> None:
    machine = Machine(run, monkeypatch, user=0)
    machine.has_browser = True
    run.find_browser()
    assert machine.calls == []


def pretended(run: ModuleType, answers: dict[str, int]) -> None:
    """An environment whose `krume` says its words and ends with the code of its first one."""
    make_whole(run, "run")
    script = f"import sys; print(*sys.argv[1:]); sys.exit({answers!r}[sys.argv[1]])"
    (run.VENV / "bin" / "krume").write_text(script, encoding="utf-8")


def test_the_main_job_makes_the_sheets_of_the_demo_order(
    run: ModuleType, copy: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    pretended(run, {"book": 0, "sheet": 0})
    assert run.main([]) == 0
    assert capfd.readouterr().out.splitlines() == [
        f"The demo studio's book: {copy}/out/demo-book",
        "",
        f"sheet 101 --book {copy}/out/demo-book --out {copy}/out/order-101",
        "",
        f"To open the web app: python3 run.py serve --book {copy}/out/demo-book",
    ]


def test_the_main_job_ends_as_its_first_failing_step_does(
    run: ModuleType, capfd: pytest.CaptureFixture[str]
) -> None:
    pretended(run, {"book": 5, "sheet": 0})
    assert run.main([]) == 5
    told_lines = capfd.readouterr().out.splitlines()
    assert [line.split()[:2] for line in told_lines if line] == [["book", "demo"]]


def test_the_main_job_ends_as_the_sheets_do(run: ModuleType) -> None:
    pretended(run, {"book": 0, "sheet": 3})
    assert run.main([]) == 3
