"""What the wood does: how a part moves over the year, what it weighs and carries."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from markupsafe import Markup

from benchalong.ground.lengths import Length
from benchalong.ground.shown import decimal
from benchalong.pages.makings import Makings, drawn
from benchalong.plan.model import PartId
from benchalong.trade.species import SAID
from benchalong.workings.amounts import AMOUNTS
from benchalong.workings.climate import CLIMATE
from benchalong.workings.movement import MOVEMENT, Moves
from benchalong.workings.sag import SAG, Sag
from benchalong.workings.weights import WEIGHTS


@dataclass(frozen=True)
class ClimateShown:
    made_at: str
    """`8 %`"""
    shop: str
    """Where that comes from."""
    driest: str
    dampest: str
    house: str
    is_shop_assumed: bool
    is_house_assumed: bool


@dataclass(frozen=True)
class MovesShown:
    part: PartId
    name: str
    is_slight: bool
    """Whether there is nothing to allow for."""
    species: str
    sawn: str
    is_sawn_assumed: bool
    picture: Markup
    """Over the year; empty where there is nothing to see."""
    made: Markup
    driest: Markup
    dampest: Markup
    bare: tuple[Markup, Markup]
    """The same two for a table whose head names the unit."""
    swing: Markup
    """Between the last two."""
    quarter: Markup
    """What the swing would be of quarter-sawn wood; empty where it is."""
    quarter_words: str
    """How much less that is: `about half as much`."""
    equation: str
    standing: str
    """How well the number behind it is known."""
    climate: ClimateShown


@dataclass(frozen=True)
class CarriesShown:
    load: Markup
    ends: str
    span: Markup
    at_once: Markup
    after_years: Markup
    most: Markup
    longest: Markup
    is_on_edge: bool
    is_too_far: bool


@dataclass(frozen=True)
class WoodShown:
    """Of the whole piece."""

    climate: ClimateShown
    moves: tuple[MovesShown, ...]
    """Parts that move enough to allow for, the most restless first."""
    slight: tuple[str, ...]
    still: tuple[str, ...]
    unknown: tuple[str, ...]
    weight: Markup
    """Of the piece; empty when nothing could be weighed."""
    weights: tuple[tuple[str, Markup], ...]
    """Of its assemblies: name, weight."""
    not_weighed: tuple[str, ...]


EQUATIONS = {
    "coefficient": "the Wood Handbook's movement coefficient",
    "shrinkage": "the Wood Handbook's shrinkage equation, since the range goes beyond 6 to 14 %",
}
ENDS = {"resting": "ends resting loose", "fixed": "ends held fast"}
AT = {"spread": "spread evenly", "middle": "at the middle"}


def climate_shown(makings: Makings) -> ClimateShown:
    climate = makings.worked[CLIMATE]
    return ClimateShown(
        percent(climate.made_at),
        climate.shop,
        percent(climate.driest),
        percent(climate.dampest),
        climate.house,
        climate.is_shop_assumed,
        climate.is_house_assumed,
    )


def moves_shown(makings: Makings, part: PartId) -> MovesShown | None:
    """None for a part that doesn't move, or of which nothing is known."""
    moves = makings.worked[MOVEMENT].parts.get(part)
    return None if moves is None else _moves(makings, moves)


def _moves(makings: Makings, moves: Moves) -> MovesShown:
    size, width = makings.shows.size, moves.width
    return MovesShown(
        moves.part,
        makings.plan.parts[moves.part].name,
        moves.is_slight,
        capital(moves.species.name),
        moves.sawn,
        moves.is_sawn_assumed,
        drawn(makings.drawings.year(moves.part)),
        size(width.made),
        size(width.driest),
        size(width.dampest),
        (makings.shows.bare(width.driest), makings.shows.bare(width.dampest)),
        size(width.swing),
        Markup("") if moves.sawn == "quarter" else size(moves.as_quarter.swing),
        as_much(moves.as_quarter.swing, width.swing),
        EQUATIONS[moves.by],
        SAID[moves.standing],
        climate_shown(makings),
    )


