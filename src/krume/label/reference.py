"""The reference amount of a product by its kind, and the servings that follow from it."""

from krume.evidence import Row, column, load, optional
from krume.label.product import Product
from krume.label.servings import Servings, us_servings
from krume.properties import constants

REFERENCE_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("whole"),
    optional("families"),
    column("amount_g", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


def reference_amount(product: Product) -> Row | None:
    """Row of the reference amount of a product; None for a cream on its own."""
    rows = {row.text("key"): row for row in load("us_reference.csv", REFERENCE_COLUMNS)}
    kinds = [kind for kind in product.families.values() if kind is not None]
    if product.kind == "torte":
        kinds = ["tart"] if "tart" in kinds else ["torte"]
    found = next(
        (r for r in rows.values() if kinds and kinds[0] in r.text("families").split(";")), None
    )
    if found is None or found.text("key") == "tart":
        return found
    return rows["heavy"] if is_heavy(product) else found


def is_heavy(product: Product) -> bool:
    """Whether fruit, nuts and vegetables make a heavy cake of it by the finished mass.

    A share that is not known is not heavy here: then the serving is not known either.
    """
    if product.finished_g is None or product.finished_g <= 0:
        return False
    mass = sum(used.mass_g or 0.0 for used in product.used if used.role in ("fruit", "nut"))
    return 100 * mass / product.finished_g >= constants("declared.csv")["heavy-cake-share"]


def servings_of(product: Product, *, slices: int | None = None) -> Servings | None:
    """Serving of a product by the reference amounts; None where there is none for it.

    With `slices` one of so many is sold on its own, and is what the serving is taken from.
    """
    row = reference_amount(product)
    if row is None or product.finished_g is None or product.finished_g <= 0:
        return None
    amount = row.number_of("amount_g")
    if slices is not None:
        return us_servings(product.finished_g / slices, reference_g=amount, whole="slice")
    return us_servings(product.finished_g, reference_g=amount, whole=row.text("whole"))
