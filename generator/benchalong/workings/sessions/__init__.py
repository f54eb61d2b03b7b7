"""How many sessions does it take, and what is done in each: the order of work against the clock."""
