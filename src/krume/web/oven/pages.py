"""The oven view at the counter."""

ROUTES = ()
