"""A blend of the flours at hand."""
