"""How long it lasts: mould, lethality, cooling, need of cold."""

from krume.keep.cold import needs_cold
from krume.keep.cooling_log import Cooling, cooling
from krume.keep.lethality import lethality_min
from krume.keep.mould import mould_free_days

__all__ = ["Cooling", "cooling", "lethality_min", "mould_free_days", "needs_cold"]
