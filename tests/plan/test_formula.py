"""The plan's arithmetic: what formulas mean, what is refused, and that nothing ever escapes."""

from __future__ import annotations

from fractions import Fraction
from math import cos, radians, sin, sqrt, tan
from pathlib import Path

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from benchalong.ground.lengths import INCH
from benchalong.plan.evaluate import MOST_BITS, evaluate
from benchalong.plan.formula import parse
from benchalong.plan.quantity import Quantity
from benchalong.plan.refused import Refused
from benchalong.plan.roots import LENGTH_STEP, RATIO_STEP, cosine, sine, square_root, tangent
from benchalong.plan.tree import Binary, Measure, Name, Number, names_in

DIMENSIONS = {"number": 0, "length": 1, "area": 2}
NAMES = {"stile": Quantity(2 * INCH, 1), "rail": Quantity(6 * INCH, 1), "half": Quantity(Fraction(1, 2))}


def value_of(text: str) -> Quantity:
    def look_up(name: Name) -> Quantity:
        if name.name not in NAMES:
            raise Refused(f"no {name.name}", name.span)
        return NAMES[name.name]

    return evaluate(parse(text), look_up, INCH)


def cases() -> list[list[str]]:
    lines = (Path(__file__).parent / "formula_cases.txt").read_text(encoding="utf-8").splitlines()
    return [
        [field.strip() for field in line.split("|")] for line in lines if line and not line.startswith("#")
    ]


@pytest.mark.parametrize(("text", "value", "what"), cases())
def test_formulas_come_to(text: str, value: str, what: str) -> None:
    found = value_of(text)
    expected = sum(Fraction(term) for term in value.split("+"))
    assert (found.value / INCH ** DIMENSIONS[what], found.dimension) == (expected, DIMENSIONS[what])


