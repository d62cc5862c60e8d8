"""The sources that stand behind what is said of cooling."""

from krume.bake import cooling_figures


def cooling_sources() -> tuple[str, ...]:
    """Keys of the sources of all figures of cooling, each once."""
    return tuple(sorted({figure.source for figure in cooling_figures().values()}))
