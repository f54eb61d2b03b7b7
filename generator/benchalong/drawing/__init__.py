"""Pictures as SVG: parts in three views, the piece, small pictures to know a part by."""
