"""The app killed in the middle of its saves, again and again, and what the book then holds."""

import http.client
import json
import os
import random
import signal
import socket
import subprocess
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from itertools import count
from pathlib import Path
from urllib.parse import urlencode

from krume.store import book_at, kept_rows, steps_of
from krume.usecases import Asked, bench_of, save_text, text_now, versions_of

HOST = "127.0.0.1"
KEY = "weighing"
_FORM = {"content-type": "application/x-www-form-urlencoded"}
_JSON = {"content-type": "application/json"}

# Holds the port, and starts the app as a process of its own at each line it is told: the app is
# there at once, and no connection is refused while it is not.
HOLDER = """\
import os, socket, sys
from pathlib import Path
import uvicorn
from starlette.testclient import TestClient
from krume.web import application

book, held = Path(sys.argv[1]), socket.socket(fileno=int(sys.argv[2]))
app = application(book)
with TestClient(app, base_url="http://127.0.0.1") as warm:
    for path in ("/bench/F1", "/formulas/F1/edit", "/pantry/packs"):
        warm.get(path)
for _ in sys.stdin:
    child = os.fork()
    if child == 0:
        config = uvicorn.Config(app, log_level="critical", access_log=False, lifespan="off")
        uvicorn.Server(config).run(sockets=[held])
        os._exit(0)
    print(child, flush=True)
    os.waitpid(child, 0)
"""


@dataclass(slots=True)
class Told:
    """What the app said it had kept: texts, rows, steps of a weighing, by their own marks."""

    texts: list[str] = field(default_factory=list)
    rows: list[str] = field(default_factory=list)
    steps: list[str] = field(default_factory=list)

    @property
    def total(self) -> int:
        """How many saves were answered."""
        return len(self.texts) + len(self.rows) + len(self.steps)


def killed(book: Path, *, times: int, seed: int = 1) -> Told:
    """Save without a pause while the app is killed so many times; what it said was kept."""
    asked, told, chance = Asked(book=book), Told(), random.Random(seed)  # noqa: S311
    save_text("formula", "killed", "Killed\n\n100 g sugar\n", asked, seen=None)
    marks = (f"mark {number}" for number in count())
    done = threading.Event()
    with _holder(book) as (process, port):
        saver = threading.Thread(target=_save_on, args=(asked, port, told, marks, done))
        saver.start()
        for _ in range(times):
            pid, before = _started(process), told.total
            while told.total == before:
                time.sleep(0.01)
            time.sleep(chance.uniform(0.0, 0.3))
            os.kill(pid, signal.SIGKILL)
        done.set()
        pid = _started(process)
        saver.join()
        os.kill(pid, signal.SIGKILL)
    return told


def lost(book: Path, told: Told) -> list[str]:
    """What was said to be kept and is not in the book."""
    asked = Asked(book=book)
    texts = "\n".join(version.text for version in versions_of("formula", "killed", asked))
    rows = {row.cells[0] for row in kept_rows(book_at(book), "packs.csv")[1]}
    key = bench_of("F1", asked).key
    steps = {step.client_id for step in steps_of(book_at(book), key)}
    gone = [mark for mark in told.texts if f"{mark}\n" not in texts]
    gone += [mark for mark in told.rows if mark not in rows]
    return gone + [mark for mark in told.steps if mark not in steps]


@contextmanager
def _holder(book: Path) -> Iterator[tuple[subprocess.Popen[str], int]]:
    with socket.create_server((HOST, 0)) as held:
        words = [sys.executable, "-c", HOLDER, str(book), str(held.fileno())]
        with subprocess.Popen(
            words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True,
            pass_fds=(held.fileno(),),
        ) as process:  # fmt: skip
            try:
                yield process, held.getsockname()[1]
            finally:
                if process.stdin is not None:
                    process.stdin.close()


def _started(process: subprocess.Popen[str]) -> int:
    assert process.stdin is not None
    assert process.stdout is not None
    process.stdin.write("go\n")
    process.stdin.flush()
    return int(process.stdout.readline())


def _save_on(
    asked: Asked, port: int, told: Told, marks: Iterator[str], done: threading.Event
) -> None:
    """Save one thing after the other; each is noted once it was answered, and only then."""
    kinds = (_save_text, _save_row, _save_step)
    while not done.is_set():
        mark = next(marks)
        try:
            kinds[int(mark.split()[1]) % len(kinds)](asked, port, told, mark)
        except (OSError, http.client.HTTPException):
            continue


def _save_text(asked: Asked, port: int, told: Told, mark: str) -> None:
    now = text_now("formula", "killed", asked)
    form = {"text": f"Killed\n\n100 g sugar\n\n{mark}\n", "seen": str(now.revision)}
    if _post(port, "/formulas/killed/edit", urlencode(form), _FORM) == 303:
        told.texts.append(mark)


def _save_row(_: Asked, port: int, told: Told, mark: str) -> None:
    form = urlencode({"item": mark, "pack_g": "1000"})
    if _post(port, "/pantry/packs/new", form, _FORM) == 303:
        told.rows.append(mark)


def _save_step(_: Asked, port: int, told: Told, mark: str) -> None:
    said = {"id": mark, "kind": "tare", "position": 0}
    body = json.dumps({"key": KEY, "said": [said]})
    if _post(port, "/bench/F1/said", body, _JSON) == 200:
        told.steps.append(mark)


def _post(port: int, path: str, body: str, headers: dict[str, str]) -> int:
    connection = http.client.HTTPConnection(HOST, port, timeout=60)
    try:
        connection.request("POST", path, body, headers)
        return connection.getresponse().status
    finally:
        connection.close()
