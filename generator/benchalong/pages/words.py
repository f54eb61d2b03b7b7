"""The page of words: the project's own first claim, then the words of the trade."""

from __future__ import annotations

import re
from dataclasses import dataclass

from benchalong.pages.makings import Makings
from benchalong.pages.shell import Shell
from benchalong.trade.words import WORDS

NOT_A_LETTER = re.compile(r"[^a-z0-9]+")


@dataclass(frozen=True)
class WordLine:
    id: str
    """Its anchor on the page: `word-arris`."""
    word: str
    meaning: str
    is_own: bool
    """Whether the project itself says what it means."""


@dataclass(frozen=True)
class WordsPage:
    shell: Shell
    words: tuple[WordLine, ...]
    has_own: bool


def words_page(makings: Makings) -> WordsPage:
    words = words_shown(makings)
    return WordsPage(Shell("words", "words.html", "Words"), words, any(word.is_own for word in words))


def words_shown(makings: Makings) -> tuple[WordLine, ...]:
    """Every word in alphabetical order; where the project explains a word, its own meaning holds."""
    return makings.once("words", "", lambda: _words(makings))


def _words(makings: Makings) -> tuple[WordLine, ...]:
    own = {word.lower(): (word, meaning) for word, meaning in makings.plan.words.items()}
    trade = {word: (word, meaning) for word, meaning in WORDS.items()}
    every = {**trade, **own}
    return tuple(
        WordLine(f"word-{NOT_A_LETTER.sub('-', key).strip('-')}", word, meaning, key in own)
        for key, (word, meaning) in sorted(every.items())
    )
