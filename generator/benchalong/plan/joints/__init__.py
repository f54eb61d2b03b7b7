"""Joints: one statement becomes both sides' cuts, exactly, from where the parts sit.

The road: a joint's own sizes join the plan's names (`sizes.py`); the words for its sides are found on the
placed parts (`sides.py`); what meets what is seen from boxes and planes of faces (`meeting.py`); a function
for its kind says what each side loses (`families/`); the pass in `joining.py` gives every copy its cuts.
"""
