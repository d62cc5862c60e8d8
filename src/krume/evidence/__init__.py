"""Where numbers come from: sources, and the strict loader of the packed tables."""

from krume.evidence.columns import Cell, Column, column, optional
from krume.evidence.sources import Source, figures, source, sources
from krume.evidence.tables import Row, data_version, load, packed_files, packed_text, read_table

__all__ = [
    "Cell",
    "Column",
    "Row",
    "Source",
    "column",
    "data_version",
    "figures",
    "load",
    "optional",
    "packed_files",
    "packed_text",
    "read_table",
    "source",
    "sources",
]
