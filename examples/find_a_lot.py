"""Which bags went into an order, and every cake that a lot that is called back may be in.

python3 run.py python examples/find_a_lot.py
"""

from pathlib import Path
from tempfile import TemporaryDirectory

from krume.usecases import Asked, TraceRecall, TraceWish, load_demo, trace_of


def main() -> TraceRecall | None:
    """Write down order 101 with one bag named by hand, then ask for lots of nuts and butter."""
    with TemporaryDirectory() as folder:
        asked = Asked(book=Path(folder) / "book")
        load_demo(asked)
        wish = TraceWish(is_kept=True, lots=("F1 eggs=0DE123",), batches=("F1=2027-06-09",))
        made = trace_of("101", wish, asked).result
        nuts = trace_of("L-008", TraceWish(), asked).result.recall
        butter = trace_of("7781", TraceWish(ingredient="butter"), asked).result.recall

    print(f"written down: {', '.join(made.written)}")
    for recall in (nuts, butter):
        if recall is not None:
            print(recall.verdict)
            for cake in (*recall.surely, *recall.not_ruled_out):
                print(f"  {cake.code} for {cake.customer}: {cake.why[0]}")
    return butter


if __name__ == "__main__":
    main()
