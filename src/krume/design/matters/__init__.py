"""Which weighing matters: what a usual slip of each line does to the figures with a band."""

from krume.design.matters.doubt import Doubt, doubts
from krume.design.matters.ranking import Ranking, Scatter, Share, ranking
from krume.design.matters.slope import Slope, slopes, with_masses
from krume.design.matters.twice import Effect, LineMatter, Matters, Twice, matters

__all__ = [
    "Doubt",
    "Effect",
    "LineMatter",
    "Matters",
    "Ranking",
    "Scatter",
    "Share",
    "Slope",
    "Twice",
    "doubts",
    "matters",
    "ranking",
    "slopes",
    "with_masses",
]
