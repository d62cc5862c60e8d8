"""A formula looked at: its balance, its sizes, which of its weighings matter."""
