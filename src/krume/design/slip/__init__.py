"""A slip at the scale: what has been weighed, and every exact way out of it, best first."""

from krume.design.slip.bowl import Bowl, Item, bowls_of, role_of
from krume.design.slip.card_rows import ALREADY, TAKE_OUT, corrected_rows
from krume.design.slip.eggs import egg_lines, egg_words
from krume.design.slip.judging import at_masses
from krume.design.slip.rescue import Rescue, rescue
from krume.design.slip.rewriting import rewritten
from krume.design.slip.split import Limit, closest_split
from krume.design.slip.state import Slip
from krume.design.slip.state import figure as slip_figure
from krume.design.slip.way import GROWING, Declined, Jar, Shift, Way, WayEggs, WayLine, WayTin

__all__ = [
    "ALREADY",
    "GROWING",
    "TAKE_OUT",
    "Bowl",
    "Declined",
    "Item",
    "Jar",
    "Limit",
    "Rescue",
    "Shift",
    "Slip",
    "Way",
    "WayEggs",
    "WayLine",
    "WayTin",
    "at_masses",
    "bowls_of",
    "closest_split",
    "corrected_rows",
    "egg_lines",
    "egg_words",
    "rescue",
    "rewritten",
    "role_of",
    "slip_figure",
]
