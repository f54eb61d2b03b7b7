"""What everything stands on: exact lengths and how they are shown, places in files, problems and findings.

Nothing here imports another room of the house.
"""
