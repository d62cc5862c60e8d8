"""A load as a baker types it: how many, what, in which tin, on which shelf, at what minute."""

import re

from krume.base import InputError
from krume.usecases.oven.together import LoadWish

_LOAD = re.compile(
    r"^\s*(?:(?P<tins>\d{1,3})\s*(?:[x×]\s*|\s))?(?P<formula>\S.*?)"
    r"(?:\s+in\s+(?P<tin>\S.*?))?"
    r"(?:\s+on\s+(?:the\s+)?(?P<rack>low|middle|high)(?:\s+(?:shelf|rack))?)?"
    r"(?:\s*@\s*(?P<at>\d+(?:[.,]\d+)?)(?:\s*min)?)?\s*$"
)
_WANT = '"F1", "2 F1", "F3 on low @10", "2 F1 in round 18 x 7 cm @10"'


def read_load(text: str) -> LoadWish:
    """A load from its text; raises InputError where it is none.

    >>> read_load("2 F1 in round 18 x 7 cm @10")
    LoadWish(formula='F1', tin='round 18 x 7 cm', tins=2, in_min=10.0, rack='middle')
    >>> read_load("F3").in_min
    0.0
    """
    found = _LOAD.match(text)
    if found is None or "@" in found["formula"]:
        what = "Type how many, what, its tin, its shelf and @ the minute"
        message = f"“{text}” is no load. {what}: {_WANT}."
        raise InputError(message, field="LOAD", got=text, want=_WANT)
    at = (found["at"] or "0").replace(",", ".")
    return LoadWish(
        found["formula"].strip(), found["tin"], int(found["tins"] or 1), float(at),
        found["rack"] or "middle",
    )  # fmt: skip
