"""What is learnt of the person's own oven from readings and finished bakes."""
