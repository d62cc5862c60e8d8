"""The sentences of the gluten page: a true answer to read aloud, and what it does not prove."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from krume.base import as_text
from krume.label import ROOM, GatePaper, GateRecord, GlutenGate, Statement
from krume.pantry import ClaimRule

_GRAINS = ("cereals containing gluten", "wheat", "rye", "barley", "gluten")
_MOST = 3
_BESIDE = ", while another paper says"
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


@dataclass(frozen=True, slots=True)
class Told:
    """What is said of one thing: its verdict, its name, and the reason in half a sentence."""

    verdict: str
    title: str
    reason: str


def told(title: str, gate: GlutenGate, grains: tuple[str, ...]) -> Told:
    """What is to be said of one thing."""
    verdict = verdict_of(gate, grains)
    reasons = {
        "contains": lambda: f"it contains {_listed(grains)}",
        "no": lambda: _reasons(gate),
        "not yet": lambda: f"each lot that goes in has its record, but {_room_reasons(gate)}",
        "yes": lambda: (
            "each lot that goes in has its record and the room was cleaned for that day. The cake "
            f"itself {_tested(gate)}"
        ),
    }
    return Told(verdict, title, reasons[verdict]())


def aloud(said: Sequence[Told], rule: ClaimRule) -> str:
    """The honest answer on a telephone: the worst things speak, each with its reason.

    The words of a claim stand only in a yes.
    """
    worst = min((each.verdict for each in said), key=VERDICTS.index, default="no")
    mine = tuple(dict.fromkeys(each for each in said if each.verdict == worst))
    if not mine:
        return "No. Nothing is known of what is in it."
    names = _listed([each.title for each in mine])
    leads = {
        "contains": f"No. {names} {'is' if len(mine) == 1 else 'are'} not for anybody with coeliac "
        "disease",
        "no": f"No. Please do not give {names} to anybody with coeliac disease",
        "not yet": f"Not yet, so please take it as a no for {names}",
        "yes": f"Yes, {names} may be called gluten-free by the rule, {rule.words}",
    }
    if len(mine) == 1:
        return f"{leads[worst]}: {mine[0].reason}."
    return " ".join((f"{leads[worst]}.", *(f"{each.title}: {each.reason}." for each in mine)))


def _tested(gate: GlutenGate) -> str:
    good = any(record.state == "good" for record in gate.finished)
    return "has a test of its own" if good else "was not tested"


def _reasons(gate: GlutenGate) -> str:
    """Why it is shut, without the marks of lots: whoever telephones knows none."""
    closed = [record for record in (*gate.records, *gate.finished) if record.is_closed]
    said = [_against(record) for record in closed if record.state == "conflict"]
    for state, words in _SAID.items():
        goods = dict.fromkeys(r.ingredient for r in closed if _turn(r) == state)
        if goods:
            said.append(words.format(_listed_short(list(goods))))
    said = list(dict.fromkeys(said)) or [n for n in gate.missing if not n.startswith("room: ")]
    return "; ".join(said)


_SAID = {
    "expired": "the record of the {} has run out",
    "not-yet-valid": "the record of the {} is not in force yet",
    "missing": "there is no test and no certificate that counts of the {}",
    "no lot": "there is no lot with a record of the {}",
}


def _turn(record: GateRecord) -> str:
    return "no lot" if record.lot is None else record.state


def _against(record: GateRecord) -> str:
    """What speaks against goods, without what speaks for them."""
    said, goods = record.text.partition(_BESIDE)[0], record.ingredient
    if any(paper.kind == "doubt" and paper.state == "conflict" for paper in record.papers):
        return f"the bag of {goods} is in doubt in this kitchen ({said})"
    if said.startswith("may contain"):
        return f"the {goods} {said}"
    return f"the papers of the {goods} speak against it ({said})"


def _listed_short(goods: list[str]) -> str:
    """The first of some goods, and how many there are beside."""
    more = len(goods) - _MOST
    named = ", ".join(goods[:_MOST]) if more > 0 else _listed(goods)
    return f"{named} and {more} more" if more > 0 else named


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
