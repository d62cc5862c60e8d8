"""The way that was chosen, kept: corrected text, bench card, jar's blend card, the way back."""

import json
from dataclasses import dataclass, replace
from pathlib import Path

from krume import __version__
from krume.base import InputError, NotFoundError, Notice, as_text
from krume.design import (
    ALREADY,
    TAKE_OUT,
    Formula,
    Rescue,
    Way,
    Weighing,
    at_masses,
    corrected_rows,
    read,
    rewritten,
    weigh_out,
)
from krume.evidence import data_version
from krume.publish import (
    Blend,
    CardRow,
    Imprint,
    bench_card,
    blend_leaf,
    card_dict,
    card_html,
    card_pdf,
    missing_signs,
)
from krume.store import book_at, place_all, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.as_json import Json, plain
from krume.usecases.asking.clock import now
from krume.usecases.asking.kind import made_of
from krume.usecases.asking.read import FormulaRead
from krume.usecases.asking.slug import short_name, slug
from krume.usecases.own_oven.own_oven import own_dial_c
from krume.usecases.sheets.blend_card import blends_of
from krume.usecases.sheets.imprint import imprint_of
from krume.usecases.sheets.manifest import MANIFEST, listed, read_manifest, run_of, stamped
from krume.usecases.sheets.order_files import leaf_files
from krume.usecases.sheets.result import Files, SheetFile
from krume.usecases.sheets.torte_sheet import lot_animal
from krume.usecases.slip.result import SlipResult
from krume.usecases.sold.declared import declared_of_all
from krume.usecases.sold.gluten_words import gluten_of_all

_RESIZED = ("scale", "scale-exact", "down", "follow", "second")


@dataclass(frozen=True, slots=True)
class Chosen:
    """A way that was chosen, counted from 1, and where its sheets go.

    `words` is the command that shows all ways again.
    """

    name: str
    asked: Asked
    read: FormulaRead
    found: Rescue
    choose: int
    out: Path | None
    paper: str
    words: tuple[str, ...]

    @property
    def way(self) -> Way:
        """The way itself."""
        ways = self.found.ways
        if 1 <= self.choose <= len(ways):
            return ways[self.choose - 1]
        message = f"There are {len(ways)} ways. Choose one of 1 to {len(ways)}."
        raise InputError(message, field="choose", got=str(self.choose), want=f"1 to {len(ways)}")

    @property
    def stem(self) -> str:
        """Start of the files' names."""
        return slug(short_name(self.read))

    @property
    def of(self) -> str:
        """The name the sheets go by."""
        return short_name(self.read)


def keep_way(answer: Answer[SlipResult], kept: Chosen) -> Answer[SlipResult]:
    """Write the sheets of one way into a folder, all of them or none; the book stays as it is."""
    if kept.out is None:
        message = "Name the folder for the corrected sheets: --out DIR"
        raise InputError(message, field="out", want="--out DIR")
    text, formula = _corrected(kept)
    drawn, signs = _files(kept, text, formula)
    files = _listed(kept, drawn, kept.out)
    place_all(kept.out, {file: data for file, (_, data) in files.items()})
    folder = kept.out.resolve()
    written = tuple(
        SheetFile(kind, file.rpartition(".")[2], of, str(folder / file))
        for file, ((kind, of), _) in files.items()
    )
    result = replace(answer.result, chosen=kept.way.kind, files=written)
    return replace(answer, result=result, notices=(*answer.notices, *signs))


def sheet_of_way(kept: Chosen, sheet: str) -> bytes:
    """One of a way's sheets by the end of its file's name; raises NotFoundError for none."""
    text, formula = _corrected(kept)
    files, _ = _files(kept, text, formula)
    ends = {file.removeprefix(f"{kept.stem}-"): data for file, (_, data) in files.items()}
    if sheet not in ends:
        raise NotFoundError("This way has no such sheet.", where=sheet, got=sheet)
    return ends[sheet]


def _listed(kept: Chosen, files: Files, out: Path) -> Files:
    """The sheets with the list of what they were made of, so that they can be verified later."""
    made = made_of(kept.name, kept.asked)
    day = now(studio_of(book_at(kept.asked.book)), on=kept.asked.on).date().isoformat()
    run = run_of(made, kept.name, kept.asked, files, day=day, paper=kept.paper, held=())
    run = replace(run, kind="slip", again=kept.words)
    whole = stamped(files, run)
    whole[MANIFEST] = (("manifest", kept.of), listed(run, whole, read_manifest(out)))
    return whole


def _corrected(kept: Chosen) -> tuple[str, Formula]:
    """Text and formula of the cake that is made now, as the text is read again."""
    source, formula, way = kept.read.source.text, kept.read.formula, kept.way
    text = rewritten(source, formula, way.card_g, keeps_size=way.kind not in _RESIZED)
    again = read(text, eggs_region=studio_of(book_at(kept.asked.book)).eggs_region)
    value = _with_eggs(again.value, at_masses(formula, way.card_g))
    return text, replace(value, baked=value.baked if way.kind not in _RESIZED else None)


def _with_eggs(written: Formula, meant: Formula) -> Formula:
    """The formula as written, its eggs counted and sized as they were: the card splits them."""
    pairs = zip(written.lines, meant.lines, strict=True)
    lines = tuple(egg if egg.basis == "egg" else line for line, egg in pairs)
    return replace(written, lines=lines, egg_size=meant.egg_size)


