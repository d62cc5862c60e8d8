"""Whether the layers of a torte hold: what lies on each cream against what it carries."""

from krume.build.standing.crushing import Crush
from krume.build.standing.firmness import Firmness, firmness
from krume.build.standing.judging import (
    VERDICTS,
    Standing,
    StandingCheck,
    StandingLayer,
    standing,
)
from krume.build.standing.squeezing import disc_carries_pa, edge_needs_pa, strip_carries_pa

__all__ = [
    "VERDICTS",
    "Crush",
    "Firmness",
    "Standing",
    "StandingCheck",
    "StandingLayer",
    "disc_carries_pa",
    "edge_needs_pa",
    "firmness",
    "standing",
    "strip_carries_pa",
]
