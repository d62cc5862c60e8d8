"""Where a plan is tightest is named: the limit without rest and the task with least room."""

from dataclasses import replace

from krume.plan import tightest, timetable
from tests.plan.kitchens import FORMULAS, NOW, kitchen, order


def test_the_oven_is_tightest_where_loads_follow_without_a_pause() -> None:
    plan = timetable((order(4),), FORMULAS, kitchen(), NOW)
    assert plan is not None
    found = tightest(plan)
    assert found is not None
    assert found.limit == "oven" and found.busy_pct == 100.0
    work = [task for task in plan.tasks if task.step not in ("box", "recover")]
    assert found.slack_min == min(task.slack_min for task in work)
    assert found.text.startswith("Tightest: oven")


def test_a_plan_without_work_has_no_tightest_place() -> None:
    plan = timetable((order(1),), FORMULAS, kitchen(), NOW)
    assert plan is not None
    assert tightest(replace(plan, tasks=())) is None
