"""What goes in: reading a baker's text, the formula, its balance, which weighing order."""
