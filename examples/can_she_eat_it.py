"""Can somebody with coeliac disease eat it: the sentence for the telephone, and what opens it.

python3 run.py python examples/can_she_eat_it.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, GlutenResult, GlutenWish, gluten_of, load_demo, room_list_of


def main() -> tuple[GlutenResult, GlutenResult]:
    """Ask about order 101, then about T3 once the list of the room is begun."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        order = gluten_of("101", GlutenWish(), asked).result
        room_list_of(asked, said=("sieve=own", "wheat day=none"))
        torte = gluten_of("T3", GlutenWish(), asked).result

    print(order.aloud)
    for text in order.opens:
        print(f"  {text}")
    print("It does not prove:")
    for text in order.not_proven:
        print(f"  {text}")
    print(torte.aloud)
    return order, torte


if __name__ == "__main__":
    main()
