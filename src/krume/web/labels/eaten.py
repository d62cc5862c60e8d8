"""What is asked of a label's nutrition: slices, a slice on its own, the spread of the tables."""

from krume.usecases import MOST_SLICES, NutritionWish
from krume.web.frame.forms import Form

FIELDS = ("slices", "serving", "spread")
SERVINGS = ("cake", "slice")


def nutrition_wish(form: Form) -> tuple[Form, NutritionWish]:
    """The wish of a form; what cannot be used is said beside its field and left out."""
    form, slices = _slices(form)
    sold = form.get("serving")
    if sold and sold not in SERVINGS:
        form = form.with_wrong("serving", f"“{sold}” is none of {' or '.join(SERVINGS)}.")
    wish = NutritionWish(
        slices=slices, with_spread=form.get("spread") == "yes", by_slice=sold == "slice"
    )
    return form, wish


def _slices(form: Form) -> tuple[Form, int | None]:
    text = form.get("slices")
    if not text:
        return form, None
    if text.isascii() and text.isdigit() and 1 <= int(text[:9]) <= MOST_SLICES:
        return form, int(text[:9])
    wrong = f"“{text}” is no number of slices. Type 1 to {MOST_SLICES}."
    return form.with_wrong("slices", wrong), None
