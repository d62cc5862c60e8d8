"""Read a formula as it was typed, and see what is still asked about it.

python3 run.py python examples/read_a_formula.py
"""

from krume.design import Formula, apply_answers, read

TEXT = """\
Plain sponge
Tin: round 20 x 7 cm

100 g white rice flour
5 eggs
120 g caster sugar

Whisk and bake.
"""


def main() -> Formula:
    """Read a text, answer its question with a line, and read it again."""
    first = read(TEXT)
    for problem in first.problems:
        print(f"{problem.where}: {problem.ask}")
        for option in problem.options:
            print(f"  {option.label}: {option.line}")

    # An answer is an edit of one line of the text.
    edited = apply_answers(TEXT, ["line 5=5 eggs, EU M"])
    second = read(edited)
    for line in second.value.lines:
        print(f"{line.read}: {line.mass_g} g")
    return second.value


if __name__ == "__main__":
    main()
