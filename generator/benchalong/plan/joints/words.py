"""What a joint says in words, looked over before anything is made of it."""

from __future__ import annotations

from benchalong.ground.marks import Path, Place
from benchalong.plan.joints.families.opening import degrees
from benchalong.plan.joints.named import Members, knows
from benchalong.plan.joints.sides import LOOKING, NotASide, parse_side
from benchalong.plan.reckoning import Reckoning
from benchalong.reading.written import Joint

STOPS = "the side it stops short of: front edge, top end, both ends"


def look_over_words(joint: Joint, path: Path, sums: Reckoning, members: Members) -> bool:
    """Whether all of it makes sense; says so of what doesn't."""
    before = len(sums.found)
    _look_at_stop(joint, (*path, "stopped"), sums)
    opens = joint.words.get("opens", "")
    if opens and degrees(opens) is None:
        sums.say((*path, "opens"), f"{opens} is not an angle", "how far it opens: 110 degrees")
    hardware = joint.words.get("hardware", "")
    if hardware:
        sums.knows("hardware", hardware, (*path, "hardware"), among=sums.draft.written.hardware)
    for index, part in enumerate(joint.floats):
        sums.knows("parts", part, (*path, "floats", index), among=sums.draft.written.parts)
    known = [knows(who, Place((*path, "only", index)), sums, members) for index, who in enumerate(joint.only)]
    return len(sums.found) == before and all(known)


def _look_at_stop(joint: Joint, path: Path, sums: Reckoning) -> None:
    said = joint.words.get("stopped", "")
    if not said:
        return
    try:
        terms = parse_side(said)
    except NotASide as wrong:
        span = wrong.span or (0, len(said))
        sums.say(Place(path, start=span[0], end=span[1]), wrong.message, STOPS, wrong.meant)
        return
    if len(terms) > 1 or terms[0].qualifier not in ("", "both", *LOOKING):
        sums.say(path, f"a channel can't be stopped short of “{said}”", STOPS)
