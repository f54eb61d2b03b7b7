"""Styles name no remote address, in whatever way it is written."""

from __future__ import annotations

import pytest

from benchalong.publishing.styles import style_problems

REMOTE = [
    "a { background: url(https://example.org/a.png) }",
    "a { background: url( 'http://example.org/a.png' ) }",
    'a { background: url("//example.org/a.png") }',
    "a { background: URL(//example.org/a.png) }",
    '@import "https://example.org/a.css";',
    "@import url(//example.org/a.css);",
    '@import/**/"//example.org/a.css";',
    r"a { background: u\72l(//example.org/a.png) }",
    r"a { background: url(\2f\2f example.org/a.png) }",
    r'@import "\68ttps://example.org/a.css";',
    'a { background: image-set("https://example.org/a.png" 1x) }',
    "a { background: url(data:image/png;base64,AAAA) }",
    r"a { background: url(\\\\example.org/a.png) }",
    '@font-face { src: url("ftp://example.org/a.woff") }',
]
AT_HOME = [
    "a { background: url(paper.png) }",
    "a { background: url('../pictures/paper.png') }",
    '@import "own-more.css";',
    "/* see https://example.org/ */ a { color: red }",
    'a::before { content: "1:8" }',
    "a::after { content: '\\201C' }",
    "a[href^='mailto'] { color: red }",
    "/* url(//example.org) ",
]


@pytest.mark.parametrize("text", REMOTE)
def test_an_address_outside_is_found(text: str) -> None:
    assert style_problems("look/styles/sheet.css", text)


@pytest.mark.parametrize("text", AT_HOME)
def test_what_stays_at_home_is_left_alone(text: str) -> None:
    assert style_problems("look/styles/sheet.css", text) == []


def test_the_place_is_named() -> None:
    (found,) = style_problems(
        "look/styles/sheet.css", "p { color: red }\na { background: url(//example.org/a.png) }\n"
    )
    assert (found.mark.line, found.mark.column) == (2, 17)
    assert found.line == "a { background: url(//example.org/a.png) }"
    assert found.message == "a style names an address outside the site"