def _files(kept: Chosen, text: str, formula: Formula) -> tuple[Files, tuple[Notice, ...]]:
    kind, of = ("corrected-formula", kept.of), kept.of
    part = "second" if kept.way.kind == "second" else "rescued"
    files: Files = {f"{kept.stem}-{part}.txt": (kind, text.encode("utf-8"))}
    studio = studio_of(book_at(kept.asked.book))
    imprint = imprint_of(studio, kept.asked, is_of_book=kept.read.source.kind is not None)
    rows = corrected_rows(weigh_out(formula, scale_g=kept.found.slip.step_g), kept.found, kept.way)
    cards, signs = _bench_card(kept, formula, imprint, f"{kept.stem}-{part}", rows)
    files |= cards
    if kept.way.kind == "second":
        plan = weigh_out(kept.read.formula, scale_g=kept.found.slip.step_g)
        first, _ = _bench_card(kept, kept.read.formula, imprint, f"{kept.stem}-as-planned", plan)
        files |= first
    jar = _jar_blend(kept, imprint)
    if jar is not None:
        leaf = blend_leaf(jar, imprint)
        files |= leaf_files(leaf, f"{kept.stem}-jar-blend-card", ("blend-card", of), kept.paper)
    record = json.dumps(_record(kept, text), ensure_ascii=False, indent=1)
    files[f"{kept.stem}-slip.json"] = (("slip-record", of), f"{record}\n".encode())
    return files, signs


def _bench_card(
    kept: Chosen, formula: Formula, imprint: Imprint, stem: str, rows: Weighing
) -> tuple[Files, tuple[Notice, ...]]:
    card = bench_card(
        formula,
        rows,
        imprint,
        dial_c=own_dial_c(formula, kept.asked),
        gluten=gluten_of_all(kept.name, kept.asked).get(kept.of),
        gelatine=lot_animal(kept.asked),
        declared=declared_of_all(kept.name, kept.asked, imprint.market).get(kept.of),
        more=_hint(kept),
    )
    card = replace(card, rows=tuple(_row_said(row) for row in card.rows))
    kind = ("bench-card", kept.of)
    data = json.dumps(plain(card_dict(card)), ensure_ascii=False, indent=1)
    return {
        f"{stem}-bench-card.pdf": (kind, card_pdf(card, kept.paper)),
        f"{stem}-bench-card.html": (kind, card_html(card).encode()),
        f"{stem}-bench-card.json": (kind, f"{data}\n".encode()),
    }, missing_signs(card)


def _row_said(row: CardRow) -> CardRow:
    """A row of what is in already says so where the others say what to add."""
    if row.mark == ALREADY:
        return replace(row, add="is in", mark="")
    return replace(row, mark="") if row.mark == TAKE_OUT else row


def _hint(kept: Chosen) -> str:
    """What a corrected card says first: the slip, what lies in the bowls, the way taken."""
    slip = kept.found.slip
    held = ", ".join(
        f"{line.name} {as_text(mass, 2)} g"
        for line, mass in zip(slip.lines, slip.weighed_g, strict=True)
        if mass is not None
    )
    there = f"In the bowls already: {held}. " if held else ""
    way = kept.way
    said = way.text if way.is_of_blend else " ".join(way.then)
    return f"Corrected after a slip. {there}{way.title}. {said}"


def _jar_blend(kept: Chosen, imprint: Imprint) -> Blend | None:
    """The blend of the jar, with its grams and what the next cake adds to it."""
    jar = kept.way.jar
    if jar is None:
        return None
    made = made_of(kept.name, kept.asked)
    blend = blends_of(made, kept.name, kept.asked, imprint.market).blends.get(kept.of)
    if blend is None:
        return None
    whole = jar.mass_g + jar.next_g
    said = [f"In this jar: {as_text(jar.mass_g, 2)} g, mixed as the formula has it."]
    if jar.next_g > 0:
        adds = ", ".join(
            f"{part.name} {as_text(part.mass_g * jar.next_g / whole, 2)} g" for part in blend.parts
        )
        said.append(f"It starts the next one: add {as_text(jar.next_g, 2)} g ({adds}).")
    return replace(blend, jar=tuple(said))


def _record(kept: Chosen, text: str) -> dict[str, Json]:
    """The choice, what was in the bowls, both texts, and what to type to go back."""
    slip, way = kept.found.slip, kept.way
    held: list[Json] = [
        {"name": line.name, "planned_g": line.mass_g, "weighed_g": mass}
        for line, mass in zip(slip.lines, slip.weighed_g, strict=True)
        if mass is not None
    ]
    return {
        "krume": __version__,
        "data": data_version(),
        "formula": kept.of,
        "on": now(studio_of(book_at(kept.asked.book)), on=kept.asked.on).date().isoformat(),
        "in_bowl": held,
        "chosen": way.kind,
        "title": way.title,
        "text": way.text,
        "factor": plain(way.factor),
        "jar_g": None if way.jar is None else way.jar.mass_g,
        "before": kept.read.source.text,
        "after": text,
        "back": {
            "text": "The formula itself was not changed. These sheets make the planned card again:",
            "command": f"krume sheet {kept.name} --out DIR",
        },
    }
