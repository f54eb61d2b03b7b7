"""A formula as a tree: plain data, equal when it means the same.

Where a piece stood in the text is kept for messages only.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal, TypeAlias

from benchalong.ground.lengths import Length
from benchalong.plan.refused import Span

Operator: TypeAlias = Literal["+", "-", "*", "/"]


@dataclass(frozen=True)
class Number:
    """A pure number."""

    value: Fraction
    span: Span = field(default=(0, 0), compare=False, repr=False)


@dataclass(frozen=True)
class Measure:
    """A length with its unit, as typed."""

    length: Length
    span: Span = field(default=(0, 0), compare=False, repr=False)


@dataclass(frozen=True)
class Name:
    name: str
    span: Span = field(default=(0, 0), compare=False, repr=False)


@dataclass(frozen=True)
class Negative:
    of: Tree
    span: Span = field(default=(0, 0), compare=False, repr=False)


@dataclass(frozen=True)
class Binary:
    operator: Operator
    left: Tree
    right: Tree
    span: Span = field(default=(0, 0), compare=False, repr=False)


@dataclass(frozen=True)
class Call:
    function: str
    arguments: tuple[Tree, ...]
    span: Span = field(default=(0, 0), compare=False, repr=False)


Tree: TypeAlias = Number | Measure | Name | Negative | Binary | Call


def names_in(tree: Tree) -> tuple[Name, ...]:
    """Every name in it, in the order written."""
    match tree:
        case Name():
            return (tree,)
        case Negative():
            return names_in(tree.of)
        case Binary():
            return names_in(tree.left) + names_in(tree.right)
        case Call():
            return tuple(name for argument in tree.arguments for name in names_in(argument))
    return ()
