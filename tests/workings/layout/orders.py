"""Random orders as a workshop might have them, small enough to lay out at once."""

from __future__ import annotations

from hypothesis import strategies as st

from benchalong.workings.layout.model import Board, MatchSet, Order, Piece, Rectangle, Rules, Trim, Way


@st.composite
def boards(draw: st.DrawFn, at: int) -> Board:
    length, width = draw(st.integers(30, 120)), draw(st.integers(10, 40))
    trims = st.integers(0, 3)
    return Board(
        name=f"board {at}",
        length=length,
        width=width,
        number=draw(st.none() | st.integers(1, 4)),
        cost=draw(st.integers(1, 5)),
        trim=Trim(draw(trims), draw(trims), draw(trims), draw(trims)),
        defects=tuple(draw(st.lists(defects(length, width), max_size=2))),
    )


@st.composite
def defects(draw: st.DrawFn, length: int, width: int) -> Rectangle:
    """Some hang over the board's edge, as a wane does."""
    x, y = draw(st.integers(-3, length)), draw(st.integers(-3, width))
    return Rectangle(x, y, draw(st.integers(0, 20)), draw(st.integers(0, 10)))


@st.composite
def pieces(draw: st.DrawFn, at: int) -> Piece:
    return Piece(
        name=f"piece {at}",
        length=draw(st.integers(3, 60)),
        width=draw(st.integers(2, 30)),
        number=draw(st.integers(1, 4)),
        may_turn=draw(st.booleans()),
    )


@st.composite
def orders(draw: st.DrawFn) -> Order:
    kinds = tuple(draw(pieces(at)) for at in range(draw(st.integers(1, 6))))
    return Order(
        boards=tuple(draw(boards(at)) for at in range(draw(st.integers(1, 3)))),
        pieces=kinds,
        match_sets=tuple(_match_sets(draw, kinds)),
        rules=Rules(
            kerf=draw(st.integers(0, 3)),
            turns=draw(st.integers(1, 5)),
            first=draw(st.sampled_from([None, Way.ACROSS, Way.ALONG])),
            seed=draw(st.integers(0, 5)),
            effort=300_000,
        ),
    )


def _match_sets(draw: st.DrawFn, kinds: tuple[Piece, ...]) -> list[MatchSet]:
    left = {piece.name: piece.number for piece in kinds}
    made = []
    for _ in range(draw(st.integers(0, 2))):
        names = draw(st.lists(st.sampled_from(sorted(left)), min_size=1, max_size=3))
        if all(names.count(name) <= left[name] for name in names):
            made.append(MatchSet(tuple(names), draw(st.sampled_from([*Way, None]))))
            for name in names:
                left[name] -= 1
    return made
