"""When, by whom, in what order: the pace of a chain of tasks."""

from krume.plan.pacing import Pace, ThreePoint, pace

__all__ = ["Pace", "ThreePoint", "pace"]
