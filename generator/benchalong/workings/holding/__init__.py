"""How the piece is held: what it hangs by, whether it tips, whom it carries, and whether its lid is safe."""
