"""A timetable for an order, with what is tightest and what to buy.

python3 run.py python examples/plan_the_days.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, PlanResult, PlanWish, load_demo, plan_orders


def main() -> PlanResult:
    """Plan order 101."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        found = plan_orders(("101",), PlanWish(), asked).result

    for task in found.tasks:
        print(f"{task.start:%a %H:%M}-{task.end:%H:%M} {task.name}")
    if found.tightest is not None:
        print(found.tightest.text)
    return found


if __name__ == "__main__":
    main()
