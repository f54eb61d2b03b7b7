"""Markdown becomes safe HTML with holes; whatever is typed, nothing in it can run in a reader's browser."""

from __future__ import annotations

import time
from html import escape

import pytest
from bs4 import BeautifulSoup
from hypothesis import given, settings
from hypothesis import strategies as st

from benchalong.ground.prose import Hole, WrittenProse
from benchalong.reading.holes import one_line
from benchalong.reading.markdown import MOST_COMPLAINTS, TAGS, markdown
from benchalong.reading.tally import Source, Tally
from benchalong.reading.text import MOST_NOTE_BYTES

PATH = ("note.md", "note")


def render(text: str, *, one: bool = False) -> tuple[str, list[str]]:
    """The HTML with each hole as `{kind: text}`, and what was complained about. What stands in a hole is no
    HTML: the plan reads it as a formula or a name, and refuses what is neither."""
    tally = Tally(pictures=frozenset({"pictures/rail.png", "pictures/glue up.jpg"}))
    tally.sources["note.md"] = Source(text)
    prose: WrittenProse = one_line(text, PATH, tally) if one else markdown(text, PATH, tally)[0]
    shown = [f"{{{p.kind}: {escape(p.text, quote=False)}}}" if isinstance(p, Hole) else p for p in prose]
    return "".join(shown).strip(), [problem.message for problem in tally.problems]


BECOMES = {
    "# Saw\n\n## Set up\n\n##### Deep": "<h3>Saw</h3>\n<h4>Set up</h4>\n<h6>Deep</h6>",
    "Cut *to* **(=stile)**.": "<p>Cut <em>to</em> <strong>{size: stile}</strong>.</p>",
    "(=a*b*c) (=max(a, (b)))": "<p>{size: a*b*c} {size: max(a, (b))}</p>",
    "(=part door_rail) (=part)": "<p>{part: door_rail} {size: part}</p>",
    "[the (=part rail), (=stile)](step:mill)":
        '<p><a href="{link: step:mill}">the {name: rail}, {size: stile}</a></p>',
    "[x](part:rail) (=part rail)": '<p><a href="{link: part:rail}">x</a> {part: rail}</p>',
    "`(=stile)` and \\(=stile)": "<p><code>(=stile)</code> and (=stile)</p>",
    "    (=stile)": "<pre><code>(=stile)\n</code></pre>",
    "```js\n(=stile) <b>\n```": "<pre><code>(=stile) &lt;b&gt;\n</code></pre>",
    "[out](https://example.org/?a=1&b=(=x) \"t\")":
        '<p><a href="https://example.org/?a=1&amp;b=(=x)" title="t">out</a></p>',
    "<mailto:a@example.org>": '<p><a href="mailto:a@example.org">mailto:a@example.org</a></p>',
    "![A *rail*](pictures/rail.png)": '<p><img src="{picture: pictures/rail.png}" alt="A rail"></p>',
    "![Glue](<../pictures/glue up.jpg>)": '<p><img src="{picture: pictures/glue up.jpg}" alt="Glue"></p>',
    "1. a\n2. b": "<ol><li>a</li>\n<li>b</li>\n</ol>",
    "7) a": '<ol start="7"><li>a</li>\n</ol>',
    "a\\\nb\n\n---": "<p>a<br>\nb</p>\n<hr>",
    "3 < 4 & \"5\"": '<p>3 &lt; 4 &amp; "5"</p>',
    "| a | b |\n|--:|:-:|\n| 1 | (=x) |": (
        '<table><thead><tr><th class="right">a</th>\n<th class="centre">b</th>\n</tr>\n</thead>\n'
        '<tbody><tr><td class="right">1</td>\n<td class="centre">{size: x}</td>\n</tr>\n</tbody>\n</table>'
    ),
}  # fmt: skip


@pytest.mark.parametrize(("text", "html"), BECOMES.items())
def test_markdown_becomes(text: str, html: str) -> None:
    assert render(text) == (html, [])


