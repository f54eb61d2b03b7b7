"""The whole of the plan room: it never breaks, never reaches for files, and gives the same plan twice."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import benchalong.plan
from benchalong.plan.resolve import PASSES, resolve
from benchalong.reading.written import Cut, Place, Project, Size, Stock
from conftest import ROOT
from plan.by_hand import ONE_STAGE, assembly, part, project, step

ROOM = Path(benchalong.plan.__file__).parent
FORBIDDEN = {
    "numpy",
    "manifold3d",
    "os",
    "pathlib",
    "io",
    "shutil",
    "tempfile",
    "subprocess",
    "svgwrite",
    "jinja2",
}
LATER = ("workings", "drawing", "pages", "publishing", "comparing", "gathering", "road", "commands")


def imported(source: Path) -> set[str]:
    tree = ast.parse(source.read_text(encoding="utf-8"))
    found = {alias.name for node in ast.walk(tree) if isinstance(node, ast.Import) for alias in node.names}
    return found | {node.module or "" for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}


@pytest.mark.parametrize("source", sorted(ROOM.rglob("*.py")), ids=lambda path: path.name)
def test_the_room_knows_no_files_no_solids_and_no_later_room(source: Path) -> None:
    names = imported(source)
    assert not {name.partition(".")[0] for name in names} & FORBIDDEN
    assert not [name for name in names if name.startswith(tuple(f"benchalong.{room}" for room in LATER))]
    calls = {
        node.func.id
        for node in ast.walk(ast.parse(source.read_text()))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name)
    }
    assert not calls & {"open", "eval", "exec", "compile", "__import__", "print"}


def test_loading_the_room_loads_no_solids() -> None:
    code = "import sys, benchalong.plan.resolve; print(sorted({'numpy', 'manifold3d'} & set(sys.modules)))"
    done = subprocess.run(
        [sys.executable, "-c", code],
        env={"PYTHONPATH": str(ROOT / "generator")},
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.strip() == "[]"


def test_the_passes_are_named_by_what_they_do() -> None:
    assert [each.__name__ for each in PASSES[:2]] == ["fit_parts", "work_out_names"]
    assert len(set(PASSES)) == len(PASSES)


def test_an_empty_project_is_a_plan() -> None:
    resolved = resolve(Project(title=("Box",), id="box"))
    assert resolved.plan is not None
    assert resolved.problems == ()


def test_there_is_no_plan_while_anything_could_not_be_read() -> None:
    assert resolve(project(), frozenset([("project.yaml", "look", "accent")])).plan is None


FORMULAS = st.sampled_from(
    [
        *(
            "1",
            "0",
            "-3",
            "60",
            "1/3 in",
            "1 3/4 in",
            "a",
            "b",
            "c",
            "a*b",
            "a/b",
            "a - b",
            "rail.width",
            "rail.length/2",
        ),
        *(
            "rail.thickness",
            "oak.thickness",
            "sqrt(a*b)",
            "1/0",
            "nobody",
            "a-b",
            "2 a",
            "(",
            "",
            "½",
            "10-3/4 in",
            "300 m",
        ),
        *(
            "box",
            "lid",
            "rail",
            "min(a, b)",
            "nearest(a, b)",
            "tan(90)",
            "centred",
            "through",
            "a.b.c",
            "²",
            "1e9",
            "٣",
        ),
    ]
)
NAMES = st.sampled_from(["rail", "lid", "box", "door", "oak", "elm", "", "nobody"])
WAYS = st.sampled_from(["up", "down", "left", "right", "front", "back", "", "sideways"])
KEYS = st.sampled_from(
    ["width", "depth", "length", "thickness", "diameter", "takes", "at", "across", "from", "to"]
)
CUTS = st.sampled_from(
    [
        *(
            (kind, (surface,))
            for kind in ("groove", "mortise", "hole")
            for surface in ("face", "back", "edge a", "end b")
        ),
        *(("dado", (face,)) for face in ("face", "back")),
        *((kind, ("edge b", "face")) for kind in ("rabbet", "bevel")),
        *(("tongue", (surface,)) for surface in ("edge a", "end b")),
        *(
            ("tenon", ("end a",)),
            ("notch", ("end a", "edge b")),
            ("notch", ("edge a",)),
            ("notch", ("end b",)),
        ),
        *(("taper", ("edge a",)), ("taper", ("back",))),
    ]
)
NEEDED = {
    "groove": ("width", "depth"), "dado": ("at", "width", "depth"), "rabbet": ("width", "depth"),
    "tongue": ("thickness", "length"), "tenon": ("thickness", "width", "length"),
    "mortise": ("width", "length", "depth", "at"), "hole": ("diameter", "depth", "at", "across"),
    "notch": ("length", "width"), "bevel": ("width", "depth"), "taper": ("from", "to", "takes"),
}  # fmt: skip
WORDY = {"at": "centred", "across": "centred", "depth": "through"}


@st.composite
def cuts(draw: st.DrawFn) -> Cut:
    """As reading hands them over: every key that is needed, with a formula or a word that may stand there."""
    kind, surfaces = draw(CUTS)
    keys = {*NEEDED[kind], *draw(st.sets(st.sampled_from(["across", "from", "to"]), max_size=2))}
    sizes = {key: draw(FORMULAS) for key in sorted(keys)}
    return Cut(kind, surfaces, {key: text for key, text in sizes.items() if _may_stand(kind, key, text)})


def _may_stand(kind: str, key: str, text: str) -> bool:
    """Reading lets the words only where they mean something, and drops no key that is needed."""
    return text not in ("centred", "through") or WORDY.get(key) == text or key not in NEEDED[kind]


LOST = st.frozensets(
    st.sampled_from(
        [("project.yaml",), ("project.yaml", "sizes", "a"), ("project.yaml", "parts", "rail", "width")]
    )
)


@st.composite
def projects(draw: st.DrawFn) -> Project:
    places = st.builds(
        Place, st.sampled_from(["part", "assembly"]), NAMES, st.sampled_from(["", "A", "B/C"]),
        st.tuples(FORMULAS, FORMULAS, FORMULAS), WAYS, WAYS,
        st.sampled_from(["", "left to right", "top to bottom"]),
    )  # fmt: skip
    return project(
        units=draw(st.sampled_from(["inch", "millimetre"])),
        piece=draw(NAMES),
        nearest=draw(st.none() | FORMULAS),
        sizes={name: Size(draw(FORMULAS)) for name in "abc"},
        stock={
            "oak": Stock(
                kind="board",
                thickness=draw(st.none() | FORMULAS),
                measured=draw(st.none() | FORMULAS),
                price=draw(FORMULAS),
            )
        },
        parts={
            name: part(draw(FORMULAS), draw(FORMULAS), cuts=tuple(draw(st.lists(cuts(), max_size=2))))
            for name in ("rail", "lid")
        },
        assemblies={name: assembly(*draw(st.lists(places, max_size=3))) for name in ("box", "door")},
        stages=ONE_STAGE,
        steps=(step(parts=(draw(NAMES),)),),
    )


@settings(max_examples=150, deadline=None)
@given(
    projects(),
    st.frozensets(
        st.sampled_from(
            [("project.yaml",), ("project.yaml", "sizes", "a"), ("project.yaml", "parts", "rail", "width")]
        )
    ),
)
def test_any_project_is_a_plan_or_has_problems(
    written: Project, unreadable: frozenset[tuple[str | int, ...]]
) -> None:
    resolved = resolve(written, unreadable)
    assert (resolved.plan is not None) == (not resolved.problems and not unreadable)
    assert resolve(written, unreadable) == resolved
    assert len(set(resolved.problems)) == len(resolved.problems)
