"""The custards of a torte or a formula, as a page shows them."""

from krume.usecases import Asked, custard_shown


def test_only_logs_of_its_own_custards_stand_beside_it(demo: Asked) -> None:
    shown = custard_shown("T1", demo)
    assert shown.title == "Orl hazel torte"
    assert [(log.log, log.of, log.verdict) for log in shown.logs] == [
        ("A", "C1", "pass"),
        ("B", "C1", "fail"),
    ]
    assert shown.cooling is not None
    assert shown.cooling.verdict == "not-shown"


def test_what_has_no_custard_has_neither_prediction_nor_log(demo: Asked) -> None:
    shown = custard_shown("F1", demo)
    assert shown.cooling is None
    assert shown.logs == ()


def test_the_fridge_that_is_typed_is_the_one_predicted_for(demo: Asked) -> None:
    shown = custard_shown("C1", demo, fridge_c=2.0)
    assert shown.cooling is not None
    assert shown.cooling.fridge_c == 2.0
