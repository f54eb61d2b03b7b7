"""How good a layout is, in words. A proof that rests on how boards are cut says so."""

from __future__ import annotations

from fractions import Fraction
from itertools import cycle, islice

from benchalong.ground.shown import decimal
from benchalong.ground.words import counted
from benchalong.workings.boards.model import Group

TIMES = {1: "once", 2: "twice"}


def how_good(group: Group, *, word: str, must_match: bool) -> str:
    """`word`: `board` or `sheet`. `must_match`: whether some of what is cut stays together in one block."""
    many = counted(len(group.boards), word)
    if group.is_own and not group.boards:
        return f"No {word} that is there can be used for it"
    if group.is_own and group.left_out:
        short = "is there, and it doesn't" if len(group.boards) == 1 else "are there, and they don't"
        return f"{many} that {short} suffice"
    said = f"{many}. {_said(group)}{_so_cut(group, word, must_match)}"
    return f"{said}; a clock ended the search" if group.ended_early else said


def _said(group: Group) -> str:
    if group.is_proven:
        return f"No layout can do with {LEAST[group.counts]}"
    if group.counts == "boards":
        return f"At least {group.least} {'is' if group.least == 1 else 'are'} needed"
    most = decimal(100 * (1 - Fraction(group.least, group.reached)), 1)
    return f"No layout can save more than {most} % on this one"


LEAST = {"boards": "fewer", "area": "less wood", "price": "less money"}


def _so_cut(group: Group, word: str, must_match: bool) -> str:
    """The rules that the proof rests on; a sum of areas rests on none."""
    if group.by_area:
        return ", however it is cut" if len(group.boards) == 1 else ", however they are cut"
    together = " and what must match is sawn out in one piece first" if must_match else ""
    return f", as long as {_turns(group.turns, word)}{together}"


def _turns(turns: int, word: str) -> str:
    """`boards are crosscut first, then ripped`"""
    if word == "board" and turns <= 3:
        ways = ", then ".join(islice(cycle(("crosscut", "ripped")), turns))
        return (
            f"boards are {ways}{' again' if turns == 3 else ''}" if turns > 1 else "boards are only crosscut"
        )
    if turns == 1:
        return f"all cuts on a {word} run one way"
    return (
        f"the direction of cutting changes at most {TIMES.get(turns - 1, f'{turns - 1} times')} on a {word}"
    )
