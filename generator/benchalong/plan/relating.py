"""Where something stands that is placed by relation: worked out from the rooms of what stands beside it.

Relations read boxes and joint sizes, never cuts, and come to exact numbers here; whoever reads a place
afterwards can't tell which way it was said.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeAlias

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path, Place
from benchalong.ground.words import nearest_words
from benchalong.plan import model
from benchalong.plan.joints.openings import reach_of
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.relations import DIRECTIONS, Relation, Spot, Words
from benchalong.plan.tilts import tilted_room
from benchalong.plan.turns import Room, moved, room_of

Follows: TypeAlias = frozenset[model.SizeName]
NOTHING: Follows = frozenset()


@dataclass(frozen=True)
class Stands:
    """What stands somewhere in an assembly."""

    placed: model.Placed
    room: Room
    follows: tuple[Follows, Follows, Follows]
    """What its sides follow from, in each direction: its place and its size."""


@dataclass(frozen=True)
class Laid:
    """An assembly that has been laid out."""

    stands: Mapping[str, Stands] = field(default_factory=dict)
    """By mark."""
    room: Room | None = None
    """None when it can't be known."""
    follows: Follows = NOTHING
    """All that it follows from."""


@dataclass(frozen=True)
class Found:
    """The corner in one direction."""

    at: Length | None
    """None when it can't be worked out; why not has been said, or will be elsewhere."""
    follows: Follows = NOTHING


@dataclass(frozen=True)
class Own:
    """What is to be placed, in one direction."""

    size: Length | None
    follows: Follows
    nth: int
    count: int


class Around:
    """What stands in an assembly so far, by what it is called."""

    def __init__(self, marks: Mapping[str, str], laid: Mapping[str, Laid], sums: Reckoning) -> None:
        self.marks = marks
        """Every mark in the assembly, and what stands there."""
        self.laid = laid
        self.sums = sums
        self.stands: dict[str, Stands] = {}

    def mark_of(self, who: str) -> str | None:
        """Which of the marks is meant; None when none is, or several are."""
        head = who.partition("/")[0]
        if head in self.marks:
            return head
        found = [mark for mark, of in self.marks.items() if of == head]
        return found[0] if len(found) == 1 else None

    def knows(self, who: str, place: Place) -> bool:
        """Whether somebody is called so; says so when not."""
        head = who.partition("/")[0]
        copies = [mark for mark, of in self.marks.items() if of == head]
        if self.mark_of(who) is not None:
            return True
        if len(copies) > 1:
            shown = ", ".join(copies[:4]) + (" …" if len(copies) > 4 else "")
            self.sums.say(
                place, f"{who} stands here {len(copies)} times", f"the mark of one of them: {shown}"
            )
        else:
            known = (*self.marks, *self.marks.values())
            expected = f"a mark in the same assembly: {', '.join(list(self.marks)[:6])}"
            self.sums.say(place, f"nothing here is called {who}", expected, nearest_words(who, known))
        return False

    def span(self, words: Words, path: Path, axis: int) -> tuple[Length, Length, Follows] | None:
        """From where to where it reaches; None while that isn't known."""
        mark = self.mark_of(words.text)
        stands = self.stands.get(mark) if mark else None
        if stands is None:
            return None
        inner = words.text.partition("/")[2]
        if inner:
            room = self._inside(stands, inner)
            if room is None:
                place = Place(path, start=words.span[0], end=words.span[1])
                known = self.laid[stands.placed.of].stands if stands.placed.kind == "assembly" else {}
                message = f"nothing in {mark} is called {inner}"
                self.sums.say(place, message, f"one of {', '.join(known)}" if known else "its mark alone")
                return None
            return room[0][axis], room[1][axis], frozenset().union(*stands.follows, self._all(stands))
        return stands.room[0][axis], stands.room[1][axis], stands.follows[axis]

    def _inside(self, stands: Stands, inner: str) -> Room | None:
        """The room of what stands in an assembly, in the directions of the one around it."""
        chain, here = [stands], stands
        for mark in inner.split("/"):
            laid = self.laid.get(here.placed.of) if here.placed.kind == "assembly" else None
            if laid is None or mark not in laid.stands:
                return None
            here = laid.stands[mark]
            chain.append(here)
        room = here.room
        for holder in reversed(chain[:-1]):
            low, high = room_of(room, holder.placed.turn)
            room = (moved(low, holder.placed.at), moved(high, holder.placed.at))
            room = tilted_room(room, holder.placed.tilt)
        return room

    def _all(self, stands: Stands) -> Follows:
        return self.laid[stands.placed.of].follows if stands.placed.kind == "assembly" else NOTHING


