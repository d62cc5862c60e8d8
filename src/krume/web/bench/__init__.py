"""The bench: weighing at the counter, its clocks, the cup, and the trial a bake ends as."""
