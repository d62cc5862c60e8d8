"""Eggs across orders: how many of which size to crack, and what takes the rest."""

from krume.plan.eggs.cracked import Cracked, Cracking, Filled, Loose, cracking_faults, left_over
from krume.plan.eggs.cracking import EggsError, crack, missing_eggs
from krume.plan.eggs.filling import Filling, fillings
from krume.plan.eggs.packs import packs_for
from krume.plan.eggs.reading import read_house, read_shop
from krume.plan.eggs.rules import (
    SpareUse,
    cold_days,
    egg_cautions,
    egg_good,
    liquid_words,
    near_enough_fraction,
    spare_use,
)
from krume.plan.eggs.spread import Spread, spread_of
from krume.plan.eggs.using_up import Taken, Taker, UsedUp, most_used, offers, use_up
from krume.plan.eggs.wanting import Bowl, EggNeed, EggStock, Liquid, bowls, each_g

__all__ = [
    "Bowl",
    "Cracked",
    "Cracking",
    "EggNeed",
    "EggStock",
    "EggsError",
    "Filled",
    "Filling",
    "Liquid",
    "Loose",
    "SpareUse",
    "Spread",
    "Taken",
    "Taker",
    "UsedUp",
    "bowls",
    "cold_days",
    "crack",
    "cracking_faults",
    "each_g",
    "egg_cautions",
    "egg_good",
    "fillings",
    "left_over",
    "liquid_words",
    "missing_eggs",
    "most_used",
    "near_enough_fraction",
    "offers",
    "packs_for",
    "read_house",
    "read_shop",
    "spare_use",
    "spread_of",
    "use_up",
]
