"""Taking a measure: of a call in this process, and of a program with its memory."""

import os
import subprocess
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from statistics import median


@dataclass(frozen=True, slots=True)
class Taken:
    """What one program took: wall time and the largest memory it held."""

    time_s: float
    memory_mb: float


@dataclass(frozen=True, slots=True)
class Row:
    """One line of the table: a measure, its peer's, and what their ratio should stay below."""

    what: str
    own: float
    peer: float
    unit: str
    peer_name: str
    want_at_most: float | None = None

    @property
    def ratio(self) -> float:
        """How many times the peer's measure ours is."""
        return self.own / self.peer


def call_s(call: Callable[[], object], *, times: int) -> float:
    """Median wall time of a call in this process, one call before it left out."""
    call()
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        call()
        taken.append(time.perf_counter() - start)
    return median(taken)


def program(words: Sequence[str]) -> Taken:
    """What one run of a program took."""
    start = time.perf_counter()
    child = subprocess.Popen(words, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE, text=True)
    told = child.stderr.read() if child.stderr else ""
    _, status, usage = os.wait4(child.pid, 0)
    taken = Taken(time.perf_counter() - start, usage.ru_maxrss / 1024)
    child.returncode = os.waitstatus_to_exitcode(status)
    if child.returncode:
        raise RuntimeError(f"{' '.join(words[:4])} ended with {child.returncode}: {told[-400:]}")
    return taken


def programs(own: Sequence[str], peer: Sequence[str], *, times: int) -> tuple[Taken, Taken]:
    """Medians of two programs run in turn, so that both see the same machine."""
    program(own)
    program(peer)
    pairs = [(program(own), program(peer)) for _ in range(times)]
    return _middle([a for a, _ in pairs]), _middle([b for _, b in pairs])


def _middle(taken: list[Taken]) -> Taken:
    return Taken(median(t.time_s for t in taken), median(t.memory_mb for t in taken))
