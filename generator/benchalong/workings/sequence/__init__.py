"""What to do after what: the order of work as a question about needs and settings alone.

It knows to-dos, machines and settings, no plan and no wood. `put_in_order.py` answers it: first the fewest
settings (`settings.py`, with a proof), then the least walking from machine to machine and the author's own
order (`walks.py`).
"""
