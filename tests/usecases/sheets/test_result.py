"""The answer of making sheets names its files, holds, checks and a few words."""

from krume.usecases.sheets.result import SheetCheck, SheetFile, SheetHold, SheetResult


def test_a_check_that_is_not_judged_is_neither_passed_nor_failed() -> None:
    result = SheetResult(
        (SheetFile("index", "html", "x", "index.html"),),
        (SheetHold("held", "opens"),),
        (SheetCheck("later", None, "not yet"),),
        ("a few words",),
    )
    assert result.checks[0].passed is None
