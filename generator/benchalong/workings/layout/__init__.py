"""Which board each piece is cut from: pieces, boards and rules in, a layout out.

Knows neither plan nor files. Read `model` for what goes in and comes out, then `lay_out` for the road:
the order is made whole numbers and freed of the kerf (`inner`), sticks go to `sticks` and boards to
`sheets`, and what they find is written out as numbered cuts (`cutting`).
"""
