"""`trace`: what a name means and everything written down of it, and the answer that writes."""

from datetime import date

import pytest

from krume.usecases import Asked, TraceResult, TraceWish, trace_of
from krume.usecases.book.rows import add_row

COVERS = ("shown", "result")
WRITE, LOOK = TraceWish(is_kept=True), TraceWish()


def _trace(name: str, asked: Asked, wish: TraceWish = LOOK) -> TraceResult:
    return trace_of(name, wish, asked).result


def test_an_order_says_what_would_be_written_down_and_writes_nothing(own: Asked) -> None:
    answer = trace_of("101", TraceWish(), own)
    result = answer.result
    assert (result.kind, result.is_written, result.cakes) == ("order", False, ())
    assert [batch.formula for batch in result.proposed] == ["F1", "C1", "C5", "S1"]
    lots = {line.ingredient: line.lots for line in result.proposed[0].lines}
    assert (lots["ground hazelnuts"], lots["eggs"]) == (("L-008",), ())
    assert [notice.code for notice in answer.notices] == ["not-written"]
    assert _trace("101", own) == result


def test_written_down_it_has_a_code_and_the_way_back_and_forward(own: Asked) -> None:
    wish = TraceWish(
        is_kept=True, lots=("F1 eggs=E-1",), batches=("F1=2027-06-09",), made_on=date(2027, 6, 10)
    )
    result = _trace("101", own, wish)
    assert result.written == ("L270610-1",)
    cake = _trace("L270610-1", own).cakes[0]
    assert cake.batches[0].code == "B270609-1"
    assert {x.ingredient: x.lots for x in cake.batches[0].lines}["eggs"] == ("E-1",)
    assert "B270609-1, F1: the lot of caster sugar, fine salt, lemon juice is not known." in (
        result.not_known
    )
    again = trace_of("101", WRITE, own)
    assert again.result.written == ()
    assert "written-before" in [notice.code for notice in again.notices]


def test_several_bags_in_the_house_are_asked_and_the_answer_is_an_edit(own: Asked) -> None:
    add_row("lots.csv", {"lot": "L-019", "ingredient": "ground hazelnuts"}, own, head=())
    answer = trace_of("101", WRITE, own)
    (problem,) = answer.problems
    assert (answer.exit_code, answer.result.written) == (3, ())
    said = f"{problem.where}={problem.options[1].line}"
    told = trace_of("101", WRITE, Asked(book=own.book, answers=(said,)))
    assert told.result.written == ("L270610-1",)
    recall = _trace("L-019", own).recall
    assert recall is not None
    assert [cake.code for cake in recall.surely] == ["L270610-1"]


def test_a_batch_names_its_cakes(own: Asked) -> None:
    _trace("101", own, WRITE)
    result = _trace("B270610-1", own)
    assert (result.kind, result.batches[0].cakes) == ("batch", ("L270610-1",))
    assert [cake.code for cake in result.cakes] == ["L270610-1"]


def test_what_the_records_do_not_show_stands_with_them(own: Asked) -> None:
    answer = trace_of("L-008", TraceWish(), own)
    words = " ".join(answer.result.cautions)
    assert "does not show that no other was used" in words
    assert "only the name is kept" in words
    assert {"eu-178-2002", "us-21-cfr-1-j"} <= set(answer.sources)
    assert "the supplier" in " ".join(answer.result.not_known)


@pytest.mark.parametrize("name", ["T1", "F1"])
def test_a_torte_or_a_formula_for_no_order_is_written_down_for_nobody(
    own: Asked, name: str
) -> None:
    (cake,) = _trace(name, own, WRITE).cakes
    assert (cake.what, cake.order, cake.customer, cake.handed_on) == (name, None, None, None)


def test_history_is_told_once_there_is_one(own: Asked) -> None:
    from krume.usecases import correct_cake

    _trace("101", own, WRITE)
    cake = _trace("L270610-1", own).cakes[0]
    assert cake.history == ()
    from krume.store import book_at, cakes_called

    seen = cakes_called(book_at(own.book), "L270610-1")[0].key
    correct_cake("L270610-1", own, seen=seen, parts={"F1": "?"}, reason="another day")
    new, old = _trace("L270610-1", own).cakes[0].history
    assert (new.reason, old.reason) == ("another day", "")
    assert "F1 not known" in new.text
    assert "F1 B270610-1" in old.text


def test_a_slip_of_one_digit_is_asked_before_it_is_written_down(own: Asked) -> None:
    slip = TraceWish(is_kept=True, lots=("F3 millet flour=L-005",))
    answer = trace_of("T2", slip, own)
    (problem,) = answer.problems
    assert (answer.exit_code, answer.result.written) == (3, ())
    assert "L-005 is potato starch" in problem.ask
    right = Asked(book=own.book, answers=(f"{problem.where}={problem.options[0].line}",))
    assert trace_of("T2", slip, right).result.written == ("L270610-1",)


def test_a_mark_that_is_in_no_table_is_kept_and_named(own: Asked) -> None:
    answer = trace_of("T2", TraceWish(is_kept=True, lots=("F3 millet flour=L-999",)), own)
    assert answer.result.written == ("L270610-1",)
    (notice,) = [n for n in answer.notices if n.code == "lot-strange"]
    assert "L-999 (millet flour)" in notice.text