SHARES = {
    Fraction(1, 4): "about a quarter as much",
    Fraction(1, 3): "about a third as much",
    Fraction(1, 2): "about half as much",
    Fraction(2, 3): "about two thirds as much",
    Fraction(3, 4): "about three quarters as much",
    Fraction(1): "about as much",
}


def as_much(size: Length, whole: Length) -> str:
    """One size as a share of another, in words; empty where there is no whole."""
    return SHARES[min(SHARES, key=lambda share: abs(share - size / whole))] if whole else ""


def carries_shown(makings: Makings, part: PartId) -> CarriesShown | None:
    sag = makings.worked[SAG].get(part)
    return None if sag is None else _carries(makings, sag)


def _carries(makings: Makings, sag: Sag) -> CarriesShown:
    size, load = makings.shows.size, sag.load
    heavy = makings.shows.weight(load.kilograms)
    each = Markup(" for each {}").format(size(load.per)) if load.per else ""
    return CarriesShown(
        Markup("{}{}, {}").format(heavy, each, AT[load.at]),
        ENDS[load.ends],
        size(sag.span),
        size(sag.at_once),
        size(sag.after_years),
        size(sag.most),
        size(sag.longest),
        sag.is_on_edge,
        sag.span > sag.longest,
    )


def part_weight(makings: Makings, part: PartId) -> Markup:
    """Of one copy; empty when it isn't known."""
    weight = makings.worked[WEIGHTS]().parts.get(part)
    return Markup("") if weight is None else makings.shows.weight(weight)


def lifting_caution(makings: Makings) -> tuple[Markup, ...]:
    """Said where the piece is too heavy for one."""
    weights = makings.worked[WEIGHTS]()
    if weights.piece is None or not weights.is_for_two:
        return ()
    heavy, most = (makings.shows.weight(each) for each in (weights.piece, makings.plan.rates.lift))
    return (
        Markup(
            "The piece weighs about {}, without hardware. That is more than one person lifts alone "
            "(about {}; local rules differ): get help before you move it."
        ).format(heavy, most),
    )


def wood_shown(makings: Makings) -> WoodShown:
    movement, weights = makings.worked[MOVEMENT], makings.worked[WEIGHTS]()
    restless = sorted(movement.parts.values(), key=lambda moves: (-moves.width.swing, moves.part))
    assemblies = makings.plan.assemblies
    return WoodShown(
        climate_shown(makings),
        tuple(_moves(makings, moves) for moves in restless if not moves.is_slight),
        _names(makings, tuple(moves.part for moves in restless if moves.is_slight)),
        _names(makings, movement.still),
        _names(makings, movement.unknown),
        Markup("") if weights.piece is None else makings.shows.weight(weights.piece),
        tuple(
            (assemblies[each].name, makings.shows.weight(weight))
            for each, weight in weights.assemblies.items()
            if each != makings.plan.piece and weight
        ),
        _names(makings, weights.unknown),
    )


def _names(makings: Makings, parts: tuple[PartId, ...]) -> tuple[str, ...]:
    return tuple(makings.plan.parts[part].name for part in parts)


def finish_takes(makings: Makings, finish: str) -> str:
    """`at most 1.3 litres for 2 coats`."""
    amount = makings.worked[AMOUNTS]().finish[finish]
    coats = f"{amount.coats} coats" if amount.coats > 1 else "one coat"
    square_metres = makings.worked[AMOUNTS]().surface / 1_000_000
    return (
        f"at most {decimal(amount.litres, 2)} litres for {coats}, if it went on every side of every part "
        f"({decimal(square_metres, 1)} m²)"
    )


def capital(words: str) -> str:
    """With a capital, the rest as it is: `European oak` stays."""
    return words[:1].upper() + words[1:]


def percent(moisture: Fraction) -> str:
    return f"{decimal(moisture, 1)} %"
