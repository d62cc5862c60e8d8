"""The quick sums by name, with units in the values.

python3 run.py python examples/do_a_quick_sum.py
"""

from krume.calc import run


def main() -> tuple[float, float]:
    """The dial for an oven that reads low, and gelatine of another strength."""
    dial = run("dial", want="157C", offset="-12")
    print(f"Turn the dial to {dial['set_c']} C ({dial['set_f']} F).")

    bloom = run("bloom", mass="8g", from_=200, to=160)
    print(
        f"Gelatine: {bloom['by_root_g']:.2f} g by the root rule, {bloom['by_ratio_g']:g} by ratio."
    )
    return dial["set_c"], bloom["by_root_g"]


if __name__ == "__main__":
    main()
