"""What heating and standing did: egg by a published kill, alcohol by a published table."""

from krume.keep.treated.alcohol import AlcoholKept, alcohol_kept
from krume.keep.treated.egg_heat import EggHeat, egg_heat
from krume.keep.treated.raw_egg import RawEgg, raw_egg

__all__ = ["AlcoholKept", "EggHeat", "RawEgg", "alcohol_kept", "egg_heat", "raw_egg"]
