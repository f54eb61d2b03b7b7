"""What the trade knows, pure: words, tools, cautions. No plan, no files."""
