"""Words: the nearest right one for one that was mistyped, a name within a sentence, so many of something."""

from __future__ import annotations

from collections.abc import Iterable


def in_sentence(name: str) -> str:
    """A name in the middle of a sentence: `Door stile` -> `door stile`. One with another capital in it stays,
    since it is a mark, a proper name or written so on purpose: `LD`, `T-rail`, `Windsor Seat`."""
    is_plain = name[1:2].islower() and name[1:] == name[1:].lower()
    return name[:1].lower() + name[1:] if is_plain else name


def the(name: str) -> str:
    """A named thing in the middle of a sentence: `Door stile` -> `the door stile`."""
    said = in_sentence(name)
    return said if said.lower().startswith("the ") else f"the {said}"


def counted(count: int, what: str) -> str:
    """`1 fault`, `2 faults`."""
    return f"{count} {what}{'' if count == 1 else 's'}"


def nearest_words(
    typed: str, known: Iterable[str], *, prefer: Iterable[str] = (), most: int = 3
) -> tuple[str, ...]:
    """Known words within reach of a slip of the hand; only the nearest, so several are equally near.

    `prefer` comes first among them: a key that is still missing is likelier meant than one already
    written. Within reach are two slips, or one in three letters.
    """
    lower, wanted = typed.lower(), set(prefer)
    reach = max(2, len(typed) // 3)
    near: list[tuple[bool, str]] = []
    for word in set(known):
        far = slips(lower, word.lower(), most=min(reach, max(1, len(word) - 1)))
        if far is None or far > reach:
            continue
        if far < reach:
            reach, near = far, []
        near.append((word not in wanted, word))
    return tuple(word for _, word in sorted(near)[:most])


def slips(typed: str, word: str, *, most: int) -> int | None:
    """How many single slips lead from one word to the other: a letter too many, missing or wrong, or two
    swapped. None when there are more than `most`."""
    if typed == word:
        return 0
    if abs(len(typed) - len(word)) > most:
        return None
    before: list[int] = []
    row = list(range(len(word) + 1))
    for i, letter in enumerate(typed, 1):
        before, last, row = row, before, [i]
        for j, other in enumerate(word, 1):
            best = min(before[j] + 1, row[j - 1] + 1, before[j - 1] + (letter != other))
            if i > 1 and j > 1 and letter == word[j - 2] and typed[i - 2] == other:
                best = min(best, last[j - 2] + 1)
            row.append(best)
        if min(row) > most:
            return None
    return row[-1] if row[-1] <= most else None
