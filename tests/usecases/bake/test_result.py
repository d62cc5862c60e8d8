"""The answer of a bake: what is not known is None, never 0."""

from krume.usecases import Asked, BakeWish, bake_formula


def test_a_refused_bake_carries_what_is_known_and_none_for_the_rest(demo: Asked) -> None:
    answer = bake_formula("F1", BakeWish(oven="90 C"), demo)
    result = answer.result
    assert answer.exit_code == 4
    assert (result.minutes, result.done_by, result.loss_pct, result.curve) == (None,) * 4
    assert result.depth_cm == 3.59 and result.planned_loss_pct == 11.1