def names_in_spots(spots: Iterable[Spot | None]) -> Iterator[Words]:
    """Everybody that a place refers to."""
    for spot in spots:
        if spot is not None and isinstance(spot.start, Relation):
            yield from spot.start.whom


def place_on(spot: Spot, path: Path, axis: int, own: Own, around: Around) -> Found:
    """The near side of what stands there, in one direction."""
    start = _start(spot, path, axis, own, around)
    if spot.step is None or start.at is None:
        return start
    step = _length(spot.step, path, around.sums)
    if step.at is None or (spot.is_clear and own.size is None):
        return Found(None)
    far = step.at + (own.size or 0) if spot.is_clear else step.at
    away = -1 if isinstance(spot.start, Relation) and spot.start.how == "before" else 1
    follows = start.follows | step.follows | (own.follows if spot.is_clear else NOTHING)
    return Found(start.at + away * own.nth * far, follows)


def _start(spot: Spot, path: Path, axis: int, own: Own, around: Around) -> Found:
    if isinstance(spot.start, Words):
        return _length(spot.start, path, around.sums)
    relation = spot.start
    spans = [around.span(words, path, axis) for words in relation.whom]
    by, into = _gap(relation, path, around.sums), _reach(relation, path, around.sums)
    if any(span is None for span in spans) or own.size is None or by.at is None or into.at is None:
        return Found(None)
    known = [span for span in spans if span is not None]
    follows = frozenset().union(by.follows, into.follows, *(span[2] for span in known))
    at = _at(relation, known, by.at - into.at, own, (path, axis, around))
    return Found(at, follows if relation.how == "beyond" else follows | own.follows)


def _at(
    relation: Relation,
    spans: Sequence[tuple[Length, Length, Follows]],
    gap: Length,
    own: Own,
    place: tuple[Path, int, Around],
) -> Length | None:
    assert own.size is not None
    near, far, _ = spans[0]
    match relation.how:
        case "beyond":
            return far + gap
        case "before":
            return near - gap - own.size
        case "flush":
            return far - own.size if relation.is_far else near
        case "inside":
            return far - own.size - gap if relation.is_far else near + gap
        case "middle":
            return (near + far - own.size) / 2
    opening = _between(relation, spans, place)
    if opening is None:
        return None
    near, far = opening
    if relation.how == "between":
        return (near + far - own.size) / 2
    return _spread(relation, near, far, own, place)


def _between(
    relation: Relation,
    spans: Sequence[tuple[Length, Length, Follows]],
    place: tuple[Path, int, Around],
) -> tuple[Length, Length] | None:
    (one_near, one_far, _), (other_near, other_far, _) = spans
    if one_far <= other_near:
        return one_far, other_near
    if other_far <= one_near:
        return other_far, one_near
    path, axis, around = place
    one, other = relation.whom
    message = f"{one.text} and {other.text} don't stand apart {DIRECTIONS[axis]}, so nothing is between them"
    around.sums.say(Place(path, start=one.span[0], end=other.span[1]), message, "two with room between them")
    return None


def _spread(
    relation: Relation, near: Length, far: Length, own: Own, place: tuple[Path, int, Around]
) -> Length | None:
    assert own.size is not None
    gap = (far - near - own.count * own.size) / (own.count + 1)
    if gap < 0:
        path, _, around = place
        one, other = relation.whom
        sums = around.sums
        message = (
            f"{own.count} of {sums.shown(own.size)} don't fit into the {sums.shown(far - near)} "
            f"between {one.text} and {other.text}"
        )
        if own.nth == 0:
            sums.say(Place(path, start=one.span[0], end=other.span[1]), message, "fewer, or smaller ones")
        return None
    return near + gap * (own.nth + 1) + own.size * own.nth


def _length(words: Words, path: Path, sums: Reckoning) -> Found:
    length = sums.length(words.text, Place(path, start=words.span[0], end=words.span[1]))
    return Found(length, frozenset(sums.follows(words.text)))


def _gap(relation: Relation, path: Path, sums: Reckoning) -> Found:
    return Found(Length(0)) if relation.by is None else _length(relation.by, path, sums)


def _reach(relation: Relation, path: Path, sums: Reckoning) -> Found:
    """How far it goes into a joint."""
    if relation.into is None:
        return Found(Length(0))
    name, draft = relation.into.text, sums.draft
    place = Place(path, start=relation.into.span[0], end=relation.into.span[1])
    if not sums.knows("joints", name, place, among=draft.written.joints):
        return Found(None)
    reach = reach_of(name, draft)
    if reach is None:
        kind = draft.written.joints[name].kind
        sums.say(
            place,
            f"how far something goes into {name} can't be told: it is a {kind}",
            "a tongue and groove, dado, rabbet or mortise and tenon; or numbers",
        )
        return Found(None)
    return Found(reach.size, reach.follows)