REFUSED = {
    "<b>x</b>": "HTML is not read in notes",
    "<div>\nx\n</div>": "HTML is not read in notes",
    "<!-- x -->": "HTML is not read in notes",
    "a <br/> b": "HTML is not read in notes",
    "[x](javascript:alert(1))": "a link may not lead to javascript:alert(1)",
    "[x](JaVaScRiPt:alert(1))": "a link may not lead to JaVaScRiPt:alert(1)",
    "[x](&#106;avascript:alert(1))": "a link may not lead to javascript:alert(1)",
    "<javascript:alert(1)>": "a link may not lead to javascript:alert(1)",
    "[x]\n\n[x]: data:text/html,hi": "a link may not lead to data:text/html,hi",
    "[x](//example.org)": "a link may not lead to //example.org",
    "[x](#top)": "a link may not lead to #top",
    "[x](../steps/02-cut.md)": "a link may not lead to ../steps/02-cut.md",
    "[x](file:///etc/passwd)": "a link may not lead to file:///etc/passwd",
    "[x](step:)": "a link may not lead to step:",
    "[x]()": "a link may not lead to ",
    "![x](https://example.org/a.png)": "there is no picture https://example.org/a.png in the project",
    "![x](pictures/../../a.png)": "there is no picture pictures/../../a.png in the project",
    "![](pictures/rail.png)": "this picture has no words for those who can't see it",
    "![(=stile)](pictures/rail.png)": "a live size can't stand in what a picture shows",
    "wide (=stile": "a live size opens here and never closes",
    "wide (= )": "nothing stands in (=)",
}


@pytest.mark.parametrize(("text", "message"), REFUSED.items())
def test_markdown_is_refused(text: str, message: str) -> None:
    assert render(text)[1] == [message]


@pytest.mark.parametrize(
    "piece", ["(=", "[(=", "![(=a](", "(=a)))", "[x](step:a) ", "[x](javascript:a) ", "<b>", "> ", "`"]
)
def test_a_note_that_repeats_one_thing_without_end_is_read_in_time(piece: str) -> None:
    started = time.process_time()
    _, said = render((piece * MOST_NOTE_BYTES)[:MOST_NOTE_BYTES])
    assert time.process_time() - started < 10
    assert len(said) <= MOST_COMPLAINTS


ONE_LINE = {
    "Cut <to> (=stile) & *stop*": ("Cut &lt;to&gt; {size: stile} &amp; <em>stop</em>", []),
    "**Never** a `<b>` here": ("<strong>Never</strong> a <code>&lt;b&gt;</code> here", []),
    "2*stile*3, 4 * 5 * 6, *open, _no_ [no](step:a)": (
        "2*stile*3, 4 * 5 * 6, *open, _no_ [no](step:a)",
        [],
    ),
    "*(=stile)* wide": ("*{size: stile}* wide", []),
    "(=part rail)s, \\(=x)": ("{part: rail}s, (=x)", []),
    "(=max(a, b)) (=c)": ("{size: max(a, b)} {size: c}", []),
    '"quoted"': ("&quot;quoted&quot;", []),
    "(=max(a": ("(=max(a", ["a live size opens here and never closes"]),
    "": ("", []),
}


@pytest.mark.parametrize(("text", "becomes"), ONE_LINE.items())
def test_a_one_line_text_becomes(text: str, becomes: tuple[str, list[str]]) -> None:
    assert render(text, one=True) == becomes


ATTACKS = st.sampled_from(
    [
        "<script>", "</script>", "<img src=x onerror=alert(1)>", "javascript:", "data:text/html,",
        "](", "[", "![", ")", "<", ">",
        "&#x6A;", "\"", "'", "`", "(=", "(=part x)", "\n\n", "\n", "    ", "> ", "- ", "|",
        "|---|\n", "#", "onload=", "style=",
        "<svg/onload=1>", "\\", "&lt;", "vbscript:", "\u202e", "\U0001f600", "e\u0301",
        "http://[", "%", "%2", "*", "_", "a",
    ]
)  # fmt: skip


@given(st.lists(st.one_of(ATTACKS, st.text(max_size=5)), max_size=30).map("".join))
@settings(max_examples=300, deadline=None)
def test_nothing_that_runs_comes_out(text: str) -> None:
    html, _ = render("".join(letter for letter in text if letter not in "\ufdd0\ufdd1"))
    soup = BeautifulSoup(html, "html.parser")
    for tag in soup.find_all(True):
        assert tag.name in TAGS
        assert set(tag.attrs) <= {"href", "title", "src", "alt", "start", "class"}
        assert str(tag.get("href", "")).startswith(
            ("http://", "https://", "mailto:", "HTTP", "{link: ")
        ) or not tag.get("href")
        assert str(tag.get("src", "{picture")).startswith("{picture")
