"""What each page shows: one frozen record a page, made from the plan and what follows from it."""
