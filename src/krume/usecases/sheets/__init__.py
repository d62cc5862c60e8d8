"""The papers of the work: cards, plans, order sheets, logs, and the list of them."""