REFUSED = [
    ("", "there is nothing here", ""),
    ("   ", "there is nothing here", ""),
    ("stile +", "nothing follows the +", "+"),
    ("* 2", "a formula can't begin with *", "*"),
    ("2 * / 3", "/ can't follow *", "/"),
    ("(2", "this bracket is never closed", "("),
    ("2)", "this bracket closes nothing", ")"),
    ("()", ") can't follow (", ")"),
    ("2 3", "a sign is missing between 2 and 3", "2 3"),
    ("stile rail", "a sign is missing between stile and rail", "stile rail"),
    ("(2)(3)", "a sign is missing between ) and (", ")("),
    ("2 stile", "stile is no unit of length", "stile"),
    ("2(3)", "a sign is missing between the number and the bracket", "2("),
    ("3 in in", "a sign is missing between in and in", "in in"),
    ('"', 'the mark " stands after a number only', '"'),
    ('stile"', 'the mark " stands after a number only', '"'),
    ("1,5", "the comma in 1,5 reads two ways", "1,5"),
    ("1,200 mm", "the comma in 1,200 reads two ways", "1,200"),
    ("min(1,5 mm)", "the comma in 1,5 reads two ways", "1,5"),
    ("stile, rail", "a comma stands only between the values of min, max and nearest", ","),
    ("(stile, rail)", "a comma stands only between the values of min, max and nearest", ","),
    ("stile^2", "there are no powers here", "^"),
    ("stile**2", "there are no powers here", "**"),
    ("[stile]", "[ has no meaning in arithmetic", "["),
    ("{stile}", "{ has no meaning in arithmetic", "{"),
    ("stile = 2", "= has no meaning in a formula", "="),
    ("stile; rail", "; has no meaning in arithmetic", ";"),
    ("10%", "% has no meaning in arithmetic", "%"),
    ("stile\nrail", "a formula stands on one line", "\n"),
    ("stile\u200b", "there is a character here that can't be seen", "\u200b"),
    ("stile.__class__", "no stile.__class__", "stile.__class__"),
    ("(2).x", ". has no meaning in arithmetic", "."),
    ("stile()", "there is no function stile", "stile"),
    ("eval(2)", "there is no function eval", "eval"),
    ("lambda: 2", ": has no meaning in arithmetic", ":"),
    ("1 5/4 in", "the fraction after 1 is not below one", "5/4"),
    ("3/0 in", "this divides by zero", "3/0"),
    ("1/0", "this divides by zero", "1/0"),
    ("1/(2 - 2)", "this divides by zero", "2 - 2"),
    ("stile/(rail - 3*stile)", "this divides by zero", "rail - 3*stile"),
    ("10-3/4 in + 1 in", "10-3/4 in reads two ways, as a mixed fraction and as a subtraction", "10-3/4 in"),
    ("rail - 10-3/4 in", "10-3/4 in reads two ways, as a mixed fraction and as a subtraction", "10-3/4 in"),
    ("10 -3/4 in", "10 -3/4 in reads two ways, as a mixed fraction and as a subtraction", "10 -3/4 in"),
    ("10-3/4", "10-3/4 reads two ways, as a mixed fraction and as a subtraction", "10-3/4"),
    ("(10-3/4 in)", "10-3/4 in reads two ways, as a mixed fraction and as a subtraction", "10-3/4 in"),
    ("rail - 1 3/4 in", "a mixed fraction stands only as a whole value, not inside arithmetic", "1 3/4 in"),
    ("2*1½", "a mixed fraction stands only as a whole value, not inside arithmetic", "1½"),
    (
        "rail - 2 ft 6 in",
        "a length in feet and inches stands only as a whole value, not inside arithmetic",
        "2 ft 6 in",
    ),
    (
        "rail-2'-6\"",
        "a length in feet and inches stands only as a whole value, not inside arithmetic",
        "2'-6\"",
    ),
    ("rail / 3/4 in", "dividing by 3/4 in reads two ways", "3/4 in"),
    ("(2) in", "a unit stands right after a number only", "in"),
    ("stile + rail*stile", "a length and an area can't be added", "stile + rail*stile"),
    ("2 - rail*stile", "a pure number and an area can't be taken from each other", "2 - rail*stile"),
    ("max(stile, stile*stile)", "a length and an area can't be compared", "max(stile, stile*stile)"),
    (
        "rail*rail*rail*rail",
        "this comes to a length to the power of 4, which nothing in a plan is",
        "rail*rail*rail*rail",
    ),
    ("sqrt(rail)", "sqrt takes a ratio or an area, and this is a length", "rail"),
    ("sqrt(-4)", "there is no root of a number below zero", "-4"),
    ("sqrt(4, 9)", "sqrt takes one value", "sqrt(4, 9)"),
    ("sin(rail)", "sin takes an angle in degrees, and this is a length", "rail"),
    ("tan(90)", "tan has no value at this angle", "90"),
    ("tan(-270)", "tan has no value at this angle", "-270"),
    ("nearest(rail)", "nearest takes two values", "nearest(rail)"),
    ("nearest(rail, 0)", "the step of nearest is not above zero", "0"),
    ("nearest(rail, -1 in)", "the step of nearest is not above zero", "-1 in"),
    ("1" * 21, "this number is too long", "1" * 21),
    ("(" * 41 + "1" + ")" * 41, "this is nested too deep", "("),
    ("-" * 41 + "1", "this is nested too deep", "-"),
    ("sqrt(" * 41 + "1" + ")" * 41, "this is nested too deep", "("),
    ("1+" * 100 + "1", "this formula has more than 200 numbers, names and signs", ""),
    ("stile " + " " * 500, "this formula has 506 characters", ""),
]


@pytest.mark.parametrize(("text", "message", "marked"), REFUSED)
def test_what_is_refused_says_why_and_marks_it(text: str, message: str, marked: str) -> None:
    with pytest.raises(Refused) as refused:
        value_of(text)
    assert refused.value.message == message
    assert text[slice(*refused.value.span)] == marked if refused.value.span else marked == ""


