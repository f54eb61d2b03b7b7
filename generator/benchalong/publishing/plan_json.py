"""`plan.json`: all that the pages say, for programs; `plan.schema.json` beside it promises its shape."""

from __future__ import annotations

from collections.abc import Iterable

from benchalong.ground.marks import Marks
from benchalong.ground.put_off import put_off
from benchalong.plan.joints.sizes import JOINT_SIZES
from benchalong.plan.model import (
    Assembly,
    Change,
    Cut,
    CutSize,
    Finish,
    Fitted,
    Hardware,
    Jig,
    Joint,
    Meeting,
    Moves,
    Part,
    PartId,
    Placed,
    Plan,
    Seated,
    Shape,
    SideOf,
    Size,
    Stage,
    Stock,
    Tilt,
)
from benchalong.plan.quantity import Quantity
from benchalong.publishing.boards_json import layouts_json
from benchalong.publishing.file_names import SCHEMA_FILE
from benchalong.publishing.held_json import held_json
from benchalong.publishing.jobs_json import order_json, setups_json, task_json
from benchalong.publishing.plain import Json, Plain, finding_json, in_short
from benchalong.publishing.rough_json import RoughSays, price_json
from benchalong.publishing.sessions_json import glue_up_json, sessions_json
from benchalong.publishing.steps_json import STEPS, job_json, questions_json, steps_json
from benchalong.publishing.wood_json import glue_json, movement_json
from benchalong.workings.amounts import AMOUNTS
from benchalong.workings.blanks.blanks import BLANKS
from benchalong.workings.boards.boards import BOARDS
from benchalong.workings.cut_list import CUT_LIST, CutList
from benchalong.workings.extent import EXTENT, Extent, Sides
from benchalong.workings.glue import GLUE
from benchalong.workings.glue_ups import GLUE_UPS
from benchalong.workings.holding.held import HELD
from benchalong.workings.jobs.jobs import JOBS
from benchalong.workings.meetings import MEETINGS, JointFit
from benchalong.workings.order import WORKINGS
from benchalong.workings.purchases.purchases import PURCHASES
from benchalong.workings.sag import SAG, Sag
from benchalong.workings.sessions.sessions import SESSIONS
from benchalong.workings.triangles import TRIANGLES, Triangle
from benchalong.workings.weights import WEIGHTS
from benchalong.workings.work_order.work_order import ORDER
from benchalong.workings.working import Worked

PLAY = ("thickness", "width", "length")
"""Directions of what goes into a joint."""


def plan_json(plan: Plan, worked: Worked, marks: Marks, *, edition: str, put_off_steps: bool = False) -> str:
    """The whole plan as one JSON document, the same for the same plan."""
    data = plan_data(plan, worked, marks, edition=edition, put_off_steps=put_off_steps)
    return f"{in_short(data)}\n"


def plan_data(plan: Plan, worked: Worked, marks: Marks, *, edition: str, put_off_steps: bool = False) -> Json:
    """The same before it is text. Where steps are put off, a hole stands for all of them."""
    says, extent = _Says(plan), worked[EXTENT]
    return {
        "$schema": SCHEMA_FILE,
        "piece": says.piece(extent, edition),
        "origin": {"plan": plan.origin.plan, "rights": plan.origin.rights, "by": plan.origin.by},
        "sizes": [says.size(size) for size in plan.sizes.values()],
        "stock": [says.stock(stock) for stock in plan.stock.values()],
        "boards": [says.rough.board(board) for board in plan.boards],
        "parts": [says.part(part) for part in plan.parts.values()],
        "spares": [{"part": part, "count": count} for part, count in plan.spares.items()],
        "test_pieces": [says.rough.test_piece(piece) for piece in plan.test_pieces.values()],
        "matches": [says.rough.match(match) for match in plan.matches.values()],
        "chosen_at_the_bench": list(plan.chosen_at_the_bench),
        "shapes": [says.shape(shape) for shape in plan.shapes.values()],
        "joints": [says.joint(joint, worked[MEETINGS].get(joint.id)) for joint in plan.joints.values()],
        "assemblies": [says.assembly(each, extent) for each in plan.assemblies.values()],
        "cut_list": says.cut_list(worked[CUT_LIST]),
        "blanks": says.rough.blanks(worked[BLANKS]),
        "purchases": says.rough.purchases(worked[PURCHASES]()),
        "hardware": [says.hardware(thing) for thing in plan.hardware.values()],
        "jigs": [says.jig(jig) for jig in plan.jigs.values()],
        "finish": [says.finish(finish) for finish in plan.finish.values()],
        "tools": list(_tools(plan)),
        "words": [{"word": word, "means": means} for word, means in plan.words.items()],
        "stages": [says.stage(stage) for stage in plan.stages.values()],
        "steps": put_off(STEPS) if put_off_steps else steps_json(plan, says.plain),
        "questions": questions_json(plan, says.plain),
        "changes": [says.change(change) for change in plan.changes],
        "layouts": layouts_json(worked[BOARDS](), worked[BLANKS], says.plain),
        "movement": movement_json(worked, says.plain),
        "amounts": says.amounts(worked),
        "triangles": [says.triangle(triangle) for triangle in worked[TRIANGLES]],
        "fitted": [says.fitted(name, fitted) for name, fitted in plan.fitted.items()],
        "jobs": [task_json(task, says.plain) for task in worked[JOBS].tasks],
        "setups": setups_json(worked[JOBS], says.plain),
        "order": order_json(worked[ORDER]()),
        "sessions": sessions_json(worked[SESSIONS]()),
        "glue_ups": [glue_up_json(each, says.plain) for each in worked[GLUE_UPS]],
        "loads": [says.load(part, sag) for part, sag in worked[SAG].items()],
        "held": held_json(plan, worked[HELD]),
        "findings": [finding_json(finding, marks, says.plain) for finding in worked.findings],
        "checked": [working.question for working in WORKINGS],
    }


