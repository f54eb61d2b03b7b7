"""The piece's own page, the way into everything else."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.lengths import Length
from benchalong.pages.cuts import NamedSize
from benchalong.pages.findings import FindingLine, found
from benchalong.pages.hardware import hardware_facts
from benchalong.pages.held import HeldShown, held_shown
from benchalong.pages.howto import how_to
from benchalong.pages.joint import JointLine, joint_line
from benchalong.pages.makings import Makings, drawn, marks_in_short
from benchalong.pages.part import PartLine, named_size, part_line
from benchalong.pages.shell import Link, Shell
from benchalong.pages.stage import whole_time
from benchalong.pages.triangles import triangles_in
from benchalong.pages.wood import WoodShown, finish_takes, lifting_caution, wood_shown
from benchalong.plan.model import Assembly, AssemblyId, Change, Finish, Hardware, PartId, Plan, Stage
from benchalong.trade.cautions import ALWAYS, cautions_for
from benchalong.workings.extent import EXTENT


@dataclass(frozen=True)
class AssemblyShown:
    """An assembly, with what stands in it."""

    id: AssemblyId
    name: str
    marks: str
    """Its own marks in the piece; empty where it has none."""
    count: int
    is_piece: bool
    note: str
    picture: Markup
    """By itself; empty for the piece, which has its own."""
    apart: Markup
    """Pulled apart; empty for the piece, and where it has nothing that comes apart."""
    triangles: tuple[str, ...]
    """For each set in it, which part carries which piece of the triangle."""
    holds: tuple[str, ...]
    """The assemblies inside it, with their counts: `Door × 2`."""
    parts: tuple[InPlace, ...]


@dataclass(frozen=True)
class InPlace:
    """A part as an assembly holds it."""

    part: PartLine
    count: int
    marks: str


@dataclass(frozen=True)
class StageLine:
    id: str
    number: int
    link: Link
    about: Markup
    steps: tuple[Link, ...]
    minutes: str


@dataclass(frozen=True)
class HardwareLine:
    name: str
    size: str
    count: str
    note: str
    facts: tuple[tuple[str, Markup], ...]
    """Its sizes and whether they were measured, what holds it, where it sits, what one weighs."""


@dataclass(frozen=True)
class JigLine:
    name: str
    purpose: str
    made_from: str
    note: Markup


@dataclass(frozen=True)
class FinishLine:
    what: str
    facts: tuple[tuple[str, str], ...]
    """What is said of it, each with its name: coats, the wait between, where it goes, what stays bare."""
    note: str


@dataclass(frozen=True)
class ChangeLine:
    what: str
    """What was changed, in words: `Size: stile`."""
    was: str
    now: Markup
    """What it is now; empty where words don't say it shorter than the plan does."""
    why: str


@dataclass(frozen=True)
class PiecePage:
    shell: Shell
    title: Markup
    about: Markup
    extent: tuple[NamedSize, ...]
    picture: Markup
    apart: Markup
    """The whole piece, pulled apart the ways its parts come out."""
    assemblies: tuple[AssemblyShown, ...]
    loose: tuple[PartLine, ...]
    """Parts that no assembly holds."""
    joints: tuple[JointLine, ...]
    stages: tuple[StageLine, ...]
    first: Link | None
    """The first step."""
    minutes: str
    tools: tuple[str, ...]
    """What the project says its shop has; everything the steps use where it doesn't say."""
    more_tools: tuple[str, ...]
    """What the steps use besides, in the order of first use."""
    hardware: tuple[HardwareLine, ...]
    jigs: tuple[JigLine, ...]
    finish: tuple[FinishLine, ...]
    cautions: tuple[Markup, ...]
    """The project's own."""
    always: tuple[str, ...]
    """What holds for any piece."""
    with_tools: tuple[str, ...]
    """What holds wherever tools such as these are used."""
    faults: tuple[FindingLine, ...]
    """What will not fit, can't be done or isn't safe."""
    doubts: tuple[FindingLine, ...]
    """What is probably a mistake."""
    notes: int
    """How many notes the plan check made besides."""
    changes: tuple[ChangeLine, ...]
    origin_plan: str
    origin_by: str
    rights: str
    wood: WoodShown
    held: tuple[HeldShown, ...]
    """How it hangs or stands; empty where the plan doesn't say."""
    how_to: Markup
    """schema.org HowTo as JSON-LD."""


def piece_page(makings: Makings) -> PiecePage:
    """Its own page's record, which the paper edition shows too."""
    return makings.once("piece", "", lambda: _page(makings))


def _page(makings: Makings) -> PiecePage:
    plan = makings.plan
    every = all_tools(plan)
    tools = plan.shop.tools or every
    return PiecePage(
        shell=Shell("piece", "index.html", makings.title),
        title=makings.outer.title(plan.title),
        about=makings.outer.fill(plan.about, headings=2),
        extent=overall(makings),
        picture=drawn(makings.drawings.piece()),
        apart=drawn(makings.drawings.piece_apart()),
        assemblies=assemblies_shown(makings),
        loose=loose_parts(makings),
        joints=tuple(joint_line(makings, joint) for joint in plan.joints.values()),
        stages=tuple(
            _stage_line(makings, stage, at) for at, stage in enumerate(plan.stages.values(), start=1)
        ),
        first=makings.step_link(makings.order[0].id) if makings.order else None,
        minutes=whole_time(makings.order),
        tools=tools,
        more_tools=tuple(tool for tool in every if tool not in tools),
        hardware=tuple(_hardware(makings, each) for each in plan.hardware.values()),
        jigs=tuple(
            JigLine(jig.name, jig.purpose, jig.made_from, makings.outer.fill(jig.note, headings=4))
            for jig in plan.jigs.values()
        ),
        finish=tuple(_finish(makings, each) for each in plan.finish.values()),
        cautions=(
            *lifting_caution(makings),
            *(makings.outer.fill(caution) for caution in plan.cautions),
        ),
        always=ALWAYS,
        with_tools=cautions_for(every),
        faults=found(makings, "fault"),
        doubts=found(makings, "doubt"),
        notes=len(found(makings, "note")),
        changes=tuple(_change(makings, change) for change in plan.changes),
        origin_plan=plan.origin.plan,
        origin_by=plan.origin.by,
        rights=plan.origin.rights,
        wood=wood_shown(makings),
        held=held_shown(makings),
        how_to=how_to(makings, every),
    )


