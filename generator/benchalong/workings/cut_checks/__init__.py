"""What is checked of a part's own cuts, one question a module; their order stands in `cut_check.py`."""