class _Says:
    """Each noun of the plan as plain data."""

    def __init__(self, plan: Plan) -> None:
        self.plan = plan
        self.plain = Plain(plan.units, plan.precision)
        self.rough = RoughSays(self.plain)

    def piece(self, extent: Extent | None, edition: str) -> Json:
        plan, prose = self.plan, self.plain.prose
        return {
            "id": plan.id,
            "title": prose(plan.title),
            "about": prose(plan.about),
            "edition": edition,
            "edition_name": plan.edition,
            "language": plan.look.language,
            "units": plan.units,
            "nearest": {
                "inch": self.plain.length(plan.precision.inch),
                "millimetre": self.plain.length(plan.precision.millimetre),
            },
            "projection": plan.projection,
            "currency": plan.currency,
            "assembly": plan.piece,
            "overall": self.overall(extent.piece if extent else None),
            "cautions": [prose(caution) for caution in plan.cautions],
            "shop": {
                "tools": list(plan.shop.tools),
                "country": plan.shop.country,
                "session": plan.shop.session,
                "pace": float(plan.shop.pace),
                "bench": plan.shop.bench,
                "sawing": self.rough.sawing(plan.shop.sawing),
            },
            "ask": {"mail": plan.ask.mail, "board": plan.ask.board},
        }

    def triangle(self, triangle: Triangle) -> Json:
        return {
            "assembly": triangle.assembly,
            "within": triangle.within,
            "across": triangle.sides,
            "points": triangle.points,
            "pieces": [
                {
                    "mark": piece.mark,
                    "part": piece.part,
                    "shape": piece.shape,
                    "on": piece.named,
                    "carries": piece.carries,
                }
                for piece in triangle.pieces
            ],
        }

    def assembly(self, assembly: Assembly, extent: Extent | None) -> Json:
        sides = extent.assemblies.get(assembly.id) if extent else None
        return {
            "id": assembly.id,
            "name": assembly.name,
            "note": assembly.note,
            "overall": self.overall(sides),
            "place": [self.placed(each) for each in assembly.placed],
        }

    def overall(self, sides: Sides | None) -> Json | None:
        if sides is None:
            return None
        return {name: self.plain.length(getattr(sides, name)) for name in ("width", "depth", "height")}

    def size(self, size: Size) -> Json:
        return {
            "name": size.name,
            "typed": size.typed,
            "value": self.plain.quantity(size.value),
            "follows": list(size.follows),
            "note": size.note,
        }

    def stock(self, stock: Stock) -> Json:
        length = self.plain.maybe
        return {
            "id": stock.id,
            "kind": stock.kind,
            "name": stock.name,
            "species": stock.species,
            "sawn": stock.sawn,
            "buy": stock.buy,
            "thickness": length(stock.thickness),
            "nominal": length(stock.nominal),
            "sheet": [self.plain.length(side) for side in stock.sheet] if stock.sheet else None,
            "grain_along": length(stock.grain_along),
            "price": price_json(stock.price),
            "grade": stock.grade,
            "waste": None if stock.waste is None else float(stock.waste),
            "sold_in": [self.plain.length(each) for each in stock.sold_in],
            "board_width": length(stock.board_width),
            "moisture": None if stock.moisture is None else float(stock.moisture),
            "is_restless": stock.is_restless,
            "allowance": self.rough.allowance(stock.allowance),
            "note": stock.note,
        }

    def part(self, part: Part) -> Json:
        return {
            "id": part.id,
            "name": part.name,
            "stock": part.stock,
            "thickness": self.plain.length(part.thickness),
            "width": self.plain.length(part.width),
            "length": self.plain.length(part.length),
            "count": part.count,
            "marks": list(part.marks),
            "cuts": [self.cut(cut) for cut in part.cuts],
            "glued_up": part.glued_up,
            "strips": self.rough.strips(part.strips),
            "resaw": part.resaw,
            "rough_with": part.rough_with,
            "for": part.purpose,
            "face": part.shows,
            "note": part.note,
            "follows": {name: list(sizes) for name, sizes in part.follows.items()},
        }

    def cut(self, cut: Cut) -> Json:
        return {
            "cut": cut.kind,
            "name": cut.name,
            "on": list(cut.surfaces),
            "where": cut.where,
            "sizes": [
                {"name": size.name, "length": self.plain.length(size.length), "follows": list(size.sizes)}
                for size in cut.sizes
            ],
            "follows": list(cut.follows),
            "note": cut.note,
            "joint": cut.joint,
            "hardware": cut.hardware,
        }

    def shape(self, shape: Shape) -> Json:
        return {
            "id": shape.id,
            "part": shape.part,
            "hand": shape.hand,
            "cuts": [self.cut(cut) for cut in shape.cuts],
            "marks": list(shape.marks),
            "turned": sorted(shape.turned),
        }

    def joint(self, joint: Joint, fit: JointFit | None) -> Json:
        return {
            "id": joint.id,
            "kind": joint.kind,
            "name": joint.name,
            "sizes": [self.joint_size(joint, size) for size in joint.sizes],
            "words": dict(joint.words),
            "glue": joint.glue,
            "meetings": [self.meeting(meeting) for meeting in joint.meetings],
            "floats": list(joint.floats),
            "note": joint.note,
            "moves": [self.moves(moves) for moves in joint.moves],
            "unfilled": [self.side(side) for side in joint.unfilled],
            "unmet": [self.side(side) for side in joint.unmet],
            "pieces": joint.pieces,
            "play": self.play(fit),
        }

    def joint_size(self, joint: Joint, size: CutSize) -> Json:
        known = JOINT_SIZES[joint.kind].get(size.name)
        dimension = 1 if known is None or known.is_length else 0
        return {
            "name": f"{joint.id}.{size.name}",
            "value": self.plain.quantity(Quantity(size.length, dimension)),
            "follows": list(size.sizes),
        }

    def meeting(self, meeting: Meeting) -> Json:
        return {
            "assembly": meeting.assembly,
            "cut_in": self.side(meeting.cut_in),
            "takes": self.side(meeting.takes) if meeting.takes else None,
        }

    def side(self, side: SideOf) -> Json:
        return {"copy": side.copy, "part": side.part, "on": list(side.surfaces)}

    def moves(self, moves: Moves) -> Json:
        return {
            "how": moves.how,
            "stays": moves.stays,
            "goes": moves.goes,
            "at": [self.plain.length(way) for way in moves.at] if moves.at else None,
            "way": list(moves.way) if moves.way else None,
            "angle": None if moves.angle is None else float(moves.angle),
            "travel": self.plain.maybe(moves.travel),
            "tilt": self.tilt(moves.tilt),
        }

    def play(self, fit: JointFit | None) -> Json:
        """As measured, the least and the greatest: by direction of what goes in, and beyond its end."""
        found = fit.play if fit else {}
        in_all = {
            key: [self.plain.length(one) for one in found[key]] if key in found else None for key in PLAY
        }
        end = fit.end if fit else None
        return {**in_all, "end": [self.plain.length(one) for one in end] if end else None}

    def placed(self, placed: Placed) -> Json:
        return {
            placed.kind: placed.of,
            "mark": placed.mark,
            "turn": [list(row) for row in placed.turn],
            "at": [self.plain.length(way) for way in placed.at],
            "touches": list(placed.touches),
            "tilt": self.tilt(placed.tilt),
        }

    def tilt(self, tilt: Tilt | None) -> Json | None:
        if tilt is None:
            return None
        rows = [[float(value) for value in row] for row in tilt.turn]
        return {"turn": rows, "at": [self.plain.length(way) for way in tilt.at]}

    def cut_list(self, cut_list: CutList) -> list[Json]:
        return [
            {
                "stock": group.stock,
                "thickness": self.plain.length(group.thickness),
                "rows": [
                    {
                        "part": row.part,
                        "count": row.count,
                        "spares": row.spares,
                        "marks": list(row.marks),
                        "thickness": self.plain.length(row.thickness),
                        "width": self.plain.length(row.width),
                        "length": self.plain.length(row.length),
                        "shoulder_length": self.plain.maybe(row.shoulder_length),
                    }
                    for row in group.rows
                ],
            }
            for group in cut_list.groups
        ]

    def hardware(self, thing: Hardware) -> Json:
        length = self.plain.length
        return {
            "id": thing.id,
            "name": thing.name,
            "kind": thing.kind,
            "size": thing.size,
            "measured": thing.measured,
            "sizes": [
                {"name": size.name, "length": length(size.length), "follows": list(size.sizes)}
                for size in thing.sizes
            ],
            "weight": None if thing.weight is None else float(thing.weight),
            "held_by": thing.held_by,
            "screws": thing.screws,
            "bores": [
                {
                    "diameter": length(bore.diameter),
                    "depth": None if bore.depth is None else length(bore.depth),
                    "along": length(bore.along),
                    "across": length(bore.across),
                    "screw": bore.screw,
                }
                for bore in thing.bores
            ],
            "latches": thing.latches,
            "seated": [self._seated(seated) for seated in thing.seated],
            "count": thing.count,
            "said": thing.said,
            "needed": thing.needed,
            "price": price_json(thing.price),
            "note": thing.note,
        }

    def _seated(self, seated: Seated) -> Json:
        length = self.plain.length
        room = seated.room
        return {
            "mark": seated.mark,
            "part": seated.part,
            "side": seated.side,
            "looks": list(seated.looks),
            "middle": [length(value) for value in seated.middle],
            "room": None if room is None else [[length(value) for value in corner] for corner in room],
            "is_round": seated.is_round,
            "follows": list(seated.follows),
        }

    def jig(self, jig: Jig) -> Json:
        note = self.plain.prose(jig.note)
        return {"id": jig.id, "name": jig.name, "for": jig.purpose, "made_from": jig.made_from, "note": note}

    def finish(self, finish: Finish) -> Json:
        return {
            "id": finish.id,
            "what": finish.what,
            "coats": finish.coats,
            "wait": finish.wait,
            "on": list(finish.on),
            "faces": finish.faces,
            "bare": finish.bare,
            "note": finish.note,
        }

    def stage(self, stage: Stage) -> Json:
        prose = self.plain.prose
        return {
            "id": stage.id,
            "title": prose(stage.title),
            "about": prose(stage.about),
            "steps": list(stage.steps),
        }

    def change(self, change: Change) -> Json:
        return {"kind": change.kind, "of": change.of, "was": change.was, "why": change.why}

    def amounts(self, worked: Worked) -> Json:
        weights, amounts = worked[WEIGHTS](), worked[AMOUNTS]()
        return {
            "weights": {
                "parts": [{"part": part, "kilograms": float(kg)} for part, kg in weights.parts.items()],
                "assemblies": [
                    {"assembly": assembly, "kilograms": float(kg)}
                    for assembly, kg in weights.assemblies.items()
                ],
                "piece": None if weights.piece is None else float(weights.piece),
                "unknown": list(weights.unknown),
                "more_than_one_lifts": weights.is_for_two,
            },
            "glue": glue_json(worked[GLUE]()),
            "surface_square_metres": float(amounts.surface / 1_000_000),
            "finish": [
                {"finish": name, "coats": each.coats, "litres": float(each.litres)}
                for name, each in amounts.finish.items()
            ],
        }

    def fitted(self, name: str, fitted: Fitted) -> Json:
        """A part or assembly that gets its final size at the bench; of a part, what it is cut to first."""
        part = self.plan.parts.get(name)
        first = part and fitted.first_size(part)
        return {
            "name": name,
            "measured": list(fitted.measured),
            "after": job_json(fitted.after) if fitted.after else None,
            "wider": self.plain.maybe(fitted.wider),
            "longer": self.plain.maybe(fitted.longer),
            "until": "" if fitted.until_job else fitted.until,
            "until_job": job_json(fitted.until_job) if fitted.until_job else None,
            "first_width": self.plain.maybe(first[1] if first else None),
            "first_length": self.plain.maybe(first[0] if first else None),
            "follows": list(fitted.follows),
        }

    def load(self, part: PartId, sag: Sag) -> Json:
        load, length = sag.load, self.plain.length
        return {
            "part": part,
            "kilograms": float(load.kilograms),
            "per": self.plain.maybe(load.per),
            "at": load.at,
            "ends": load.ends,
            "on_edge": sag.is_on_edge,
            "span": length(sag.span),
            "sag": length(sag.at_once),
            "sag_after_years": length(sag.after_years),
            "limit": length(sag.most),
            "longest_span": length(sag.longest),
        }


def _tools(plan: Plan) -> Iterable[str]:
    """Every tool, the shop's first, then as the steps name them; each once."""
    named = (tool for step in plan.steps.values() for tool in step.tools)
    return dict.fromkeys([*plan.shop.tools, *named])
