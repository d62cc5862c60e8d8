"""Weighing at the counter, its clocks and cup, and the trial it ends as."""
