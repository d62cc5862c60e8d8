"""The sentences of the gluten page: a true answer to read aloud, and what it does not prove."""

from collections.abc import Iterable, Sequence

from krume.base import as_text
from krume.label import ROOM, GatePaper, GateRecord, GlutenGate, Statement
from krume.pantry import ClaimRule

_GRAINS = ("cereals containing gluten", "wheat", "rye", "barley", "gluten")
_MOST = 3
LOCAL = "Your local law and, where one exists, your licensing authority decide."
VERDICTS = ("contains", "no", "not yet", "yes")
"""From worst to best."""


def verdict_of(gate: GlutenGate, grains: tuple[str, ...]) -> str:
    """One of the four verdicts: only an open gate is a yes."""
    if grains:
        return "contains"
    if gate.claim_allowed:
        return "yes"
    shut = [name for name in gate.missing if not name.startswith("room: ")]
    return "no" if shut or not gate.is_open_on_ingredients else "not yet"


def grains_in(said: Statement) -> tuple[str, ...]:
    """Gluten grains that a list declares, oats aside: they need a record of their own."""
    words = (word for word in said.contains if word.startswith(_GRAINS))
    return tuple(_inside(word) for word in words if _inside(word) not in ("oat", "oats"))


def _inside(word: str) -> str:
    """The grain of `cereals containing gluten (wheat)`."""
    return word.partition("(")[2].rstrip(")") or word


def aloud(title: str, gate: GlutenGate, grains: tuple[str, ...], rule: ClaimRule) -> str:
    """The one honest sentence on a telephone; the words of a claim stand only in a yes."""
    verdict = verdict_of(gate, grains)
    if verdict == "contains":
        return (
            f"No. {title} contains {_listed(grains)}: it is not for anybody with coeliac disease."
        )
    if verdict == "no":
        return f"No. Please do not give {title} to anybody with coeliac disease: {_reasons(gate)}."
    if verdict == "not yet":
        return (
            f"Not yet, so please take it as a no for {title}: each lot that goes in has its "
            f"record, but {_room_reasons(gate)}."
        )
    return (
        f"Yes, {title} may be called gluten-free by its rule, {rule.words}: each lot that goes in "
        "has its record and the room was cleaned for that day. The cake itself "
        f"{_tested(gate)}."
    )


def _tested(gate: GlutenGate) -> str:
    good = any(record.state == "good" for record in gate.finished)
    return "has a test of its own" if good else "was not tested"


def _reasons(gate: GlutenGate) -> str:
    closed = [record for record in (*gate.records, *gate.finished) if record.is_closed]
    said = list(dict.fromkeys(_reason(record) for record in closed))
    if not said:
        said = [name for name in gate.missing if not name.startswith("room: ")]
    more = len(said) - _MOST
    told = "; ".join(said[:_MOST])
    return f"{told}; and {more} more" if more > 0 else told


def _reason(record: GateRecord) -> str:
    """Why one record is shut, without its mark: whoever telephones knows no lots."""
    goods = record.ingredient
    if record.lot is None:
        return f"there is no lot with a record of the {goods}"
    if record.state == "conflict" and record.text.startswith("may contain"):
        return f"the {goods} {record.text}"
    said = {
        "conflict": f"the papers of the {goods} speak against it ({record.text})",
        "expired": f"the record of the {goods} has run out",
        "not-yet-valid": f"the record of the {goods} is not in force yet",
        "missing": f"there is no test and no certificate of the {goods} that counts",
    }
    return said[record.state]


def _room_reasons(gate: GlutenGate) -> str:
    things = [n.removeprefix("room: ") for n in gate.missing if n != ROOM]
    said = []
    if ROOM in gate.missing:
        said.append("the room's cleaning record of the day is not there")
    if things:
        verb = "is" if len(things) == 1 else "are"
        more = "" if len(things) <= _MOST else f" and {len(things) - _MOST} more"
        named = ", ".join(things[:_MOST])
        said.append(f"in the room {named}{more} {verb} still open")
    return " and ".join(said)


def warning(gate: GlutenGate, rule: ClaimRule) -> str:
    """The sum over the papers, said as what it is; nothing where there is no finished mass."""
    if not rule.is_judged or gate.known_ppm is None:
        return "No sum: the finished mass is not known, or the rule is not judged here."
    figure = f"{as_text(gate.known_ppm, 1)} {rule.unit}"
    if gate.most_ppm is not None:
        side = "on" if rule.allows(gate.most_ppm) else "not on"
        return (
            f"Warning, for the kitchen only: by its papers the finished cake holds at most "
            f"{figure}, {side} the allowed side of {rule.words}. It is a sum, no measurement; it "
            "is never said of the cake and stands on no label."
        )
    over = "" if rule.allows(gate.known_ppm) else " That alone is too much."
    return (
        f"Warning, for the kitchen only: the known lots alone may bring up to {figure}.{over} "
        "What the others bring is not known, so there is no figure of the cake."
    )


def not_proven(gates: Sequence[GlutenGate], rule: ClaimRule) -> tuple[str, ...]:
    """What the page does not prove, whatever its verdict."""
    tested = any(record.state == "good" for gate in gates for record in gate.finished)
    cake = (
        "That this very cake was measured: the test of the finished cake was of another one."
        if tested
        else "That the cake was measured: the records are of its ingredients as they came."
    )
    allowed = f"That there is no gluten at all: the rule allows {rule.words}."
    return (
        *((allowed,) if rule.is_judged else ()),
        cake,
        "That everybody with coeliac disease tolerates it: who eats it decides, with their doctor.",
        "That it is without wheat for somebody allergic to wheat, or without oats: ask for the "
        "allergens, they are another question.",
    )


def proofs(papers: Iterable[GatePaper]) -> tuple[str, ...]:
    """What each kind of paper and each method proves, and what not, each said once."""
    found = list(papers)
    kinds = {p.kind: f"{_capital(p.kind)}: proves {p.proves}; not {p.not_proves}." for p in found}
    methods = {
        p.method: f"{_capital(p.method)} does not see {p.not_seen}." for p in found if p.not_seen
    }
    unnamed = any(p.result and not p.method and p.kind == "lab test" for p in found)
    untold = ("How it was measured is not named on every test.",) if unnamed else ()
    return (*kinds.values(), *methods.values(), *untold)


def paper_words(kind: str, text: str, method: str) -> str:
    """A paper's kind with its words and its method, none of them twice."""
    said = text if text.casefold().startswith(kind) else f"{kind}: {text}"
    return f"{said}; by {method}" if method else said


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def printed_words(gate_open: bool, sentence: str | None, rule: ClaimRule) -> str:  # noqa: FBT001
    """Whether the sentence of the rule may be printed on a label."""
    if gate_open and sentence is not None:
        return f"The label may print: {sentence}."
    return f"The sentence that {rule.rule} allows may not be printed yet, on no label and no list."


def _listed(words: Sequence[str]) -> str:
    return " and ".join(dict.fromkeys(words))
