"""The nearest right word for one that was mistyped."""

from __future__ import annotations

from collections.abc import Iterable


def nearest_words(typed: str, known: Iterable[str], *, prefer: Iterable[str] = (), most: int = 3) -> tuple[str, ...]:
    """Known words within reach of a slip of the hand, nearest first.

    `prefer` breaks ties: among words equally near, those come first (a key that is still missing
    is likelier meant than one already written). Within two slips, or one in three letters.
    """
    wanted = set(prefer)
    reach = max(2, len(typed) // 3)
    scored = ((slips(typed.lower(), word.lower()), word not in wanted, word) for word in set(known))
    near = sorted(entry for entry in scored if entry[0] <= min(reach, max(1, len(entry[2]) - 1)))
    return tuple(word for _, _, word in near[:most])


def slips(typed: str, word: str) -> int:
    """How many single slips lead from one word to the other: a letter too many, missing, wrong, or two swapped."""
    if typed == word:
        return 0
    before: list[int] = []
    row = list(range(len(word) + 1))
    for i, letter in enumerate(typed, 1):
        before, last, row = row, before, [i]
        for j, other in enumerate(word, 1):
            best = min(before[j] + 1, row[j - 1] + 1, before[j - 1] + (letter != other))
            if i > 1 and j > 1 and letter == word[j - 2] and typed[i - 2] == other:
                best = min(best, last[j - 2] + 1)
            row.append(best)
    return row[-1]
