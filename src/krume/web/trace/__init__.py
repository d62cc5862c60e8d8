"""Which lots went where as pages: writing it down, looking it up, the list to call from."""
