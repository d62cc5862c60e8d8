"""Which lots went into which cake for whom: written down, looked up, and recalled."""
