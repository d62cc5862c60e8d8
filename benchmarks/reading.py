"""Reading and balancing many formulas on one core."""

import json
import resource
import subprocess
import sys
import time
import tomllib

from benchmarks.measure import Row
from benchmarks.texts import many_formulas

FEW, MANY = 1_000, 10_000


def rows() -> list[Row]:
    """Ten thousand formulas, and whether each of them costs what each of a thousand does."""
    few, many = _in_own_process(FEW), _in_own_process(MANY)
    each = f"each of {FEW:,}"
    return [
        Row(f"{MANY:,} formulas", many["time_s"], few["time_s"], "s", f"{FEW:,} formulas", 12.0),
        Row("one of them", many["time_s"] / MANY * 1e3, few["time_s"] / FEW * 1e3, "ms", each, 1.2),
        Row("their memory", many["memory_mb"], few["memory_mb"], "MB", f"{FEW:,} formulas", 1.5),
        Row("the same lines", many["time_s"], many["toml_s"], "s", "tomllib, lines as strings"),
    ]


def _in_own_process(count: int) -> dict[str, float]:
    words = [sys.executable, "-m", "benchmarks.reading", str(count)]
    done = subprocess.run(words, capture_output=True, text=True, check=True)
    taken: dict[str, float] = json.loads(done.stdout)
    return taken


def taken_by(count: int) -> dict[str, float]:
    """Time to read and balance so many texts, one after another, and the memory at its largest."""
    from krume.design import balance, read

    texts = many_formulas(count)
    read(texts[0])
    start = time.perf_counter()
    for text in texts:
        balance(read(text).value)
    whole_s = time.perf_counter() - start
    plain = [_as_toml(text) for text in texts]
    start = time.perf_counter()
    for text in plain:
        tomllib.loads(text)
    toml_s = time.perf_counter() - start
    peak_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    return {"time_s": whole_s, "toml_s": toml_s, "memory_mb": peak_mb}


def _as_toml(text: str) -> str:
    lines = (f"l{at} = {json.dumps(line)}" for at, line in enumerate(text.splitlines()))
    return "\n".join(lines)


if __name__ == "__main__":
    print(json.dumps(taken_by(int(sys.argv[1]))))
