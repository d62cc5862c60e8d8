"""The child of a variation: its title, its text with the lines that name its parent, its file."""

from pathlib import Path

from krume.design import Formula, varying
from krume.store import write_whole
from krume.usecases.asking.read import FormulaRead


def parent_name(found: FormulaRead) -> str:
    """The name a child gives its parent: the book's, else the one on the first line."""
    short = found.source.name
    return short if found.source.kind is not None else (found.formula.name or short)


def child_title(formula: Formula, made: varying.Variation) -> str | None:
    """Name of the child: the parent's, with what came for what."""
    if formula.name is None:
        return None
    pairs = [
        f"{_plain(each.line.name)} for {_plain(each.before.name)}"
        for each in made.lines
        if each.before and each.line and each.before.ingredient != each.line.ingredient
    ]
    less = [f"less {x.before.name}" for x in made.lines if x.before and _is_less(x)]
    aside = (varying.WATER, made.made_up.ingredient if made.made_up else None)
    new = [x.line for x in made.lines if x.before is None and x.line]
    told = pairs or [f"with {x.name}" for x in new if x.ingredient not in aside] or less
    return f"{formula.name}, {', '.join(told[:2])}" if told else formula.name


def _plain(name: str) -> str:
    return name.removeprefix("ground ")


def _is_less(each: varying.VariedLine) -> bool:
    return each.is_changed and (each.after_g or 0.0) < (each.before_g or 0.0)


def child_of(
    found: FormulaRead, made: varying.Variation, wanted: varying.Wanted, fat: str | None
) -> str:
    """Text of the child, with the lines of its head that name its parent."""
    cuts, added = _kinds(wanted)
    lineage = varying.Lineage(
        parent=parent_name(found),
        swaps=tuple(text for text in wanted.texts if " = " in text),
        cuts=cuts,
        added=added,
        fat=fat or (made.made_up.name if made.made_up is not None else ""),
        parent_lines=varying.fingerprint(found.formula.lines),
        own_lines=varying.fingerprint(made.formula.lines),
        parent_was=varying.lines_as_were(found.formula.lines),
    )
    name = child_title(found.formula, made)
    return varying.child_text(found.formula, made.lines, name=name, lineage=lineage)


def _kinds(wanted: varying.Wanted) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Texts of what is cut, and of what is added."""
    pairs = list(zip(wanted.changes, wanted.texts, strict=True))
    cuts = tuple(text for change, text in pairs if change.key is None)
    return cuts, tuple(text for change, text in pairs if change.line is None)


def write_child(path: Path, text: str, *, replace: bool) -> str:
    """Write a child's text; its full path."""
    write_whole(path, text.encode("utf-8"), replace=replace)
    return str(path.resolve())
