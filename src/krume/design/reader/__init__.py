"""The reader: any text a baker writes or pastes becomes a formula, with its questions."""

from krume.design.reader.answers import apply_answers
from krume.design.reader.decoding import decode_text
from krume.design.reader.ovens import read_oven
from krume.design.reader.reading import read

__all__ = ["apply_answers", "decode_text", "read", "read_oven"]
