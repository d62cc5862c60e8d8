"""What a buyer must be told before a sale at a distance: a text for a message or a shop's page."""

from krume.usecases.label.result import LabelOf

_ASK = (
    "If you have an allergy or coeliac disease, ask first: the answer comes from the lots that "
    "really go in."
)
_LAW = "Local law decides what else must be told before a sale."


def before_sale(label: LabelOf) -> str:
    """Allergens, traces and what is not known of one thing, with its list; nothing is promised."""
    lines = (
        f"{label.title}: before you order",
        _contains(label),
        _traces(label),
        *(said for said in label.sentences if said.startswith(("Made where", "Contains alcohol"))),
        *(said for said in label.sentences if said == "Made with raw egg."),
        _gluten(label),
        f"Ingredients: {label.ingredients.replace(chr(10), '; ')}." if label.ingredients else "",
        *_unknown(label),
        _ASK,
        _LAW,
    )
    return "\n".join(line for line in lines if line)


def _is_open(label: LabelOf) -> bool:
    return any(item.closes == "label" for item in label.open_items) or not label.ingredients


def _contains(label: LabelOf) -> str:
    found = ", ".join(label.contains)
    if _is_open(label):
        said = f"Allergens in it: {found}. " if found else ""
        return f"{said}Of part of it that is not known yet; see below."
    return f"Allergens in it: {found}." if found else "None of the allergens of the list is in it."


def _traces(label: LabelOf) -> str:
    if label.may_contain:
        return f"May contain, by what the suppliers say: {', '.join(label.may_contain)}."
    return "The suppliers' papers name no traces; that is no promise that there are none."


def _gluten(label: LabelOf) -> str:
    """The gluten sentence through the open gate alone; else that none is made."""
    if label.gluten.claim_allowed and label.gluten.sentence:
        return f"{label.gluten.sentence}."
    return "Nothing is promised about gluten."


def _unknown(label: LabelOf) -> tuple[str, ...]:
    found = [item for item in label.open_items if item.closes == "label"]
    if not found:
        return ()
    return ("Not known yet:", *(f"- {item.of}: {item.what}" for item in found))
