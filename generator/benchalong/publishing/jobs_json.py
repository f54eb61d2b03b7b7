"""Jobs and setups as plain data, for `plan.json`."""

from __future__ import annotations

from benchalong.publishing.plain import Json, Plain, maybe_number
from benchalong.workings.jobs.model import Number, Setup, Task, Tasks
from benchalong.workings.work_order.model import WorkOrder


def task_json(task: Task, plain: Plain) -> Json:
    return {
        "id": task.id,
        "kind": task.kind,
        "title": task.title,
        "called": list(task.called),
        "parts": list(task.parts),
        "marks": list(task.marks),
        "count": task.count,
        "shape": task.shape,
        "joint": task.joint,
        "assembly": task.assembly,
        "cuts": [{"shape": cut.shape, "number": cut.number} for cut in task.cuts],
        "sizes": [{"name": name, "length": plain.length(length)} for name, length in task.sizes],
        "hardware": task.hardware,
        "jig": task.jig,
        "finish": task.finish,
        "boards": task.boards,
        "rows": [list(row) for row in task.rows],
        "needs": [
            {"first": need.first, "why": need.why, "rule": need.rule, "due": need.due} for need in task.needs
        ],
        "closes": [{"shut": list(closes.shut), "why": closes.why} for closes in task.closes],
        "usual": task.usual,
        "one_session": task.one_session,
        "lies": task.lies,
        "waits": task.waits,
        "rests": plain.words(task.rests) if task.rests else None,
        "spares": task.spares,
        "test_pieces": list(task.test_pieces),
        "takes_off_marks": task.takes_off_marks,
        "setup": task.setup.id if task.setup else None,
        "minutes_to_set": float(task.minutes_to_set),
        "minutes": float(task.minutes),
        "cautions": [plain.words(caution) for caution in task.cautions],
        "tools": list(dict.fromkeys(way.tool for way in task.ways)),
        "too_small": [
            {"tool": one.tool, "why": plain.words(one.reason), "instead": plain.words(one.instead)}
            for one in task.too_small
        ],
        "laid_out": [_number(number, plain) for number in task.laid_out],
    }


def setups_json(tasks: Tasks, plain: Plain) -> list[Json]:
    """Each once, in the order of the first task that has it."""
    found: dict[Setup, list[str]] = {}
    for task in tasks.tasks:
        if task.setup:
            found.setdefault(task.setup, []).append(task.id)
    return [_setup(setup, ids, plain) for setup, ids in found.items()]


def order_json(order: WorkOrder) -> Json:
    """All jobs in an order that can be carried out, and the runs at one setup that it makes."""
    return {
        "jobs": list(order.order),
        "runs": [
            {"number": run.number, "setup": run.setup.id, "jobs": list(run.tasks), "marks": list(run.marks)}
            for run in order.runs
        ],
        "setups": order.settings,
        "least": order.least,
        "proven": order.is_proven,
        "again": [
            {"setup": each.setup.id, "times": each.times, "because": list(each.because), "why": each.why}
            for each in order.again
        ],
    }


def _setup(setup: Setup, ids: list[str], plain: Plain) -> Json:
    return {
        "id": setup.id,
        "machine": setup.machine,
        "cutter": setup.cutter,
        "cutter_width": plain.maybe(setup.cutter_width),
        "settings": [_number(number, plain) for number in setup.settings],
        "guide": setup.guide,
        "table": setup.table,
        "needs": list(setup.needs),
        "jobs": ids,
    }


def _number(number: Number, plain: Plain) -> Json:
    return {
        "key": number.key,
        "name": number.name,
        "length": plain.maybe(number.length),
        "degrees": maybe_number(number.degrees),
        "count": number.count,
    }
