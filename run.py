#!/usr/bin/env python3
"""Make krume's own environment once, then run it.

    python3 run.py               load the demo studio and make the sheets of its order 101
    python3 run.py test [...]    every test, several at once; words of yours go to pytest
    python3 run.py krume ...     any command of krume
    python3 run.py python ...    the environment's own interpreter
    python3 run.py serve [...]   the web app
    python3 run.py bench [...]   the benchmarks' table

It needs Python 3.11 or newer on Linux and nothing else. The environment is `.venv` beside this
file: packages pinned by version and hash in `locks/`.
"""

from __future__ import annotations

import contextlib
import errno
import fcntl
import hashlib
import os
import shutil
import subprocess
import sys
import sysconfig
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator
    from typing import TextIO

OLDEST = (3, 11)
ROOT = Path(__file__).resolve().parent
VENV = ROOT / ".venv"
PYTHON = VENV / "bin" / "python"
STAMP = VENV / "krume-stamp"
OWNER = VENV / "made-by-run.py"
LAYOUT = "1"  # raise it when `place_krume` changes what it writes
COMMANDS = ("test", "krume", "python", "serve", "bench")
NEEDED_MB = {"run": 700, "test": 1200}
SHARED = ("-n", "auto", "--maxprocesses", "4", "--dist", "loadfile")  # files of tests, shared out
BROWSER = "/usr/bin/chromium"
BROWSER_PACKAGES = ("chromium", "libatomic1")

SCRIPT = """\
import sys

from krume.cli import main

sys.argv[0] = "krume"
sys.exit(main())
"""


class Stop(Exception):  # noqa: N818 - it is no error of the program: the machine lacks something
    """What keeps the run from going on, in one sentence, with its exit code."""

    def __init__(self, sentence: str, code: int) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.code = code


def main(words: list[str]) -> int:
    """Do what the words on the command line say; the exit code."""
    command = words[0] if words else ""
    if command in ("-h", "--help", "help"):
        say(__doc__ or "", to=sys.stdout)
        return 0
    if command and command not in COMMANDS:
        raise Stop(f"`{command}` is no command of run.py; it has: {', '.join(COMMANDS)}.", 2)
    if not command:
        return main_job()
    return handed_over(command, words[1:])


def handed_over(command: str, rest: list[str]) -> int:
    """Become the environment's own program; returns only when there is nothing to become."""
    make_environment("test" if command in ("test", "bench") else "run")
    if command == "test":
        find_browser()
        become(["-m", "pytest", *(rest or SHARED)])
    if command == "bench":
        become(["-m", "benchmarks", *rest])
    if command == "python":
        become(rest, at_root=False)
    become([str(VENV / "bin" / "krume"), *(["serve"] if command == "serve" else []), *rest])
    return 1


def main_job() -> int:
    """Load the demo studio, make order 101's sheets, and say where they are."""
    if any(sign.isspace() for sign in str(ROOT)):
        raise Stop(
            f"The path of this folder holds a space, and the paths of the sheets must not: "
            f"move it to a path without one ({ROOT}).",
            2,
        )
    make_environment("run")
    book, sheets = str(ROOT / "out" / "demo-book"), str(ROOT / "out" / "order-101")
    loaded = krume("book", "demo", "--book", book, quiet=True)
    if loaded.returncode:
        say(loaded.stdout, to=sys.stdout)
        return loaded.returncode
    say(f"The demo studio's book: {book}\n", to=sys.stdout)
    made = krume("sheet", "101", "--book", book, "--out", sheets, quiet=False)
    if made.returncode == 0:
        say(f"\nTo open the web app: python3 run.py serve --book {book}", to=sys.stdout)
    return made.returncode


def krume(*words: str, quiet: bool) -> subprocess.CompletedProcess[str]:
    """Run a command of krume; a quiet one's output is kept back."""
    return subprocess.run(
        [str(PYTHON), str(VENV / "bin" / "krume"), *words],
        env=clean_environ(),
        stdout=subprocess.PIPE if quiet else None,
        text=True,
    )


