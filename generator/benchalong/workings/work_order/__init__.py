"""In what order it can all be done with the fewest setups: tasks as to-dos of `sequence/`, told in words."""
