"""What the plan check found, as pages show it: the message with live sizes, and ways to what it is about."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from markupsafe import Markup

from benchalong.ground.problems import Finding, Level
from benchalong.pages.live_text import live
from benchalong.pages.makings import Makings
from benchalong.pages.shell import Link
from benchalong.plan.model import PartId, SizeName


@dataclass(frozen=True)
class FindingLine:
    """One result of the plan check."""

    level: Level
    subject: Link | None
    """What it is about; None where that has no page of its own."""
    message: Markup
    remedy: Markup
    file: str
    line: int
    """Where it is written."""
    follows: tuple[SizeName, ...]
    """The named sizes it follows from; each has its own line on the page of sizes."""


def found(makings: Makings, level: Level) -> tuple[FindingLine, ...]:
    return tuple(line for line in _every(makings) if line.level == level)


def found_about_joint(makings: Makings, joint: str) -> tuple[FindingLine, ...]:
    return _about(makings, lambda finding: _is_about(finding, "joints", joint))


def found_about_part(makings: Makings, part: PartId) -> tuple[FindingLine, ...]:
    return _about(makings, lambda finding: _is_about(finding, "parts", part))


def _is_about(finding: Finding, section: str, name: str) -> bool:
    return finding.subject == name or finding.place.path[1:3] == (section, name)


def _about(makings: Makings, is_meant: Callable[[Finding], bool]) -> tuple[FindingLine, ...]:
    pairs = zip(makings.worked.findings, _every(makings), strict=True)
    return tuple(line for finding, line in pairs if is_meant(finding))


def _every(makings: Makings) -> tuple[FindingLine, ...]:
    return makings.once(
        "findings", "", lambda: tuple(_line(makings, finding) for finding in makings.worked.findings)
    )


def _line(makings: Makings, finding: Finding) -> FindingLine:
    mark = makings.marks.find(finding.place)
    numbers = tuple(finding.numbers.values())
    return FindingLine(
        level=finding.level,
        subject=_subject(makings, finding),
        message=live(_sentence(makings, finding.message), makings.shows, numbers),
        remedy=live(_sentence(makings, finding.remedy), makings.shows, numbers),
        file=mark.file,
        line=mark.line,
        follows=tuple(name for name in finding.sizes if name in makings.plan.sizes),
    )


def _sentence(makings: Makings, text: str) -> str:
    """With a capital at its head and a full stop at its end; a name in the plan keeps its small letters."""
    head, plan = text.split(" ", 1)[0], makings.plan
    if head.isalpha() and not any(head in names for names in (plan.sizes, plan.parts, plan.joints)):
        text = text[:1].upper() + text[1:]
    return text if not text or text.endswith((".", "?", "!")) else f"{text}."


def _subject(makings: Makings, finding: Finding) -> Link | None:
    plan, name = makings.plan, finding.subject
    if name in plan.parts:
        return makings.part_link(plan.parts[name])
    if name in plan.joints:
        return makings.joint_link(plan.joints[name])
    if name in plan.steps:
        return makings.step_link(name)
    if name in plan.sizes:
        return Link(f"sizes.html#size-{name}", name)
    if name in makings.assemblies_in_piece:
        return Link(f"index.html#assembly-{name}", plan.assemblies[name].name)
    return None
