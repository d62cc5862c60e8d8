"""A slip, told at the desk or on the phone: what lies in the bowls, and every way out of it."""
