"""Hardware: its sizes as names of the plan's arithmetic, where it sits, and the holes it takes."""
