"""What the trade knows, pure: words, general cautions. Knows nothing of any project."""
