"""Signs that turn the letters of a line round, taken out of what is shown."""

import re

_TURNING = re.compile("[\u202a-\u202e\u2066-\u2069]")


def unturned(text: str) -> str:
    r"""Text without the signs that turn a line round; letters of every script stay.

    What reads one way on the bag must not read another way on a label. Embeddings, overrides and
    isolates go; a script that runs from right to left needs none of them.

    >>> unturned("\u202eruolf taehw"), unturned("קמח")
    ('ruolf taehw', 'קמח')
    """
    return text if text.isascii() else _TURNING.sub("", text)
