"""What a formula comes to, exactly, with its dimension watched over.

A bare number is pure in products and quotients and a length in the project's units where a length
is needed: beside a length in a sum, or where the whole must be one.
"""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from typing import TypeAlias

from benchalong.ground.lengths import Length, to_nearest
from benchalong.plan.quantity import Quantity
from benchalong.plan.refused import Refused
from benchalong.plan.roots import LENGTH_STEP, RATIO_STEP, cosine, sine, square_root, tangent
from benchalong.plan.tree import Binary, Call, Measure, Name, Negative, Number, Tree

LookUp: TypeAlias = Callable[[Name], Quantity]
"""The value of a name. Raises Refused when there is no such name, Poisoned when it couldn't be worked out."""

MOST_BITS = 4096
"""In a numerator or denominator."""


def evaluate(tree: Tree, look_up: LookUp, unit: Length) -> Quantity:
    """The tree's value; bare numbers that must be lengths count in `unit`.

    Raises Refused, and what `look_up` raises.
    """
    match tree:
        case Number():
            return Quantity(tree.value)
        case Measure():
            return Quantity(tree.length, 1)
        case Name():
            return look_up(tree)
        case Negative():
            of = evaluate(tree.of, look_up, unit)
            return Quantity(-of.value, of.dimension)
        case Binary():
            left, right = evaluate(tree.left, look_up, unit), evaluate(tree.right, look_up, unit)
            return _bounded(_OPERATORS[tree.operator](tree, left, right, unit), tree)
        case Call():
            values = tuple(evaluate(argument, look_up, unit) for argument in tree.arguments)
            return _bounded(_call(tree, values, unit), tree)


def as_length(quantity: Quantity, tree: Tree, unit: Length) -> Length:
    """The length meant. Raises Refused for an area and the like."""
    if quantity.dimension not in (0, 1):
        raise Refused(f"this comes to {quantity.called}, not to a length", tree.span, "a length")
    return quantity.as_length(unit)


def _bounded(quantity: Quantity, tree: Tree) -> Quantity:
    if max(abs(quantity.value.numerator).bit_length(), quantity.value.denominator.bit_length()) > MOST_BITS:
        raise Refused("the number this comes to is too long to keep exactly", tree.span, "a simpler formula")
    return quantity


def _alike(tree: Tree, values: tuple[Quantity, ...], unit: Length, doing: str) -> tuple[Quantity, ...]:
    """The same quantities in one dimension; bare numbers become lengths beside a length."""
    dimensions = {value.dimension for value in values}
    if dimensions <= {0, 1} and len(dimensions) == 2:
        return tuple(Quantity(value.as_length(unit), 1) for value in values)
    if len(dimensions) > 1:
        first, second = values[0], next(value for value in values if value.dimension != values[0].dimension)
        raise Refused(
            f"{first.called} and {second.called} can't be {doing}",
            tree.span,
            "two lengths, two areas or two numbers",
        )
    return values


def _add(tree: Binary, left: Quantity, right: Quantity, unit: Length) -> Quantity:
    left, right = _alike(tree, (left, right), unit, "added")
    return Quantity(left.value + right.value, left.dimension)


def _take_away(tree: Binary, left: Quantity, right: Quantity, unit: Length) -> Quantity:
    left, right = _alike(tree, (left, right), unit, "taken from each other")
    return Quantity(left.value - right.value, left.dimension)


def _multiply(tree: Binary, left: Quantity, right: Quantity, _unit: Length) -> Quantity:
    return Quantity(left.value * right.value, _dimension(tree, left.dimension + right.dimension))


def _divide(tree: Binary, left: Quantity, right: Quantity, _unit: Length) -> Quantity:
    if right.value == 0:
        raise Refused("this divides by zero", tree.right.span, "a divisor other than zero")
    return Quantity(left.value / right.value, _dimension(tree, left.dimension - right.dimension))


def _dimension(tree: Tree, dimension: int) -> int:
    if not -2 <= dimension <= 3:
        called = Quantity(Fraction(1), dimension).called
        raise Refused(
            f"this comes to {called}, which nothing in a plan is", tree.span, "a length, an area or a volume"
        )
    return dimension


_OPERATORS = {"+": _add, "-": _take_away, "*": _multiply, "/": _divide}


def _call(tree: Call, values: tuple[Quantity, ...], unit: Length) -> Quantity:
    return _FUNCTIONS[tree.function](tree, values, unit)


def _smallest(tree: Call, values: tuple[Quantity, ...], unit: Length) -> Quantity:
    return min(_alike(tree, values, unit, "compared"), key=lambda value: value.value)


def _greatest(tree: Call, values: tuple[Quantity, ...], unit: Length) -> Quantity:
    return max(_alike(tree, values, unit, "compared"), key=lambda value: value.value)


def _nearest(tree: Call, values: tuple[Quantity, ...], unit: Length) -> Quantity:
    if len(values) != 2:
        raise Refused("nearest takes two values", tree.span, "nearest(length, step)")
    value, step = _alike(tree, values, unit, "compared")
    if step.value <= 0:
        raise Refused(
            "the step of nearest is not above zero", tree.arguments[1].span, "a step such as 1/16 in"
        )
    return Quantity(to_nearest(value.value, step.value), value.dimension)


def _root(tree: Call, values: tuple[Quantity, ...], _unit: Length) -> Quantity:
    value = _single(tree, values)
    if value.dimension not in (0, 2):
        raise Refused(
            f"sqrt takes a ratio or an area, and this is {value.called}",
            tree.arguments[0].span,
            "a ratio or an area",
        )
    if value.value < 0:
        raise Refused(
            "there is no root of a number below zero", tree.arguments[0].span, "a number not below zero"
        )
    return Quantity(
        square_root(value.value, LENGTH_STEP if value.dimension else RATIO_STEP), value.dimension // 2
    )


def _of_angle(
    work: Callable[[Fraction], Fraction],
) -> Callable[[Call, tuple[Quantity, ...], Length], Quantity]:
    def of_angle(tree: Call, values: tuple[Quantity, ...], _unit: Length) -> Quantity:
        value = _single(tree, values)
        if value.dimension:
            message = f"{tree.function} takes an angle in degrees, and this is {value.called}"
            raise Refused(message, tree.arguments[0].span, "a pure number")
        try:
            return Quantity(work(value.value))
        except ZeroDivisionError:
            raise Refused(
                "tan has no value at this angle", tree.arguments[0].span, "an angle other than 90 degrees"
            ) from None

    return of_angle


def _single(tree: Call, values: tuple[Quantity, ...]) -> Quantity:
    if len(values) != 1:
        raise Refused(f"{tree.function} takes one value", tree.span, f"{tree.function}(value)")
    return values[0]


_FUNCTIONS: dict[str, Callable[[Call, tuple[Quantity, ...], Length], Quantity]] = {
    "min": _smallest,
    "max": _greatest,
    "nearest": _nearest,
    "sqrt": _root,
    "sin": _of_angle(sine),
    "cos": _of_angle(cosine),
    "tan": _of_angle(tangent),
}
