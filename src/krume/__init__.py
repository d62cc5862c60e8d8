"""krume: the sums of a gluten-free cake maker's whole job, from a written formula to a sheet."""

__version__ = "0.1.0"
