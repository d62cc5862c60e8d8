"""How fast krume is, as ratios to named peers measured in the same run."""
