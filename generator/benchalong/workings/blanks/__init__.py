"""How large is each piece first cut out? From finished sizes to blanks, what one board has to give.

Knows the plan and the trade; never the order of work nor a layout.
"""
