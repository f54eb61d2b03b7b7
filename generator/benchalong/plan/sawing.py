"""What the shop reckons with when boards are cut up: what the author says, else the trade's usual."""

from __future__ import annotations

from benchalong.ground.lengths import Length
from benchalong.ground.marks import Path
from benchalong.ground.names import Names
from benchalong.plan.draft import Draft
from benchalong.plan.reckoning import Reckoning
from benchalong.plan.rough import ASSUMED, Allowance, Jointer, Planer, Sawing, usual_sawing
from benchalong.reading import written
from benchalong.reading.written import PROJECT_FILE

SHOP: Path = (PROJECT_FILE, "shop")


def take_sawing(draft: Draft) -> Draft:
    """Adds `sawing`."""
    sums = Reckoning(draft)
    return sums.done(sawing=_sawing(draft.written.shop.sawing, sums))


def _sawing(said: written.Sawing, sums: Reckoning) -> Sawing:
    usual, jointer, planer = usual_sawing(sums.draft.written.units), said.jointer, said.planer
    saws = {
        "kerf": said.kerf,
        "trim": said.trim,
        "resaw.kerf": said.resaw.kerf,
        "resaw.clean_up": said.resaw.clean_up,
    }
    machines = {
        "jointer.width": jointer.width,
        "jointer.shortest": jointer.shortest,
        "jointer.narrowest": jointer.narrowest,
        "planer.width": planer.width,
        "planer.shortest": planer.shortest,
        "planer.thinnest": planer.thinnest,
    }
    found = {key: _or_nothing(text, _path(key), sums) for key, text in saws.items()}
    found |= {key: _wood(text, _path(key), sums) for key, text in machines.items()}

    def of(key: str, otherwise: Length) -> Length:
        value = found[key]
        return otherwise if value is None else value

    return Sawing(
        kerf=of("kerf", usual.kerf),
        trim=of("trim", usual.trim),
        resaw_kerf=of("resaw.kerf", usual.resaw_kerf),
        clean_up=of("resaw.clean_up", usual.clean_up),
        jointer=Jointer(
            of("jointer.width", usual.jointer.width),
            of("jointer.shortest", usual.jointer.shortest),
            of("jointer.narrowest", usual.jointer.narrowest),
        ),
        planer=Planer(
            of("planer.width", usual.planer.width),
            of("planer.shortest", usual.planer.shortest),
            of("planer.thinnest", usual.planer.thinnest),
        ),
        turns=said.turns,
        car=_wood(said.car, _path("car"), sums),
        allowances={
            kind: allowance(each, (*SHOP, "allowances", *(() if kind == "all" else (kind,))), sums)
            for kind, each in said.allowances.items()
        },
        assumed=Names(key for key in ASSUMED if found[key] is None),
    )


def allowance(said: written.Allowance, path: Path, sums: Reckoning) -> Allowance:
    """What an author says of it; a length below nothing is no allowance."""
    return Allowance(
        _or_nothing(said.length, (*path, "length"), sums),
        _or_nothing(said.width, (*path, "width"), sums),
        _or_nothing(said.thickness, (*path, "thickness"), sums),
    )


def _path(key: str) -> Path:
    return (*SHOP, *key.split("."))


def _wood(text: str | None, path: Path, sums: Reckoning) -> Length | None:
    return None if text is None else sums.size_of_wood(text, path, _what(path))


def _or_nothing(text: str | None, path: Path, sums: Reckoning) -> Length | None:
    """A length of zero or more."""
    length = None if text is None else sums.length(text, path)
    if length is not None and length < 0:
        sums.say(path, f"{_what(path)} comes to {sums.shown(length)}", "a length, or 0")
        return None
    return length


def _what(path: Path) -> str:
    return f"the {str(path[-1]).replace('_', ' ')}"
