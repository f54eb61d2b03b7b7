"""Where a cut is, in plain words without numbers: `in edge a, centred, from end to end`."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.plan.cuts.given import Given

_LAID_ACROSS = ("groove", "tongue", "tenon", "mortise", "hole")
"""Kinds that lie centred across their surface unless they say otherwise."""
_STANDS = ("tongue", "tenon")


def where(cut: Given) -> str:
    said = [_on(cut), *_across(cut), *_along(cut), *_through(cut)]
    return ", ".join(said)


def _on(cut: Given) -> str:
    names = " and ".join(
        f"the {surface}" if surface in ("face", "back") else surface for surface in cut.surfaces
    )
    if cut.kind == "outline":
        return "round the face" if cut.removes != "inside" else "inside the face"
    if cut.kind in ("rabbet", "bevel"):
        return f"along the arris of {names}"
    if cut.kind == "notch" and len(cut.surfaces) == 2:
        return f"at the corner of {names}"
    if cut.kind == "slot":
        return f"in the mitre at {names}, centred"
    return f"{'on' if cut.kind in (*_STANDS, 'taper') else 'in'} {names}"


def _across(cut: Given) -> list[str]:
    if cut.kind == "dado":
        return ["across the grain"]
    if cut.kind not in _LAID_ACROSS:
        return []
    return ["centred" if _is_centred(cut) else "to one side"]


def _is_centred(cut: Given) -> bool:
    """Whether it says so, says nothing, or comes out so."""
    size = cut.lengths.get("thickness" if cut.kind in _STANDS else "width", Length(0))
    room = cut.whole("down" if cut.kind in _STANDS else cut.directions.across)
    return cut.lengths.get("across", (room - size) / 2) == (room - size) / 2


def _along(cut: Given) -> list[str]:
    if cut.kind == "taper":
        return ["towards end b" if cut.lengths["to"] > cut.lengths["from"] else "towards end a"]
    if cut.kind not in ("groove", "dado", "rabbet"):
        return []
    run = "across" if cut.kind == "dado" else cut.directions.run
    stopped = {
        key for key, edge in (("from", 0), ("to", cut.whole(run))) if cut.lengths.get(key, edge) != edge
    }
    ends = ("end a", "end b") if run == "along" else ("edge a", "edge b")
    if len(stopped) == 2:
        return ["stopped at both ends"]
    if stopped:
        return [f"stopped short of {ends['to' in stopped]}"]
    return ["from end to end" if run == "along" else "from edge to edge"]


def _through(cut: Given) -> list[str]:
    return (
        ["right through"] if cut.words.get("depth") == "through" or cut.kind in ("notch", "outline") else []
    )
