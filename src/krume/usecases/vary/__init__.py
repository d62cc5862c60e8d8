"""One thing for another, and the children of a formula."""
