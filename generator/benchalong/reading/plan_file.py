"""`project.yaml` -> the tables of the plan as written."""

from __future__ import annotations

import html
import re
import unicodedata
from typing import Literal, cast

from benchalong.ground.marks import Place
from benchalong.ground.prose import WrittenProse
from benchalong.ground.words import counted
from benchalong.reading import language, sawing, sawing_language, wood
from benchalong.reading.cuts import cut
from benchalong.reading.hardware import hardware
from benchalong.reading.holding import hanging, standing
from benchalong.reading.holding_language import HANGING, STANDING
from benchalong.reading.joint_language import JOINT
from benchalong.reading.joints import joint
from benchalong.reading.language import Kind
from benchalong.reading.shape import Entry
from benchalong.reading.written import (
    Air,
    Allowance,
    Assembly,
    Change,
    Finish,
    Fitting,
    HandOver,
    Jig,
    Leave,
    Look,
    Origin,
    Part,
    Project,
    Rates,
    Shop,
    Size,
    Stage,
    Stock,
    Turned,
)
from benchalong.reading.written import Place as Placing

ORIGIN_POINT = ("0", "0", "0")
NOT_IN_SLUG = re.compile(r"[^a-z0-9]+")


def project(entry: Entry) -> Project:
    sizes = entry.named("sizes", size, language.SIZE)
    entry.tally.size_names = frozenset(sizes)
    title = entry.prose("title")
    return Project(
        title=title,
        id=entry.spelt("id", Kind.SLUG) or slug(title),
        about=entry.markdown("about"),
        edition=entry.text("edition"),
        units=cast(Literal["inch", "millimetre"], entry.word("units", "inch")),
        nearest=entry.formula("nearest"),
        nearest_other=entry.formula("nearest_other"),
        currency=entry.text("currency"),
        projection=entry.word("projection", "third angle"),
        piece=entry.name("piece"),
        origin=entry.one("origin", origin, language.ORIGIN) or Origin(),
        sizes=sizes,
        shop=entry.one("shop", shop, language.SHOP) or Shop(),
        house=entry.one("house", wood.house, language.HOUSE) or Air(),
        species=entry.named("species", wood.species, language.SPECIES),
        rates=entry.one("rates", wood.rates, language.RATES) or Rates(),
        stock=entry.named("stock", stock, language.STOCK),
        boards=entry.list_of("boards", sawing.board, sawing_language.BOARD),
        spares=entry.counts("spares"),
        test_pieces=entry.named("test_pieces", sawing.test_piece, sawing_language.TEST_PIECE),
        matches=entry.named("matches", sawing.match, sawing_language.MATCH),
        chosen_at_the_bench=entry.names("chosen_at_the_bench"),
        parts=entry.named("parts", part, language.PART),
        joints=entry.named("joints", joint, JOINT),
        assemblies=entry.named("assemblies", assembly, language.ASSEMBLY),
        hardware=entry.named("hardware", hardware, language.HARDWARE),
        hanging=entry.one("hanging", hanging, HANGING),
        standing=entry.one("standing", standing, STANDING),
        jigs=entry.named("jigs", jig, language.JIG),
        finish=entry.named("finish", finish, language.FINISH),
        changes=entry.list_of("changes", change, language.CHANGE),
        cautions=entry.proses("cautions"),
        words=entry.texts_by_name("words", Kind.WORDS),
        ask=entry.one("ask", hand_over, language.HAND_OVER) or HandOver(),
        look=entry.one("look", look, language.LOOK) or Look(),
        stages=entry.named("stages", stage, language.STAGE),
    )


def slug(title: WrittenProse) -> str:
    """A short name out of a title: `Étagère, oiled` is `etagere-oiled`; `piece` when none of it serves."""
    words = " ".join(piece for piece in title if isinstance(piece, str))
    bare = unicodedata.normalize("NFKD", html.unescape(words)).encode("ascii", "ignore").decode()
    return NOT_IN_SLUG.sub("-", bare.lower()).strip("-") or "piece"


def origin(entry: Entry) -> Origin:
    return Origin(plan=entry.text("plan"), rights=entry.text("rights"), by=entry.text("by"))


def size(entry: Entry) -> Size:
    formula = entry.formula("is")
    if (*entry.path, "is") in entry.tally.unreadable:
        entry.tally.unreadable.add(entry.path)
    return Size(formula or "", note=entry.text("note"))


def shop(entry: Entry) -> Shop:
    return Shop(
        tools=entry.texts("tools"),
        country=entry.text("country"),
        session=entry.measure("session", Kind.SESSION) or "",
        pace=entry.measure("pace", Kind.PACE),
        bench=entry.text("bench"),
        air=wood.shop_air(entry),
        sawing=sawing.sawing(entry),
    )


def stock(entry: Entry) -> Stock:
    return Stock(
        kind=entry.word("kind"),
        name=entry.text("name"),
        species=entry.text("species"),
        sawn=entry.word("sawn"),
        buy=entry.text("buy"),
        thickness=entry.formula("thickness"),
        measured=entry.formula("measured"),
        sheet=entry.sheet("sheet"),
        grain=entry.text("grain"),
        price=entry.text("price"),
        grade=entry.word("grade"),
        waste=entry.measure("waste", Kind.PERCENT),
        sold_in=entry.lengths("sold_in"),
        board_width=entry.formula("board_width"),
        moisture=entry.measure("moisture", Kind.PERCENT),
        restless=entry.word("restless"),
        allowances=entry.one("allowances", sawing.allowance, sawing_language.ALLOWANCE) or Allowance(),
        note=entry.text("note"),
    )


