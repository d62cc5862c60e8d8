"""How an answer leaves: one JSON object, or a page for a person."""

from collections.abc import Callable
from typing import TypeVar

from krume.cli.envelope import envelope
from krume.cli.figures import amount, span
from krume.cli.options import wants_json
from krume.cli.output import write_json, write_text
from krume.cli.page import Page, page_for_stdout, show_problems
from krume.usecases import Answer, Explanation

T = TypeVar("T")


def tell(command: str, answer: Answer[T], show: Callable[[Page, T], None]) -> int:
    """Write an answer out; its exit code."""
    if wants_json():
        write_json(envelope(command, answer))
        return answer.exit_code
    page = page_for_stdout()
    show_problems(page, answer.problems, clash=not answer.is_possible)
    if answer.explain is None:
        show(page, answer.result)
        _show_notices(page, answer)
    else:
        _show_explanation(page, answer.explain)
    write_text(page.text())
    return answer.exit_code


def _show_notices(page: Page, answer: Answer[T]) -> None:
    if not answer.notices:
        return
    page.head("Taken as read")
    for notice in answer.notices:
        page.line(f"{notice.where}: {notice.text}" if notice.where else notice.text, indent=2)


def _show_explanation(page: Page, why: Explanation) -> None:
    value = why.value if isinstance(why.value, str) else amount(why.value, 2)
    unit = "" if why.unit == "ratio" else why.unit
    page.title(f"{why.key}: {value} {unit}".rstrip())
    page.line(why.how)
    if why.low is not None and why.high is not None:
        page.line(f"Usual: {span(why.low, why.high)} {unit}".rstrip())
    page.line(f"Status: {why.status}")
    page.line(f"Doubt: {why.doubt}" if why.doubt else "Doubt: none is known.")
    for each in why.inputs:
        page.line(f"line {each.line}: {each.read} ({amount(each.mass_g, 2)} g, {each.status})")
    for source in why.sources:
        page.line(f"Source: {source.key}" + (f", {source.title}" if source.title else ""))
