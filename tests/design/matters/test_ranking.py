"""All lines wrong together: shares of scatter, and the balance as witness."""

import pytest

from krume.design import Formula, Ranking, matters, ranking, weigh_out
from tests.design.studio import C1, F1, F3, F5, formula, item

MADE = (F1, F3, F5, C1)


def ranked(made: Formula, *, seed: int = 7, count: int = 256) -> Ranking:
    found = ranking(made, matters(made, weigh_out(made)), seed=seed, count=count)
    assert found is not None
    return found


@pytest.mark.parametrize("made", MADE, ids=lambda made: str(made.name))
def test_what_is_sampled_is_the_balance_itself(made: Formula) -> None:
    assert ranked(made, count=16).miss_effect < 1e-8


@pytest.mark.parametrize("made", MADE, ids=lambda made: str(made.name))
def test_shares_alone_add_up_to_nearly_all_and_with_others_to_no_less(made: Formula) -> None:
    found = ranked(made)
    alone = sum(share.alone_share for share in found.shares)
    together = sum(share.total_share for share in found.shares)
    assert 0.95 < alone < 1.02
    assert 0.98 < together < 1.1


def test_the_roulades_xanthan_brings_most_of_the_scatter_and_the_eggs_come_next() -> None:
    first, second, *_ = ranked(F3).shares
    assert (first.matter.line.name, first.main.quantity) == ("xanthan gum", "xanthan")
    assert first.total_share > 0.6
    assert (second.matter.line.name, second.main.quantity) == ("eggs", "sugar_per_egg")


def test_a_step_of_a_seventh_of_a_point_throws_the_xanthan_out_about_every_third_time() -> None:
    found = next(each for each in ranked(F3).figures if each.band.quantity == "xanthan")
    # 0.3571 and a band of 0.3 to 0.5: out below -0.04 g and above +0.1 g of a step of 0.1 g.
    assert found.outside_pct == pytest.approx(30, abs=4)
    assert found.sd_effect == pytest.approx(100 * 0.1 / 70 / 3**0.5 / 0.1, rel=0.05)


def test_equal_seeds_give_the_same_ranking() -> None:
    assert ranked(F1) == ranked(F1)
    assert ranked(F1) != ranked(F1, seed=8)


def test_where_nothing_is_judged_there_is_no_ranking() -> None:
    made = formula("What", (item(50, "white rice flour"),))
    assert ranking(made, matters(made, weigh_out(made)), seed=7) is None
