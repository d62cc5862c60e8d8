"""How long it takes until the command line answers."""

import sys
from pathlib import Path

from benchmarks.measure import Row, programs

KRUME = (sys.executable, str(Path(sys.executable).with_name("krume")))
IMPORT_CLICK = (sys.executable, "-c", "import click")
BARE = (sys.executable, "-c", "pass")


def rows() -> list[Row]:
    """`krume --help` and `import krume`, beside the interpreter and the library they rest on."""
    help_, click = programs([*KRUME, "--help"], IMPORT_CLICK, times=15)
    door, bare = programs((sys.executable, "-c", "import krume"), BARE, times=15)
    return [
        Row("krume --help", help_.time_s * 1000, click.time_s * 1000, "ms", "import click", 3.0),
        Row("import krume", door.time_s * 1000, bare.time_s * 1000, "ms", "bare Python"),
        Row("krume --help, memory", help_.memory_mb, click.memory_mb, "MB", "import click"),
    ]
