"""Reading and balancing many formulas on one core."""

import json
import sys
import time
import tomllib

from benchmarks.measure import PEAK, Row, told
from benchmarks.texts import many_formulas

FEW, MANY = 1_000, 10_000


def rows() -> list[Row]:
    """Ten thousand formulas, and whether each of them costs what each of a thousand does."""
    few, many = _in_own_process(FEW), _in_own_process(MANY)
    each = f"each of {FEW:,}"
    return [
        Row(f"{MANY:,} formulas read", many["read_s"], many["toml_s"], "s", "tomllib, same lines"),
        Row("and balanced", many["both_s"], many["read_s"], "s", "only read"),
        Row("one of them", many["both_s"] / MANY * 1e3, few["both_s"] / FEW * 1e3, "ms", each, 1.2),
        Row("their memory", many["memory_mb"], few["memory_mb"], "MB", f"{FEW:,} formulas"),
    ]


def _in_own_process(count: int) -> dict[str, float]:
    words = [sys.executable, "-m", "benchmarks.reading", str(count)]
    taken: dict[str, float] = json.loads(told(words))
    return taken


def taken_by(count: int) -> dict[str, float]:
    """Processor time to read and balance so many texts, and the most memory held meanwhile."""
    from krume.design import balance, read

    texts = many_formulas(count)
    balance(read(texts[0]).value)
    read_s = both_s = toml_s = 0.0
    for text in texts:
        start = time.process_time()
        formula = read(text).value
        middle = time.process_time()
        balance(formula)
        end = time.process_time()
        read_s, both_s = read_s + middle - start, both_s + end - start
    peak_mb = eval(PEAK)  # noqa: S307 - our own words, the same as a fresh interpreter is given
    for text in texts:
        plain = _as_toml(text)
        start = time.process_time()
        tomllib.loads(plain)
        toml_s += time.process_time() - start
    return {"read_s": read_s, "both_s": both_s, "toml_s": toml_s, "memory_mb": peak_mb}


def _as_toml(text: str) -> str:
    lines = (f"l{at} = {json.dumps(line)}" for at, line in enumerate(text.splitlines()))
    return "\n".join(lines)


if __name__ == "__main__":
    print(json.dumps(taken_by(int(sys.argv[1]))))
