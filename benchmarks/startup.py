"""How long it takes until the command line answers."""

import sys
from pathlib import Path

from benchmarks.measure import Row, memory_mb, programs_s

KRUME = (sys.executable, str(Path(sys.executable).with_name("krume")))
IMPORT_CLICK = "import click"
HELP = """\
import sys
from krume.cli import main
sys.argv = ["krume", "--help"]
try:
    main()
except SystemExit:
    pass
"""


def rows() -> list[Row]:
    """`krume --help` and `import krume`, beside the interpreter and the library they rest on."""
    help_s, click_s = programs_s((*KRUME, "--help"), (sys.executable, "-c", IMPORT_CLICK), times=15)
    door_s, bare_s = programs_s(
        (sys.executable, "-c", "import krume"), (sys.executable, "-c", "pass"), times=15
    )
    help_mb, click_mb = memory_mb(HELP), memory_mb(IMPORT_CLICK)
    return [
        Row("krume --help", help_s * 1000, click_s * 1000, "ms", IMPORT_CLICK, 3.0),
        Row("import krume", door_s * 1000, bare_s * 1000, "ms", "bare Python"),
        Row("krume --help, memory", help_mb, click_mb, "MB", IMPORT_CLICK),
    ]
