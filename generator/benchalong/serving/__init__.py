"""The site served here while it is being written: `benchalong open`.

Stands after publishing and knows it; nothing knows this room but the command line.
"""
