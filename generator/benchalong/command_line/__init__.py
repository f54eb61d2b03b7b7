"""What the verbs in `commands.py` share: how things are said, words that were mistyped, how a project begins.

The first and last thing a user meets; knows every room, and no room knows it.
"""
