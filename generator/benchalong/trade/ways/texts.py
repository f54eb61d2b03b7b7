"""What several tools say alike."""

from __future__ import annotations

from benchalong.trade.ways.model import TestCut, Words

CENTRED: Words = (
    "Run the piece, turn it end for end and run it again at the same fence: both faces have been against the "
    "fence, so the groove lies in the middle whatever the fence reads.",
    " Its width follows the wood's thickness, so mill all of it together.",
)
ONE_FACE: Words = (
    "Keep the same side to the fence for every piece, and mark that side: what lies off the middle is spoilt "
    "when a piece is turned round.",
)
MOVE_FENCE: Words = (
    "No cutter is wide enough: begin at the edge and move the fence away for each further stroke.",
)
BACKED: Words = ("A backing board behind the work keeps its far edge from tearing out.",)
NO_OFFCUT: Words = (
    "Fence and mitre gauge may be used together here because nothing comes loose: no offcut can jam between "
    "fence and cutter. For a cut that goes through, never use both.",
)
NEVER_BOTH: Words = (
    "Keep the fence away: fence and mitre gauge together trap the offcut of a cut that goes through. The "
    "stop stands ahead of the blade or on the gauge.",
)
SQUARE_FIRST: Words = ("Square one end first. Then bring that end to the stop.",)
STOP_BLOCK: Words = ("One stop block for all parts of this length: set it once, cut them all.",)
OTHER_SIDE: Words = ("Cut one side, turn the piece over, cut the other: what is left between is the fit.",)
ROUND_ENDS: Words = ("Square the round ends with a chisel, or round the tenon to suit.",)

FIT_CHANNEL: Words = (
    "What goes in slides home by hand and doesn't rattle. Correct the setting, not the wood.",
)
FIT_TONGUE: Words = (
    "It goes together by hand, and stays when it is lifted. Correct the setting, not the wood.",
)
FIT_SQUARE: Words = ("Square by the try square, and two pieces stood side by side are equally long.",)
FIT_LEAF: Words = ("The leaf lies level with the wood.",)

TEST_GROOVE = TestCut(("Cut a groove in scrap of the same thickness.",), FIT_CHANNEL)
TEST_ACROSS = TestCut(("Cut across scrap of the same stock.",), FIT_CHANNEL)
TEST_RABBET = TestCut(("Cut a rabbet in scrap of the same thickness.",), FIT_CHANNEL)
TEST_CHEEKS = TestCut(("Cut both sides on scrap of the same thickness.",), FIT_TONGUE)
TEST_LENGTH = TestCut(("Cut two offcuts at the stop.",), FIT_SQUARE)
TEST_CORNER = TestCut(("Cut two scraps and put them together.",), ("The corner closes and is square.",))
TEST_FRAME = TestCut(("Cut both ends of four scraps and put them together.",), ("All four corners close.",))


def the(side: str) -> str:
    """`the face`, `edge a`."""
    return f"the {side}" if side in ("face", "back") else side
