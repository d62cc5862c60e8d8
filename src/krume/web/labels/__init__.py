"""Labels as pages: what is on them, what holds them, and each drawn when it is asked for."""
