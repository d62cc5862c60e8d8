"""The balance of a formula that was read."""

from dataclasses import replace

from krume.design import Balance, Formula, balance, families


def balanced(formula: Formula) -> Balance:
    """Balance of a formula; a guess of the reader that is no family leaves the guess to the sums.

    What the person has declared is never put aside: an unknown word there stays unknown.
    """
    is_guess = formula.family_basis == "inferred"
    if is_guess and formula.family not in {family.key for family in families()}:
        return balance(replace(formula, family=None, family_basis="unknown"))
    return balance(formula)
