"""Taking a measure: of a call in this process, and of a program with its memory."""

import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import count
from statistics import median

# The most memory that this process held since its program started; what it was forked from held
# more or less, which the resource usage of a child would count in.
PEAK = "next(int(l.split()[1]) for l in open('/proc/self/status') if l.startswith('VmHWM')) / 1024"


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


def call_s(call: Callable[[int], object], *, times: int) -> float:
    """Median time of a call in this process, one before it left out; it is told its number."""
    numbers = count()
    call(next(numbers))
    taken = []
    for _ in range(times):
        start = time.process_time()
        call(next(numbers))
        taken.append(time.process_time() - start)
    return median(taken)


def programs_s(own: Sequence[str], peer: Sequence[str], *, times: int) -> tuple[float, float]:
    """Medians of two programs run in turn, so that both see the same machine."""
    program_s(own)
    program_s(peer)
    pairs = [(program_s(own), program_s(peer)) for _ in range(times)]
    return median(a for a, _ in pairs), median(b for _, b in pairs)


def program_s(words: Sequence[str]) -> float:
    """Wall time of one run of a program."""
    start = time.perf_counter()
    told(words)
    return time.perf_counter() - start


def memory_mb(code: str) -> float:
    """The most memory that a fresh interpreter held while it ran some code."""
    return float(told([sys.executable, "-c", f"{code}\nprint({PEAK})"]).splitlines()[-1])


def told(words: Sequence[str]) -> str:
    """What a program prints; one that fails ends the benchmark with its own words."""
    done = subprocess.run(words, capture_output=True, text=True)
    if done.returncode:
        raise RuntimeError(f"{' '.join(words)[:80]} ended with {done.returncode}: {done.stderr}")
    return done.stdout
