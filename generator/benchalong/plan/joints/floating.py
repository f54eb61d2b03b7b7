"""What lies loose in a groove: it meets the groove's side without a side of its own being named."""

from __future__ import annotations

from collections.abc import Iterator

from benchalong.plan.joints.member import Member, Side, touch


def floats_in(side: Side, member: Member) -> Iterator[Side]:
    """The side of a loose part that lies in a groove in this one; none where it doesn't reach in."""
    if member != side.member and touch(side.member.room, member.room):
        x, y, z = side.looks[0]
        yield Side(member, (Side(member, ()).looking((-x, -y, -z)),))
