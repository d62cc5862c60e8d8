"""What every page stands in: routes, the guard at the door, rendering, forms, refusals."""
