"""Words of the trade and general cautions."""

from __future__ import annotations

import pytest

from benchalong.trade.cautions import ALWAYS, BY_TOOL, cautions_for
from benchalong.trade.words import WORDS


def test_words_are_in_order_and_end_as_sentences_do() -> None:
    assert len(WORDS) >= 60
    assert list(WORDS) == sorted(WORDS)
    assert all(meaning.endswith(".") and meaning[0].isupper() for meaning in WORDS.values())
    assert all(word == word.lower() for word in WORDS)


STARTS = [
    (("jointer and thickness planer",), ["Jointer", "Planer"]),
    (("router table with a straight bit",), ["Router table"]),
    (("router with a straight bit, and a router table",), ["Router table", "Router"]),
    (("twelve bar clamps", "block plane and sharp chisels"), ["Edge tools", "Clamps"]),
    (("explainer", "tape"), []),
]


@pytest.mark.parametrize(("tools", "starts"), STARTS)
def test_each_tool_brings_its_own_caution(tools: tuple[str, ...], starts: list[str]) -> None:
    assert [said.partition(":")[0] for said in cautions_for(tools)] == starts


def test_cautions_defer_to_manual_codes_and_licence() -> None:
    said = " ".join(ALWAYS)
    assert "manual" in said
    assert "local codes" in said
    assert "licensed" in said


def test_no_tool_word_is_listed_twice() -> None:
    words = [word for words, _ in BY_TOOL for word in words]
    assert len(words) == len(set(words))