def make_environment(level: str) -> None:
    """Make `.venv` hold the packages of a level (`run`, or `test` on top of it), once."""
    if is_ready(level):
        return
    need_able_python()
    with one_at_a_time():
        if is_ready(level):
            return
        need_room(level)
        if level == "test" and is_ready("run"):
            say("Adding the tests' packages to .venv (once) ...")
            STAMP.unlink()
        else:
            say("Making the environment in .venv (once; about half a minute) ...")
            make_empty_environment()
        install(level)
        place_krume()
        write_stamp(level)


def is_ready(level: str) -> bool:
    """Whether the stamp says that this very environment is whole."""
    try:
        lines = STAMP.read_text(encoding="ascii").split("\n")
    except (OSError, UnicodeDecodeError):
        return False
    return fingerprint(level) in lines and PYTHON.exists()


def fingerprint(level: str) -> str:
    """The level with a hash of all that the environment depends on."""
    parts = (LAYOUT, sys.version, sysconfig.get_platform(), str(ROOT), level)
    digest = hashlib.sha256("\n".join(parts).encode())
    for path in (lock_of(level), ROOT / "pyproject.toml"):
        digest.update(b"\0" + path.read_bytes())
    return f"{level} {digest.hexdigest()}"


def lock_of(level: str) -> Path:
    """The lock file of a level; the tests' lock holds every pin of the other."""
    return ROOT / "locks" / f"{level}.txt"


def make_empty_environment() -> None:
    """A new environment with pip in it; what a stopped run left behind goes first."""
    if VENV.exists() and not OWNER.exists() and any(VENV.iterdir()):
        raise Stop(f"{VENV} was not made by run.py: move it away, then run this again.", 2)
    gone = VENV.with_name(".venv.gone")
    shutil.rmtree(gone, ignore_errors=True)
    if VENV.exists():
        VENV.rename(gone)
    VENV.mkdir()
    OWNER.touch()
    shutil.rmtree(gone, ignore_errors=True)
    called([sys.executable, "-m", "venv", str(VENV)], "The environment could not be made")


def install(level: str) -> None:
    """Install a lock's packages: these versions, these hashes, and nothing built here."""
    pip = [str(PYTHON), "-m", "pip", "install", "--quiet", "--no-input"]
    rules = ["--disable-pip-version-check", "--no-deps", "--require-hashes", "--only-binary=:all:"]
    called([*pip, *rules, "-r", str(lock_of(level))], "The packages could not be installed")


def place_krume() -> None:
    """Let the environment find krume in `src`, and give it its command."""
    version = f"python{sys.version_info.major}.{sys.version_info.minor}"
    packages = VENV / "lib" / version / "site-packages"
    (packages / "krume.pth").write_text(f"{ROOT / 'src'}\n", encoding="utf-8")
    script = VENV / "bin" / "krume"
    script.write_text(f"#!{PYTHON}\n{SCRIPT}", encoding="utf-8")
    script.chmod(0o755)


def write_stamp(level: str) -> None:
    """Say that the environment is whole: the last thing written, and in one move."""
    levels = ("run", "test") if level == "test" else ("run",)
    fresh = STAMP.with_suffix(".new")
    fresh.write_text("".join(f"{fingerprint(one)}\n" for one in levels), encoding="ascii")
    fresh.replace(STAMP)


@contextlib.contextmanager
def one_at_a_time() -> Iterator[None]:
    """Hold other runs back while the environment is being made."""
    with (ROOT / ".venv.lock").open("w") as held:
        fcntl.flock(held, fcntl.LOCK_EX)
        yield


# --- the machine -----------------------------------------------------------------------------


def need_able_python() -> None:
    """Go on with a Python that can make the environment, or say what to install."""
    if able(sys.executable):
        return
    for name in ("python3.14", "python3.13", "python3.12", "python3.11", "python3"):
        other = shutil.which(name)
        if other and Path(other) != Path(sys.executable) and able(other):
            os.execv(other, [other, str(ROOT / "run.py"), *sys.argv[1:]])
    found = f"{sys.version_info.major}.{sys.version_info.minor}"
    if sys.version_info < OLDEST:
        raise Stop(f"krume needs Python 3.11 or newer; this is Python {found}.", 2)
    raise Stop(
        f"This Python {found} cannot make an environment: it lacks venv or ensurepip. "
        f"On Debian: apt-get install python{found}-venv",
        2,
    )


