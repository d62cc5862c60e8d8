"""What to mind with an option: rim, fill, tiny amounts, a roll's binder."""

from krume.size import Fit, SizeLine, SizeRequest, Tin, fit

ROUND = Tin("", "round", diameter_cm=20.0, height_cm=7.0)


def codes(request: SizeRequest) -> list[str]:
    found = fit(request)
    assert isinstance(found, Fit)
    return [n.code for n in (*found.options[0].notices, *found.notices)]


def lines(mass: float, *more: SizeLine) -> tuple[SizeLine, ...]:
    return (SizeLine("rice", mass, "flour", "rice flour"), *more)


def test_a_brimful_and_a_nearly_empty_tin_are_noted() -> None:
    assert codes(SizeRequest(lines(900.0), (ROUND,), ROUND, 0.5)) == ["fill-high"]
    assert codes(SizeRequest(lines(200.0), (ROUND,), ROUND, 0.5)) == ["fill-low"]
    assert codes(SizeRequest(lines(500.0), (ROUND,), ROUND, 0.5)) == []


def test_a_rise_above_the_rim_is_noted() -> None:
    assert codes(SizeRequest(lines(500.0), (ROUND,), ROUND, 0.5, rise=2.5)) == ["rise-above-rim"]


def test_an_assumed_depth_is_noted() -> None:
    flat = Tin("", "round", diameter_cm=20.0)
    assert "tin-depth-assumed" in codes(SizeRequest(lines(500.0), (flat,), ROUND, 0.5))


def test_a_roll_with_enough_xanthan_is_not_noted() -> None:
    sheet = Tin("", "sheet", length_cm=33.0, width_cm=23.0, height_cm=2.5)
    bare = SizeRequest(lines(400.0), (sheet,), sheet, 0.48)
    held = SizeRequest(
        lines(400.0, SizeLine("xanthan", 1.6, "binder")), (sheet,), sheet, 0.48
    )  # fmt: skip
    assert "roll-binder" in codes(bare)
    assert "roll-binder" not in codes(held)


def test_an_amount_below_the_scale_is_named() -> None:
    wide = Tin("", "round", diameter_cm=28.0, height_cm=7.0)
    request = SizeRequest(
        lines(400.0, SizeLine("xanthan", 0.25, "binder", "xanthan gum")),
        (wide,), ROUND, 0.5, step_g=1.0,
    )  # fmt: skip
    found = fit(request)
    assert isinstance(found, Fit)
    note = next(n for n in found.options[0].notices if n.code == "scale-too-coarse")
    assert note.text.startswith("xanthan gum 0.5 g: a scale that shows 1 g")