def test_numbers_that_grow_too_long_are_refused() -> None:
    long = Quantity(Fraction(2 ** (MOST_BITS // 2)))
    with pytest.raises(Refused) as refused:
        evaluate(parse("a*a"), lambda _: long, INCH)
    assert refused.value.message == "the number this comes to is too long to keep exactly"


def test_equal_meaning_is_equal_wherever_it_stands() -> None:
    assert parse("stile + 3/4 in") == parse("  stile  +0.75 in")
    assert hash(parse("stile + 3/4 in")) == hash(parse("stile+(3/4 in)"))
    assert parse("stile + 2") != parse("2 + stile")


def test_trees_are_plain() -> None:
    assert parse("2*stile + 1 in") == Binary(
        "+", Binary("*", Number(Fraction(2)), Name("stile")), Measure(INCH)
    )


def test_names_in_order() -> None:
    assert [name.name for name in names_in(parse("b + max(a, -b*door.length)"))] == [
        "b",
        "a",
        "b",
        "door.length",
    ]


PIECES = st.sampled_from(
    [
        *(
            "stile",
            "rail",
            "half",
            "door_rail.length",
            "in",
            "ft",
            "mm",
            "min",
            "max",
            "nearest",
            "sqrt",
            "sin",
            "tan",
        ),
        *("½", "1", "2", "3/4", "10-3/4", ".5", "1.2", "0", "²", "٣", "e9", "inf", "nan", "1e400"),
        *("(", ")", "+", "-", "*", "/", "×", "−", ",", " ", '"', "'", "”", "^", "[", "_", ".", "\t"),
    ]
)


def refusal(text: str) -> Refused | None:
    """Why it is refused; None when it comes to something. Nothing else may be raised."""
    try:
        value_of(text)
    except Refused as refused:
        return refused
    return None


@settings(max_examples=600, deadline=None)
@given(st.lists(PIECES, max_size=14).map("".join) | st.text(max_size=60))
@example("٣")
@example("½nan")
@example("1 inf")
@example("1²")
@example("²/²")
@example("𝟛 in")
@example("1/٣ in")
def test_any_text_is_worked_out_or_refused_within_itself(text: str) -> None:
    refused = refusal(text)
    if refused is not None:
        start, end = refused.span or (0, 0)
        assert refused.message
        assert 0 <= start <= end <= len(text)


degrees = st.fractions(min_value=-720, max_value=720, max_denominator=1000)


@given(degrees)
def test_sines_and_cosines_agree_with_floats(angle: Fraction) -> None:
    assert float(sine(angle)) == pytest.approx(sin(radians(angle)), abs=2e-12)
    assert float(cosine(angle)) == pytest.approx(cos(radians(angle)), abs=2e-12)


@given(st.fractions(min_value=-89, max_value=89, max_denominator=1000))
def test_tangents_agree_with_floats(angle: Fraction) -> None:
    assert float(tangent(angle)) == pytest.approx(tan(radians(angle)), rel=1e-11, abs=2e-12)


@given(degrees)
def test_ratios_are_kept_to_a_fixed_step(angle: Fraction) -> None:
    assert (sine(angle) / RATIO_STEP).denominator == 1
    assert abs(sine(angle) ** 2 + cosine(angle) ** 2 - 1) < 4 * RATIO_STEP


def test_known_digits() -> None:
    """To twelve places, from printed tables: sqrt 2, sqrt 3, sin 1, cos 1, tan 1 (degrees) and sin 45."""
    assert square_root(Fraction(2), RATIO_STEP) == Fraction("1.414213562373")
    assert square_root(Fraction(3), RATIO_STEP) == Fraction("1.732050807569")
    assert sine(Fraction(1)) == Fraction("0.017452406437")
    assert cosine(Fraction(1)) == Fraction("0.999847695156")
    assert tangent(Fraction(1)) == Fraction("0.017455064928")
    assert sine(Fraction(45)) == Fraction("0.707106781187")


@given(st.fractions(min_value=0, max_value=10**10, max_denominator=10**6))
def test_roots_are_the_nearest_step(value: Fraction) -> None:
    root = square_root(value, LENGTH_STEP)
    assert float(root) == pytest.approx(sqrt(value), rel=1e-12, abs=1e-9)
    low, high = max(Fraction(0), root - LENGTH_STEP / 2), root + LENGTH_STEP / 2
    assert low * low <= value <= high * high


@given(st.fractions(min_value=0, max_value=10**6, max_denominator=10**6))
def test_roots_of_squares_are_exact(value: Fraction) -> None:
    assert square_root(value * value, RATIO_STEP) == value