def part(entry: Entry) -> Part:
    return Part(
        name=entry.text("name"),
        stock=entry.name("stock"),
        thickness=entry.formula("thickness"),
        width=entry.formula("width"),
        length=entry.formula("length"),
        count=entry.count("count"),
        mark=entry.text("mark"),
        glued_up=entry.text("glued_up"),
        resaw=entry.count("resaw"),
        rough_with=entry.name("rough_with"),
        purpose=entry.text("for"),
        shows=entry.text("face"),
        load=entry.one("load", wood.load, language.LOAD),
        cuts=entry.list_of("cuts", cut, language.CUT),
        cut_when=entry.one("cut_when", fitting, language.FITTING),
        leave=entry.one("leave", left_on, language.LEAVE),
        note=entry.text("note"),
    )


def fitting(entry: Entry) -> Fitting:
    return Fitting(measured=entry.names("measured"), after=entry.text("after"))


def left_on(entry: Entry) -> Leave:
    if not any(key in entry for key in ("is", "width", "length")):
        entry.lacks("is", entry.table.by_name["is"].meaning)
    return Leave(
        both=entry.text("is", Kind.LEAVE),
        width=entry.formula("width"),
        length=entry.formula("length"),
        until=entry.text("until"),
    )


def assembly(entry: Entry) -> Assembly:
    return Assembly(
        name=entry.text("name"),
        place=entry.list_of("place", place, language.PLACE),
        cut_when=entry.one("cut_when", fitting, language.FITTING),
        leave=entry.one("leave", left_on, language.LEAVE),
        note=entry.text("note"),
    )


def place(entry: Entry) -> Placing:
    kind: Literal["part", "assembly"] = "assembly" if "assembly" in entry and "part" not in entry else "part"
    if ("part" in entry) == ("assembly" in entry):
        _one_of_two(entry)
    else:
        _fits(entry, "along", kind)
        _fits(entry, "face", kind)
    return Placing(
        kind=kind,
        of=entry.name(kind),
        mark=entry.text("mark"),
        at=_corner(entry),
        along=entry.word("along"),
        face=entry.word("face"),
        mirror=entry.word("mirror"),
        count=entry.count("count"),
        touches=entry.names("touches"),
        turned=entry.one("turned", turned, language.TURNED),
    )


def turned(entry: Entry) -> Turned:
    return Turned(
        clockwise=entry.formula("clockwise") or "",
        seen_from=entry.word("seen_from"),
        about=entry.word("about", "middle"),
    )


def _one_of_two(entry: Entry) -> None:
    """A place names a part or an assembly; when one was mistyped, that has been said."""
    if (*entry.path, "part") in entry.tally.unreadable or (*entry.path, "assembly") in entry.tally.unreadable:
        return
    found = "both a part and an assembly" if "part" in entry else "neither a part nor an assembly"
    entry.tally.add(
        Place(entry.path), f"{found} stands in this place", expected="part: NAME or assembly: NAME"
    )


def _fits(entry: Entry, key: str, kind: str) -> None:
    if kind == "part" and key not in entry and (*entry.path, key) not in entry.tally.unreadable:
        entry.lacks(key, entry.table.by_name[key].meaning.removeprefix("of a part: "))
    if kind == "assembly" and key in entry:
        entry.tally.add(
            Place((*entry.path, key), on="key"),
            f"{key} is for parts; an assembly stands as it was put together",
            expected="mark, at, mirror, count, touches, turned",
        )


def _corner(entry: Entry) -> tuple[str, str, str] | None:
    if "at" not in entry:
        return None
    sizes = entry.point("at")
    if sizes is not None and len(sizes) == 3:
        return (sizes[0], sizes[1], sizes[2])
    if sizes is not None:
        entry.complain(
            "at",
            f"{counted(len(sizes), 'size')} here, and a place takes 3",
            "[to the right, to the back, up]",
        )
    return ORIGIN_POINT


def jig(entry: Entry) -> Jig:
    return Jig(
        name=entry.text("name"),
        purpose=entry.text("for"),
        made_from=entry.text("made_from"),
        note=entry.markdown("note"),
    )


def finish(entry: Entry) -> Finish:
    return Finish(
        what=entry.text("what"),
        coats=entry.count("coats"),
        wait=entry.text("wait"),
        on=entry.names("on"),
        faces=entry.text("faces"),
        bare=entry.text("bare"),
        note=entry.text("note"),
    )


def change(entry: Entry) -> Change:
    kinds = [kind for kind in language.CHANGE_KINDS if kind in entry]
    if len(kinds) != 1 and not any(
        (*entry.path, kind) in entry.tally.unreadable for kind in language.CHANGE_KINDS
    ):
        found = (
            f"{' and '.join(kinds)} stand in one change"
            if kinds
            else "this change doesn't say what was changed"
        )
        entry.tally.add(
            Place(entry.path), found, expected="one of size, joint, stock, part, assembly, with a name"
        )
    kind = kinds[0] if kinds else ""
    return Change(
        kind=kind, of=entry.name(kind) if kind else "", was=entry.text("was"), why=entry.text("why")
    )


def hand_over(entry: Entry) -> HandOver:
    return HandOver(mail=entry.spelt("mail", Kind.MAIL), board=entry.spelt("board", Kind.WEB))


def look(entry: Entry) -> Look:
    return Look(
        theme=entry.text("theme"),
        language=entry.text("language") or "en",
        accent=entry.text("accent"),
        paper=entry.text("paper"),
    )


def stage(entry: Entry) -> Stage:
    return Stage(title=entry.prose("title"), about=entry.markdown("about"))
