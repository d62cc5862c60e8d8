"""Signs that turn the letters of a line round, taken out of what is shown."""

import pytest

from krume.base import unturned


@pytest.mark.parametrize("code", [*range(0x202A, 0x202F), *range(0x2066, 0x206A)])
def test_no_sign_that_turns_a_line_round_is_left(code: int) -> None:
    assert unturned(f"tea{chr(code)}hw flour{chr(code)}") == "teahw flour"


@pytest.mark.parametrize("text", ["wheat", "קמח", "دقيق", "a\u200fb", "½ Ő", "👩\u200d🍳", ""])
def test_words_of_every_script_stay_as_they_are(text: str) -> None:
    assert unturned(text) == text
