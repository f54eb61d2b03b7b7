"""What follows from the plan. Each module answers one question a woodworker asks."""
