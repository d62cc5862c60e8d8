"""What a person types about a blend: which flours, which limits, what it should come to."""

from krume.design.blend_words.limits import LIMIT_EXAMPLES, TypedLimit, read_limits
from krume.design.blend_words.members import AtHand, Members, members_of
from krume.design.blend_words.wants import PROPERTY_WORDS, property_named, read_wants

__all__ = [
    "LIMIT_EXAMPLES",
    "PROPERTY_WORDS",
    "AtHand",
    "Members",
    "TypedLimit",
    "members_of",
    "property_named",
    "read_limits",
    "read_wants",
]
