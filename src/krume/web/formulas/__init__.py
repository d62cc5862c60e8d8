"""Formulas: found, read beside what was understood, answered, sized, and every version kept."""