def need_room(level: str) -> None:
    """Stop before anything is half written when the disk cannot hold a level's packages."""
    if shutil.disk_usage(ROOT).free < NEEDED_MB[level] * 1_000_000:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC), str(VENV))


def able(python: str) -> bool:
    """Whether an interpreter runs, is new enough and can make an environment."""
    question = f"import ensurepip, sys, venv; sys.exit(sys.version_info < {OLDEST})"
    if not python:
        return False
    try:
        return subprocess.run([python, "-c", question], capture_output=True).returncode == 0
    except OSError:
        return False


def find_browser() -> None:
    """See that a real browser is there for the tests; install Debian's where that is allowed."""
    if browser_runs():
        return
    update = ["apt-get", "update", "-qq"]
    words = ["apt-get", "install", "-y", "-qq", "--no-install-recommends", *BROWSER_PACKAGES]
    if os.geteuid() == 0 and shutil.which("apt-get"):
        say("Installing Debian's Chromium for the browser tests (once) ...")
        environ = clean_environ() | {"DEBIAN_FRONTEND": "noninteractive"}
        for call in (update, words):
            subprocess.run(call, env=environ, stdin=subprocess.DEVNULL, stdout=sys.stderr)
    if not browser_runs():
        say(
            f"The browser tests will fail: {BROWSER} is missing or does not start. To install it: "
            f"sudo apt-get install {' '.join(BROWSER_PACKAGES)}"
        )


def browser_runs() -> bool:
    """Whether the browser and the program that drives it both start."""
    drivers = sorted(VENV.glob("lib/python3*/site-packages/playwright/driver/node"))
    try:
        return all(
            subprocess.run([program, "--version"], capture_output=True).returncode == 0
            for program in (BROWSER, *map(str, drivers))
        )
    except OSError:
        return False


# --- small matters ---------------------------------------------------------------------------


def become(words: list[str], *, at_root: bool = True) -> None:
    """Replace this process by the environment's interpreter."""
    sys.stdout.flush()
    sys.stderr.flush()
    if at_root and words[0] == "-m":
        os.chdir(ROOT)
    os.execve(PYTHON, [str(PYTHON), *words], clean_environ())


def called(words: list[str], trouble: str) -> None:
    """Call a program quietly; when it fails, stop with its own last line."""
    done = subprocess.run(
        words, env=clean_environ(), capture_output=True, stdin=subprocess.DEVNULL, text=True
    )
    if done.returncode == 0:
        return
    told = done.stdout + done.stderr
    for number in (errno.ENOSPC, errno.EROFS, errno.EDQUOT):
        if f"Errno {number}]" in told:
            raise OSError(number, os.strerror(number), str(VENV))
    last = [line for line in told.splitlines() if line.strip()][-1:] or ["it said nothing"]
    raise Stop(f"{trouble}: {last[0].strip()}", 1)


def clean_environ() -> dict[str, str]:
    """The environment variables without those that would mix other packages in."""
    dropped = ("PYTHONPATH", "PYTHONHOME", "PIP_USER", "PIP_TARGET", "PIP_PREFIX")
    return {name: value for name, value in os.environ.items() if name not in dropped}


def sentence_for(trouble: OSError) -> str:
    """What a failed write means for the person."""
    where = trouble.filename or ROOT
    if trouble.errno in (errno.ENOSPC, errno.EDQUOT):
        return f"The disk is full: {where} could not be written. Free about 1200 MB and run again."
    if trouble.errno in (errno.EROFS, errno.EACCES, errno.EPERM):
        return f"{where} cannot be written here: copy the folder to a place where you may write."
    return f"{where}: {trouble.strerror or trouble}"


def say(text: str, *, to: TextIO | None = None) -> None:
    """Say something to the person, beside the program's own output unless told otherwise."""
    print(text, file=to or sys.stderr, flush=True)


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except Stop as stop:
        say(stop.sentence)
        sys.exit(stop.code)
    except OSError as trouble:
        say(sentence_for(trouble))
        sys.exit(5)
    except KeyboardInterrupt:
        say("Stopped. What was half made is made afresh by the next run.")
        sys.exit(130)
