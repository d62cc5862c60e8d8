"""How long it bakes, how sure that is, and how it cools."""
