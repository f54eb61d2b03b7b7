"""Sessions and rehearsed glue-ups as plain data, for `plan.json`."""

from __future__ import annotations

from benchalong.publishing.plain import Json, Plain
from benchalong.workings.glue_ups import GlueUp
from benchalong.workings.sessions.model import Sessions


def sessions_json(found: Sessions) -> Json:
    return {
        "length": float(found.length),
        "days": found.days,
        "minutes": float(found.minutes),
        "sessions": [
            {
                "number": session.number,
                "minutes": float(session.minutes),
                "does": [
                    {
                        "jobs": list(doing.tasks),
                        "start": float(doing.start),
                        "minutes": float(doing.minutes),
                        "meanwhile": doing.meanwhile,
                        "goes_on": doing.goes_on,
                    }
                    for doing in session.doings
                ],
                "sets": list(session.sets),
            }
            for session in found.sessions
        ],
    }


def glue_up_json(each: GlueUp, plain: Plain) -> Json:
    return {
        "job": each.task,
        "rows": [
            {
                "marks": list(row.marks),
                "makes": [{"joint": one.joint, "count": one.count, "glue": one.glue} for one in row.makes],
            }
            for row in each.rows
        ],
        "clamps": each.clamps,
        "diagonal": plain.maybe(each.diagonal),
        "minutes": float(each.minutes),
        "time": float(each.time),
        "first": list(each.first),
        "halves": [float(half) for half in each.halves] if each.halves else [],
        "needs_help": each.needs_help,
    }
