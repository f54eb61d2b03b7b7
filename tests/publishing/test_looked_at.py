"""What a project's own templates must not put on a page."""

from __future__ import annotations

import pytest

from benchalong.publishing.looked_at import Strict, page_problems
from benchalong.publishing.theme import Source

TEMPLATE = Source("look/templates/step.html", "<!DOCTYPE html>\n", own=True)
HEAD = '<meta http-equiv="Content-Security-Policy" content="default-src \'self\'">'


def found(page: str, *, with_scripts: bool = False) -> list[str]:
    problems = page_problems(page, "steps/mill.html", TEMPLATE, Strict(with_scripts=with_scripts))
    return [
        problem.message.removeprefix("the page steps/mill.html made with this template ")
        for problem in problems
    ]


@pytest.mark.parametrize(
    "page",
    [
        '<p class="a">text</p>',
        '<a href="../index.html">back</a><a href="#top">top</a><a href="https://example.org/">the club</a>',
        '<a href="mailto:someone@example.org">ask</a>',
        '<script src="../assets/page.js"></script>',
        '<script type="application/json" id="page-data">{}</script>',
        '<link rel="stylesheet" href="../assets/sheet.css">',
        '<form action="../find.html"><input name="q"></form>',
        '<img src="../pictures/a.jpg" alt="">',
    ],
)
def test_let_through(page: str) -> None:
    assert found(HEAD + page) == []


@pytest.mark.parametrize(
    ("page", "said"),
    [
        ("<script>alert(1)</script>", "holds a script of its own"),
        ("<SCRIPT type=module>alert(1)</SCRIPT>", "holds a script of its own"),
        ('<p onclick="alert(1)">', "holds a script in an onclick attribute"),
        ('<svg onload="alert(1)">', "holds a script in an onload attribute"),
        ('<a href="javascript:alert(1)">', "leads to javascript:alert(1) with its href"),
        ('<a href=" java&#115;cript:alert(1)">', "leads to  javascript:alert(1) with its href"),
        ('<a href="data:text/html,x">', "leads to data:text/html,x with its href"),
        (
            '<script src="https://example.org/a.js"></script>',
            "loads https://example.org/a.js from outside the site",
        ),
        ('<img src="//example.org/a.png">', "loads //example.org/a.png from outside the site"),
        ('<link href="https://example.org/a.css">', "leads to https://example.org/a.css with its href"),
        ('<form action="https://example.org/">', "leads to https://example.org/ with its action"),
        ('<iframe src="a.html">', "holds a iframe element"),
        ('<base href="https://example.org/">', "holds a base element"),
        ('<p style="color: red">', "holds a style attribute; styles go into a style sheet"),
        ('<meta http-equiv="refresh" content="0">', "sends the reader to another page by itself"),
    ],
)
def test_refused(page: str, said: str) -> None:
    assert said in found(HEAD + page)


def test_the_policy_must_be_there() -> None:
    assert found("<p>") == ["has lost its security policy, the meta element that says default-src 'self'"]
    loose = HEAD.replace("default-src", "default-src *; x")
    assert found(loose)


def test_inline_scripts_pass_with_the_user_s_word_remote_ones_never() -> None:
    assert found(HEAD + "<script>alert(1)</script>", with_scripts=True) == []
    assert found(HEAD + '<script src="//example.org/a.js"></script>', with_scripts=True)
