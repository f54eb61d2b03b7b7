"""YAML is read as typed; what multiplies, nests or tries to be clever is refused before it costs anything."""

from __future__ import annotations

import time
from collections.abc import Iterator
from typing import Any

import pytest
import yaml

from benchalong.reading import yamltree
from benchalong.reading.tally import Block, Tally
from benchalong.reading.yamltree import MOST_DEEP, UNREAD, Value, read_block

AS_TYPED = {
    "yes": "yes", "no": "no", "on": "on", "true": "true", "null": "null", "~": "~",
    "1:8": "1:8", "4/4": "4/4",
    "0x1f": "0x1f", "1_000": "1_000", "1e3": "1e3", "012": "012", ".5": ".5", "2026-03-02": "2026-03-02",
    "3/4 in": "3/4 in", "2' 6-1/2\"": "2' 6-1/2\"", "(=stile) wide": "(=stile) wide", "=": "=",
    "'quoted # text'": "quoted # text", '"tab\\t"': "tab\t",
}  # fmt: skip


@pytest.fixture(params=["CSafeLoader", "SafeLoader"])
def loader(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """Both parsers in turn: the one in C, and the one in Python for machines without it."""
    if not hasattr(yaml, request.param):
        pytest.skip(f"no {request.param} here")
    monkeypatch.setattr(yamltree, "LOADER", getattr(yaml, request.param))
    return iter(())


def read(text: str) -> tuple[Value, list[str]]:
    tally = Tally()
    value = read_block(Block(("file",), 1, text), tally)
    return value, [problem.message for problem in tally.problems]


@pytest.mark.usefixtures("loader")
@pytest.mark.parametrize(("typed", "text"), AS_TYPED.items())
def test_every_value_is_its_text(typed: str, text: str) -> None:
    assert read(f"key: {typed}\nlist:\n- {typed}\n") == ({"key": text, "list": [text]}, [])


@pytest.mark.usefixtures("loader")
def test_nothing_after_a_key_is_nothing() -> None:
    assert read("a:\nb: ''\nc: [x, ]\n") == ({"a": None, "b": "", "c": ["x"]}, [])


@pytest.mark.usefixtures("loader")
def test_anchors_and_merge_keys_work() -> None:
    text = "a: &a {x: 1, y: 2}\nb: *a\nc: {<<: *a, y: 3}\nd: {y: 4, <<: [{y: 5, z: 6}, *a]}\n"
    a = {"x": "1", "y": "2"}
    assert read(text) == (
        {"a": a, "b": a, "c": {"y": "3", "x": "1"}, "d": {"y": "4", "z": "6", "x": "1"}},
        [],
    )


@pytest.mark.usefixtures("loader")
def test_an_anchor_bomb_is_refused_quickly() -> None:
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x, x]"]
    lines += [f"a{n}: &a{n} [{', '.join([f'*a{n - 1}'] * 10)}]" for n in range(1, 40)]
    started = time.process_time()
    value, said = read("\n".join(lines))
    assert value is UNREAD
    assert said == ["this file holds more than 200,000 values, anchors counted each time"]
    assert time.process_time() - started < 1


@pytest.mark.parametrize(
    "text", ["[" * 100_000, "{a: " * 100_000, "- " * 100_000, "? " * 100_000, "a: [" * 100_000]
)
def test_what_is_nested_without_end_is_refused_quickly(text: str) -> None:
    started = time.process_time()
    value, said = read(text)
    assert value is UNREAD
    assert len(said) == 1
    assert time.process_time() - started < 2


def test_depth_has_a_bound() -> None:
    deepest = "[" * MOST_DEEP + "]" * MOST_DEEP
    assert read(deepest)[1] == []
    assert read(f"[{deepest}]")[1] == [f"this is nested more than {MOST_DEEP} deep"]


@pytest.mark.usefixtures("loader")
def test_a_key_twice_names_both_places() -> None:
    assert read("a: 1\nb:\n  c: 1\n  c: 2\na: 3\n")[1] == [
        "c is written twice; it stands in line 3 already",
        "a is written twice; it stands in line 1 already",
    ]


@pytest.mark.usefixtures("loader")
@pytest.mark.parametrize("tag", ["!x", "!!python/object/apply:os.system", "!!str", "!!binary", "!"])
def test_tags_are_refused(tag: str) -> None:
    value, said = read(f"a: {tag} text\nb: 1\n")
    assert said == ["a tag (what begins with !) is not read here"]
    assert value == {"a": UNREAD, "b": "1"}


@pytest.mark.usefixtures("loader")
@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("a: &a [*a]", "*a stands inside &a, so it would never end"),
        ("a: *b", "*b leads to nothing: no &b stands above"),
        ("a: 1\n---\nb: 2", "a second document begins here"),
        ("[a]: 1", "a list or table can't be a key"),
        ("{a: 1}: 1", "a list or table can't be a key"),
        ("'': 1", "a key is missing before the colon"),
        ("&a b: c\n*a : d", "an anchor can't stand for a key"),
        ("a:\n  <<: text", "<< takes in what isn't a table"),
    ],
)
def test_what_is_refused_says_why(text: str, message: str) -> None:
    assert read(text)[1] == [message]


def test_both_parsers_stop_at_the_same_trap(monkeypatch: pytest.MonkeyPatch) -> None:
    for text in TRAPS:
        said: list[Any] = []
        for name in ("CSafeLoader", "SafeLoader"):
            monkeypatch.setattr(yamltree, "LOADER", getattr(yaml, name, yaml.SafeLoader))
            said.append(read(text))
        assert said[0] == said[1]
        assert said[0][1][0] != "this line can't be read as YAML", text


TRAPS = (
    "title: Rails: top", 'a: "3/4" ply"\nb: c', "a: 'don't'\nb: c", 'a: "open\nb: c', "a: [x] y\nb: c",
    "a: {x} y\nb: c", "a:\n  - [x] y\n  - z", "a: [b, c\nd: e\nf: g", "a: {b: c d: e}", "a:\n\tb: c",
    "a:\n  b: c\n\td: e", "a: @x", "a: %x", "title Rails\nb: c", "title:Rails\nb: c", "b: c\ntitle:Rails",
    "a: b\n  c: d", "a:\n    b: c\n  d: e", "a: - b", "a: *b* c", "a: > 5 mm", "a: | x",
    "a:\n  - b\n  c: d", "a: , b", "a: ] b", ": b",
)  # fmt: skip
