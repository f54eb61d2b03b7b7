"""What several tools say alike."""

from __future__ import annotations

from benchalong.trade.ways.model import Limit, Refusal, Tool, Words, Work
from benchalong.trade.ways.practice import FENCE_REACH, ROUTER_DEEPEST, STAND_TALLEST

CENTRED: Words = (
    "Run the piece, turn it end for end and run it again at the same fence: both faces have been against the "
    "fence, so the groove lies in the middle whatever the fence reads.",
    " Its width follows the wood's thickness, so mill all of it together.",
)
ONE_FACE: Words = (
    "Keep the same side to the fence for every piece, and mark that side: what lies off the middle is "
    "spoilt when "
    "a piece is turned round.",
)
BURIED: Words = (
    "The cutter is wider than the cut. With the fence locked, raise the running cutter into the "
    "sacrificial fence; "
    "from then on the fence alone sets the width.",
)
IN_THE_FENCE: Words = (
    "The cutter is wider than the cut and stands partly in the opening of the fence, so that the fence "
    "alone sets "
    "the width and the work is never between fence and cutter.",
)
BACKED: Words = ("A backing board behind the work keeps its far edge from tearing out.",)
NO_OFFCUT: Words = (
    "Fence and mitre gauge may be used together here because nothing comes loose: no offcut can jam "
    "between fence "
    "and cutter. For a cut that goes through, never use both.",
)
NEVER_BOTH: Words = (
    "Keep the fence away: fence and mitre gauge together trap the offcut of a cut that goes through. The "
    "stop stands "
    "ahead of the blade or on the gauge.",
)
STOP_BLOCK: Words = ("One stop block for all parts of this length: set it once, cut them all.",)
FIT_CHANNEL: Words = (
    "What goes in slides home by hand and doesn't rattle. Correct the setting, not the wood.",
)
FIT_TONGUE: Words = (
    "It goes together by hand, and stays when it is lifted. Correct the setting, not the wood.",
)
DRAW_BACK: Words = (
    "Begin at the shoulder, the end against the fence, then draw the work away from the fence for the rest.",
)
MOVE_FENCE: Words = (
    "No cutter is wide enough: begin at the edge and move the fence away for each further stroke.",
)
OTHER_SIDE: Words = ("Cut one side, turn the piece over, cut the other: what is left between is the fit.",)
FIT_SQUARE: Words = ("Square by the try square, and two pieces stood side by side are equally long.",)
NOT_STOPPED: Words = (
    "This cut stops short of the end. A saw's cutter is round and leaves a ramp, and dropping wood onto "
    "it is not "
    "safe.",
)
STOPPED_INSTEAD: Words = ("Rout it between stops or along a guide, or chop the end by hand.",)


def the(side: str) -> str:
    """`the face`, `edge a`."""
    return f"the {side}" if side in ("face", "back") else side


def beyond_fence(tool: Tool, work: Work) -> Refusal | None:
    """A channel along the piece, further from its edge than a fence goes."""
    if work.near <= FENCE_REACH.most:
        return None
    said: Words = ("The cut lies ", work.near, " from the edge; a fence goes out to about ", FENCE_REACH, ".")
    return Refusal(tool, said, ("Take a hand-held router along a clamped guide.",))


def beyond_cutter(tool: Tool, work: Work) -> Refusal | None:
    """Deeper than a router's cutters reach."""
    if work.depth <= ROUTER_DEEPEST.most:
        return None
    said: Words = ("The cut is ", work.depth, " deep; usual cutters reach ", ROUTER_DEEPEST, ".")
    return Refusal(tool, said, ("Bore or saw it, and finish with a chisel.",))


def standing_end(tool: Tool, work: Work) -> Refusal | None:
    """A long piece can't be stood on its end at a table."""
    limit: Limit = STAND_TALLEST
    if work.surface != "end" or work.piece.length <= limit.most:
        return None
    said: Words = (
        "The piece would stand on its end, ",
        work.piece.length,
        " tall; over ",
        limit,
        " it tips.",
    )
    instead: Words = ("Take the tool to the work: a hand-held router, or hand tools.",)
    return Refusal(tool, said, instead)
