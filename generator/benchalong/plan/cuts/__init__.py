"""Cuts of a part's own: from what was written to straight bodies of wood to take away, exactly.

One function a kind, in the table `KINDS` of `kinds.py`; a new kind is a function and a line there.
"""
