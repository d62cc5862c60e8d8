"""When, by whom, in what order: the scheduler, a day's timetable, what to buy, and the pace."""

from krume.plan.calendar_file import CalendarEvent, calendar_file, folded
from krume.plan.checking import faults
from krume.plan.clashes import Asking, why_not
from krume.plan.pacing import Pace, ThreePoint, pace
from krume.plan.project import Closed, Gap, Hold, Job, Placed, Project
from krume.plan.schedule import Schedule, solve
from krume.plan.shopping import NeededLine, Pack, ShoppingRow, shopping
from krume.plan.slack import slack
from krume.plan.solving import Aim, place
from krume.plan.spare_eggs import (
    EggsToBuy,
    EggsWanted,
    Spare,
    Taker,
    eggs_to_buy,
    spare_eggs,
)
from krume.plan.tightest import Tightest, tightest
from krume.plan.timetable import Load, PlanError, Task, Timetable, timetable
from krume.plan.usual import is_cut_into_layers, usual, usual_min
from krume.plan.ways import WayOut, how_many_fit, ways_out
from krume.plan.work import (
    CreamUse,
    Kitchen,
    PlannedFormula,
    PlannedTorte,
    Promise,
    batches_made,
    planned_bake_min,
    usual_kitchen,
)

__all__ = [
    "Aim",
    "Asking",
    "CalendarEvent",
    "Closed",
    "CreamUse",
    "EggsToBuy",
    "EggsWanted",
    "Gap",
    "Hold",
    "Job",
    "Kitchen",
    "Load",
    "NeededLine",
    "Pace",
    "Pack",
    "Placed",
    "PlanError",
    "PlannedFormula",
    "PlannedTorte",
    "Project",
    "Promise",
    "Schedule",
    "ShoppingRow",
    "Spare",
    "Taker",
    "Task",
    "ThreePoint",
    "Tightest",
    "Timetable",
    "WayOut",
    "batches_made",
    "calendar_file",
    "eggs_to_buy",
    "faults",
    "folded",
    "how_many_fit",
    "is_cut_into_layers",
    "pace",
    "place",
    "planned_bake_min",
    "shopping",
    "slack",
    "solve",
    "spare_eggs",
    "tightest",
    "timetable",
    "usual",
    "usual_kitchen",
    "usual_min",
    "ways_out",
    "why_not",
]
