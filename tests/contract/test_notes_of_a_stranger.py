"""Half-contradicting notes must come back as questions, each with a line to type."""

from tests.contract.conftest import Ask

NOTES = """\
lemon roulade, 9 inch round
4 eggs med.   100g sugar  26g rice / 16 millet / 22 potato flour / 6 sweet rice
xantan a pinch, 10g oil
bake 315F (165C) 16 minutes ... or 25-30 if thick
whisk the five whites with 60g sugar + 50g into yolks
13x9 tin, keeps a week, gluten free, suitable for kids
"""


def test_at_least_eight_conflicts_are_asked(ask: Ask) -> None:
    code, said = ask("read", "-", stdin=NOTES)
    assert code == 3
    assert len(said["problems"]) >= 8
    assert all(p["ask"] and p["where"] and p["read"] for p in said["problems"])
