"""A torte built and drawn both ways, warm, beside what is asked for."""

import tempfile
from pathlib import Path

from benchmarks.measure import Row, call_s

ASKED_MS = 50.0


def rows() -> list[Row]:
    """Each demo torte built with its section and its side view, from formulas already read."""
    with tempfile.TemporaryDirectory() as folder:
        own = {name: drawn_s(Path(folder) / "book", name) for name in ("T1", "T2", "T3")}
    limit = "what is asked for"
    return [
        Row(f"torte plan of {name} with drawings, warm", taken * 1e3, ASKED_MS, "ms", limit, 1.0)
        for name, taken in own.items()
    ]


def drawn_s(book: Path, name: str, *, times: int = 30) -> float:
    """Median time of a torte: built, summed, said and drawn, nothing of it kept."""
    from krume.build import build_torte
    from krume.usecases import Asked, load_demo
    from krume.usecases.torte.build import parts_of, torte_of
    from krume.usecases.torte.result import build_result

    asked = Asked(book=book)
    load_demo(asked)
    made = torte_of(name, asked)
    parts = parts_of(made.formulas)

    def once(_: int) -> object:
        built = build_torte(made.plan, parts)
        return build_result(made.plan, getattr(built, "value", None), parts)

    return call_s(once, times=times)
