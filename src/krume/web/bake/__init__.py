"""A formula in its tin and an oven: how long, by which rule, and what would narrow the doubt."""
