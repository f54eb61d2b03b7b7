"""`plan.json`: all that the pages say, for programs; `plan.schema.json` beside it promises its shape."""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.ground.marks import Marks
from benchalong.ground.put_off import put_off
from benchalong.plan.model import Plan, Size
from benchalong.publishing.amounts_json import amounts_json, load_json
from benchalong.publishing.assemblies_json import assembly_json, overall_json, triangle_json
from benchalong.publishing.boards_json import layouts_json
from benchalong.publishing.file_names import SCHEMA_FILE
from benchalong.publishing.hardware_json import finish_json, hardware_json, jig_json
from benchalong.publishing.held_json import held_json
from benchalong.publishing.jobs_json import order_json, setups_json, task_json
from benchalong.publishing.joints_json import joint_json
from benchalong.publishing.parts_json import cut_list_json, fitted_json, part_json, shape_json, stock_json
from benchalong.publishing.plain import Json, Plain, finding_json, in_short
from benchalong.publishing.rough_json import RoughSays
from benchalong.publishing.sessions_json import glue_up_json, sessions_json
from benchalong.publishing.steps_json import STEPS, change_json, question_json, stage_json, steps_json
from benchalong.publishing.wood_json import movement_json
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.boards.boards import BOARDS
from benchalong.workings.cut_list import CUT_LIST
from benchalong.workings.extent import EXTENT, Extent
from benchalong.workings.glue_ups import GLUE_UPS
from benchalong.workings.holding.held import HELD
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.meetings import MEETINGS
from benchalong.workings.order import WORKINGS
from benchalong.workings.purchases.purchases import PURCHASES
from benchalong.workings.sag import SAG
from benchalong.workings.sessions.sessions import SESSIONS
from benchalong.workings.triangles import TRIANGLES
from benchalong.workings.work_order.work_order import ORDER
from benchalong.workings.working import Worked


def plan_json(plan: Plan, worked: Worked, marks: Marks, *, edition: str, put_off_steps: bool = False) -> str:
    """The whole plan as one JSON document, the same for the same plan."""
    data = plan_data(plan, worked, marks, edition=edition, put_off_steps=put_off_steps)
    return f"{in_short(data)}\n"


def plan_data(plan: Plan, worked: Worked, marks: Marks, *, edition: str, put_off_steps: bool = False) -> Json:
    """The same before it is text. Where steps are put off, a hole stands for all of them."""
    plain, extent = Plain(plan.units, plan.precision), worked[EXTENT]
    rough = RoughSays(plain)
    return {
        "$schema": SCHEMA_FILE,
        "piece": _piece(plan, extent, edition, plain),
        "origin": {"plan": plan.origin.plan, "rights": plan.origin.rights, "by": plan.origin.by},
        "sizes": [_size(size, plain) for size in plan.sizes.values()],
        "stock": [stock_json(stock, plain) for stock in plan.stock.values()],
        "boards": [rough.board(board) for board in plan.boards],
        "parts": [part_json(part, plain) for part in plan.parts.values()],
        "spares": [{"part": part, "count": count} for part, count in plan.spares.items()],
        "test_pieces": [rough.test_piece(piece) for piece in plan.test_pieces.values()],
        "matches": [rough.match(match) for match in plan.matches.values()],
        "chosen_at_the_bench": list(plan.chosen_at_the_bench),
        "shapes": [shape_json(shape, plain) for shape in plan.shapes.values()],
        "joints": [
            joint_json(joint, worked[MEETINGS].get(joint.id), plain) for joint in plan.joints.values()
        ],
        "assemblies": [assembly_json(each, extent, plain) for each in plan.assemblies.values()],
        "cut_list": cut_list_json(worked[CUT_LIST], plain),
        "blanks": rough.blanks(worked[BLANKS]),
        "purchases": rough.purchases(worked[PURCHASES]()),
        "hardware": [hardware_json(thing, plain) for thing in plan.hardware.values()],
        "jigs": [jig_json(jig, plain) for jig in plan.jigs.values()],
        "finish": [finish_json(finish) for finish in plan.finish.values()],
        "tools": list(_tools(plan)),
        "words": [{"word": word, "means": means} for word, means in plan.words.items()],
        "stages": [stage_json(stage, plain) for stage in plan.stages.values()],
        "steps": put_off(STEPS) if put_off_steps else steps_json(plan, plain),
        "questions": [question_json(question, plain) for question in plan.questions.values()],
        "changes": [change_json(change) for change in plan.changes],
        "layouts": layouts_json(worked[BOARDS](), worked[BLANKS], plain),
        "movement": movement_json(worked, plain),
        "amounts": amounts_json(worked),
        "triangles": [triangle_json(triangle) for triangle in worked[TRIANGLES]],
        "fitted": [fitted_json(name, fitted, plan, plain) for name, fitted in plan.fitted.items()],
        "jobs": [task_json(task, plain) for task in worked[JOBS].tasks],
        "setups": setups_json(worked[JOBS], plain),
        "order": order_json(worked[ORDER]()),
        "sessions": sessions_json(worked[SESSIONS]()),
        "glue_ups": [glue_up_json(each, plain) for each in worked[GLUE_UPS]],
        "loads": [load_json(part, sag, plain) for part, sag in worked[SAG].items()],
        "held": held_json(plan, worked[HELD]),
        "findings": [finding_json(finding, marks, plain) for finding in worked.findings],
        "checked": [working.question for working in WORKINGS],
    }


def _piece(plan: Plan, extent: Extent | None, edition: str, plain: Plain) -> Json:
    prose = plain.prose
    return {
        "id": plan.id,
        "title": prose(plan.title),
        "about": prose(plan.about),
        "edition": edition,
        "edition_name": plan.edition,
        "language": plan.look.language,
        "units": plan.units,
        "nearest": {
            "inch": plain.length(plan.precision.inch),
            "millimetre": plain.length(plan.precision.millimetre),
        },
        "projection": plan.projection,
        "currency": plan.currency,
        "assembly": plan.piece,
        "overall": overall_json(extent.piece if extent else None, plain),
        "cautions": [prose(caution) for caution in plan.cautions],
        "shop": {
            "tools": list(plan.shop.tools),
            "country": plan.shop.country,
            "session": plan.shop.session,
            "pace": float(plan.shop.pace),
            "bench": plan.shop.bench,
            "sawing": RoughSays(plain).sawing(plan.shop.sawing),
        },
        "ask": {"mail": plan.ask.mail, "board": plan.ask.board},
    }


def _size(size: Size, plain: Plain) -> Json:
    return {
        "name": size.name,
        "typed": size.typed,
        "value": plain.quantity(size.value),
        "follows": list(size.follows),
        "note": size.note,
    }


def _tools(plan: Plan) -> Iterable[str]:
    """Every tool, the shop's first, then as the steps name them; each once."""
    named = (tool for step in plan.steps.values() for tool in step.tools)
    return dict.fromkeys([*plan.shop.tools, *named])
