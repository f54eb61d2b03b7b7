"""`questions/ID.md`: a thread. A block of keys and Markdown, then the same again for each reply.

A line `---` always begins or ends a block here, so that a reply can be put below another without
looking at what stands above.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from benchalong.ground.marks import Mark, Path
from benchalong.ground.prose import WrittenProse
from benchalong.reading import language
from benchalong.reading.language import Table
from benchalong.reading.markdown import markdown
from benchalong.reading.shape import Entry
from benchalong.reading.tally import Block, Source, Tally
from benchalong.reading.written import Question, Reply
from benchalong.reading.yamltree import read_block

BAR = re.compile(r"^---[ \t]*(?:\n|\Z)", re.MULTILINE)


@dataclass(frozen=True)
class Post:
    """One block of a thread and the Markdown below it."""

    block: Block
    text: str
    text_line: int


def question(file: str, text: str, tally: Tally) -> Question:
    """The thread in a file; its id is the file's name."""
    tally.sources[file] = Source(text)
    name = file.rpartition("/")[2].removesuffix(".md")
    posts = _posts(file, text, tally)
    if not posts:
        return Question(id=name, file=file)
    entry = _entry(posts[0], language.QUESTION, tally)
    prose = _prose(posts[0], tally)
    replies = tuple(_reply(post, tally) for post in posts[1:])
    if entry is None:
        return Question(id=name, file=file, text=prose, replies=replies)
    return Question(
        id=name,
        file=file,
        step=entry.name("step"),
        by=entry.spelt("by", language.Kind.HANDLE),
        when=entry.date("when"),
        status=entry.word("status", "open"),
        title=entry.prose("title"),
        text=prose,
        replies=replies,
    )


def _posts(file: str, text: str, tally: Tally) -> list[Post]:
    bars = list(BAR.finditer(text))
    if not bars or text[: bars[0].start()].strip():
        return _refuse(file, Mark(file, 1, 1, 3), "this thread doesn't begin with a `---` line", tally)
    if len(bars) % 2:
        line = text.count("\n", 0, bars[-1].start()) + 1
        return _refuse(
            file, Mark(file, line, 1, 3), "this `---` line begins a block that no second one ends", tally
        )
    ends = [bar.start() for bar in bars[2::2]] + [len(text)]
    return [
        _post(file, text, index, *pair)
        for index, pair in enumerate(zip(bars[::2], bars[1::2], ends, strict=True))
    ]


def _post(file: str, text: str, index: int, opens: re.Match[str], closes: re.Match[str], end: int) -> Post:
    path: Path = (file, "replies", index - 1) if index else (file,)
    block = Block(path, text.count("\n", 0, opens.end()) + 1, text[opens.end() : closes.start()])
    return Post(block, text[closes.end() : end], text.count("\n", 0, closes.end()) + 1)


def _refuse(file: str, mark: Mark, message: str, tally: Tally) -> list[Post]:
    tally.unreadable.add((file,))
    tally.add_at(
        mark, message, expected="blocks between two `---` lines each; for a line across the page use `***`"
    )
    return []


def _reply(post: Post, tally: Tally) -> Reply:
    entry = _entry(post, language.REPLY, tally)
    prose = _prose(post, tally)
    if entry is None:
        return Reply(text=prose)
    return Reply(by=entry.spelt("by", language.Kind.HANDLE), when=entry.date("when"), text=prose)


def _entry(post: Post, table: Table, tally: Tally) -> Entry | None:
    block = post.block
    tally.sources[str(block.path[0])].blocks.append(block)
    values = read_block(block, tally)
    if isinstance(values, dict):
        return Entry(table, values, block.path, tally)
    if values is None or isinstance(values, (str, list)):
        tally.unreadable.add(block.path)
        mark = Mark(str(block.path[0]), block.first_line, 1)
        expected = ", ".join(f"`{key.name}: …`" for key in table.required)
        tally.add_at(mark, "no keys stand between the two `---` lines", expected=expected)
    return None


def _prose(post: Post, tally: Tally) -> WrittenProse:
    path = (*post.block.path, "note")
    tally.sources[str(path[0])].notes.append((path, post.text_line))
    return markdown(post.text, path, tally)[0]
