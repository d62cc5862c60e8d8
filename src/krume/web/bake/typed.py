"""What is typed into the form of a bake, as it is wished, and what of it is no number."""

from krume.usecases import BakeWish
from krume.web.frame.forms import Form

FIELDS = {
    "--tin": "tin",
    "--oven": "oven",
    "--altitude": "altitude",
    "--oven-name": "oven_name",
    "--beside": "beside",
    "--jacket": "jacket",
    "--under": "under",
    "--rack": "rack",
    "--cold-start": "cold",
    "--door": "door",
}
"""The field that an option of the command is typed into."""
KEYS = ("fan", *FIELDS.values())
"""Every field that an address of the page may carry, `work` apart."""
CHOICES = {
    "rack": (("middle", "in the middle"), ("low", "low"), ("high", "high")),
    "under": (
        ("rack", "the bare rack"),
        ("tray", "a tray"),
        ("insulated", "a double tray"),
        ("stone", "a hot stone"),
    ),
    "jacket": (
        ("none", "nothing"),
        ("wrapped", "a wet strip"),
        ("water", "water, the tin stands in it"),
    ),
}
"""Fields with few answers: each with its word and what the page says."""


def wished(form: Form) -> tuple[BakeWish, dict[str, str]]:
    """What is wished, and by field what is wrong with a number as typed."""
    wrong: dict[str, str] = {}
    height = _number(form, "altitude", "no height. Type it in metres, for example 850.", wrong)
    cold = _number(form, "cold", "no temperature. Type it in °C, for example 20.", wrong)
    wish = BakeWish(
        tin=form.get("tin") or None,
        oven=form.get("oven") or None,
        fan=bool(form.get("fan")),
        altitude_m=height or 0.0,
        oven_name=form.get("oven_name") or None,
        jacket=form.get("jacket") or "none",
        under=form.get("under") or "rack",
        rack=form.get("rack") or "middle",
        cold_start_c=cold,
        door_min=_minutes(form, wrong),
        beside=form.get("beside") or None,
    )
    return wish, wrong


def _number(form: Form, name: str, words: str, wrong: dict[str, str]) -> float | None:
    typed = form.get(name)
    if not typed:
        return None
    found = _float(typed)
    if found is None:
        wrong[name] = f"“{typed}” is {words}"
    return found


def _minutes(form: Form, wrong: dict[str, str]) -> tuple[float, ...]:
    """Minutes with spaces, commas or semicolons between them."""
    pieces = form.get("door").replace(";", " ").replace(",", " ").split()
    found = [_float(piece) for piece in pieces]
    if None in found:
        bad = pieces[found.index(None)]
        wrong["door"] = f"“{bad}” is no minute. Type minutes with spaces between: 10 20."
        return ()
    return tuple(minute for minute in found if minute is not None)


def _float(text: str) -> float | None:
    try:
        found = float(text.replace(",", "."))
    except ValueError:
        return None
    return found if abs(found) < _MOST else None


_MOST = 1e6
