"""Orders as pages: the list, each order with its questions, and its sheets."""