def overall(makings: Makings) -> tuple[NamedSize, ...]:
    """Width, depth and height of the piece; empty while nothing is placed."""
    extent = makings.worked[EXTENT]
    if extent is None:
        return ()
    lengths: tuple[tuple[str, Length], ...] = (
        ("Width", extent.piece.width),
        ("Depth", extent.piece.depth),
        ("Height", extent.piece.height),
    )
    return tuple(named_size(makings, name, length, ()) for name, length in lengths)


def all_tools(plan: Plan) -> tuple[str, ...]:
    """Every tool the steps name, in the order of first use, then what else the shop says it has."""
    used = dict.fromkeys(tool for step in plan.steps.values() for tool in step.tools)
    return (*used, *(tool for tool in plan.shop.tools if tool not in used))


def assemblies_shown(makings: Makings) -> tuple[AssemblyShown, ...]:
    """The piece, then what it holds, each assembly once, from the outside in."""
    plan = makings.plan
    if plan.piece is None:
        return ()
    places = _places(plan, plan.piece)
    return tuple(_assembly(makings, plan.assemblies[each], places[each]) for each in places)


def _places(plan: Plan, piece: AssemblyId) -> dict[AssemblyId, tuple[str, ...]]:
    """Every assembly of the piece, with the mark of each of its places ('' for one without)."""
    found: dict[AssemblyId, list[str]] = {}

    def go(assembly: AssemblyId, mark: str) -> None:
        found.setdefault(assembly, []).append(mark)
        for placed in plan.assemblies[assembly].placed:
            if placed.kind == "assembly":
                go(placed.of, "/".join(word for word in (mark, placed.mark) if word))

    go(piece, "")
    return {assembly: tuple(marks) for assembly, marks in found.items()}


def _assembly(makings: Makings, assembly: Assembly, marks: tuple[str, ...]) -> AssemblyShown:
    inside: dict[str, list[str]] = {}
    parts: dict[PartId, list[str]] = {}
    for placed in assembly.placed:
        into = parts if placed.kind == "part" else inside
        into.setdefault(placed.of, []).append(placed.mark)
    names = makings.plan.assemblies
    is_piece = assembly.id == makings.plan.piece
    return AssemblyShown(
        id=assembly.id,
        name=assembly.name,
        marks=marks_in_short(tuple(mark for mark in marks if mark)),
        count=len(marks),
        is_piece=is_piece,
        note=assembly.note,
        picture=Markup("") if is_piece else drawn(makings.drawings.assembly(assembly.id)),
        apart=Markup("") if is_piece else drawn(makings.drawings.apart(assembly.id)),
        triangles=triangles_in(makings, assembly.id),
        holds=tuple(times(names[of].name, len(places)) for of, places in inside.items()),
        parts=tuple(
            InPlace(
                part_line(makings, of), len(places), marks_in_short(tuple(mark for mark in places if mark))
            )
            for of, places in parts.items()
        ),
    )


def times(name: str, count: int) -> str:
    """`Door`, `Door × 2`."""
    return name if count == 1 else f"{name} × {count}"


def loose_parts(makings: Makings) -> tuple[PartLine, ...]:
    held = {placed.of for assembly in makings.plan.assemblies.values() for placed in assembly.placed}
    return tuple(part_line(makings, part) for part in makings.plan.parts if part not in held)


def _stage_line(makings: Makings, stage: Stage, number: int) -> StageLine:
    steps = tuple(makings.plan.steps[step] for step in stage.steps)
    about = makings.outer.fill(stage.about)
    links = tuple(makings.step_link(step) for step in stage.steps)
    return StageLine(stage.id, number, makings.stage_link(stage.id), about, links, whole_time(steps))


def _hardware(makings: Makings, thing: Hardware) -> HardwareLine:
    count = "" if thing.count is None else str(thing.count)
    return HardwareLine(thing.name, thing.size, count, thing.note, hardware_facts(makings, thing))


def _finish(makings: Makings, finish: Finish) -> FinishLine:
    facts = (
        ("Coats", "" if finish.coats is None else str(finish.coats)),
        ("Between coats", finish.wait),
        ("Goes on", finish.faces),
        ("Stays bare", finish.bare),
        ("Takes", finish_takes(makings, finish.id)),
    )
    return FinishLine(finish.what, tuple(fact for fact in facts if fact[1]), finish.note)


def _change(makings: Makings, change: Change) -> ChangeLine:
    plan = makings.plan
    now = Markup("")
    name = change.of.replace("_", " ")
    if change.kind == "size" and change.of in plan.sizes:
        size = plan.sizes[change.of]
        now = (
            makings.shows.size(size.value.value)
            if size.value.dimension == 1
            else Markup("{}").format(size.typed)
        )
    elif change.kind == "part" and change.of in plan.parts:
        name = plan.parts[change.of].name
    elif change.kind == "assembly" and change.of in plan.assemblies:
        name = plan.assemblies[change.of].name
    elif change.kind == "stock" and change.of in plan.stock:
        name = plan.stock[change.of].name
    return ChangeLine(f"{change.kind.capitalize()}: {name}", change.was, now, change.why)
