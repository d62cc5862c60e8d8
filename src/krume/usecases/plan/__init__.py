"""The timetable, and what to buy for it."""
