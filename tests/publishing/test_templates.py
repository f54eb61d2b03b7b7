"""Templates are filled in a sandbox, and point at their own line when they are at fault."""

from __future__ import annotations

from dataclasses import dataclass

import pytest
from markupsafe import Markup

from benchalong.ground.problems import Unreadable
from benchalong.ground.report import problem_text
from benchalong.publishing.templates import Templates
from benchalong.publishing.theme import Source

SAFE = Markup("<b>safe</b>")


@dataclass(frozen=True)
class Record:
    title: str = "Mill & rip"
    note: Markup = SAFE
    many: tuple[str, ...] = ("a", "b")


def templates(**sources: str) -> Templates:
    named = {
        f"{name}.html": Source(f"look/templates/{name}.html", text, own=True)
        for name, text in sources.items()
    }
    return Templates(named, {"site": "the site"})


def filled(text: str) -> str:
    return templates(page=text).fill("page.html", Record())


def refusal(page: str, **others: str) -> str:
    with pytest.raises(Unreadable) as caught:
        templates(page=page, **others).fill("page.html", Record())
    (problem,) = caught.value.problems
    return problem_text(problem, caught.value.marks)


def test_text_is_escaped_and_safe_html_is_not() -> None:
    assert filled("{{ page.title }} {{ page.note }} {{ site }}") == "Mill &amp; rip <b>safe</b> the site"


def test_templates_include_one_another() -> None:
    made = templates(page='{% include "own-bit.html" %}', **{"own-bit": "a bit of {{ page.title }}"})
    assert made.fill("page.html", Record()) == "a bit of Mill &amp; rip"


def test_an_unknown_name_is_an_error_with_its_line() -> None:
    assert refusal("<p>\n  {{ page.titel }}\n</p>") == (
        "look/templates/page.html:2:3: the template can't be filled: 'test_templates.Record object' has no "
        "attribute 'titel'\n      {{ page.titel }}\n      ^^^^^^^^^^^^^^^^"
    ).replace("test_templates", Record.__module__)


def test_a_syntax_error_has_its_line() -> None:
    said = refusal("<p>\n{% if page.title %}\n<p>")
    assert said.startswith(
        "look/templates/page.html:3:1: the template can't be filled: Unexpected end of template"
    )


def test_an_error_in_an_included_template_points_there() -> None:
    said = refusal('{% include "own-bit.html" %}', **{"own-bit": "\n\n{{ nobody }}"})
    assert said.startswith(
        "look/templates/own-bit.html:3:1: the template can't be filled: 'nobody' is undefined"
    )


def test_a_template_that_isn_t_there_is_named() -> None:
    assert "there is no template called own-bti.html" in refusal('\n{% include "own-bti.html" %}')


@pytest.mark.parametrize(
    "text",
    [
        "{{ page.__class__ }}",
        "{{ page.__class__.__mro__[1].__subclasses__() }}",
        "{{ ''.__class__ }}",
        "{{ page.title.__init__.__globals__ }}",
        "{{ '%s' | format(page.__class__) }}",
        "{{ '{0.__class__}'.format(page) }}",
        "{{ self.__init__ }}",
        "{{ cycler.__init__.__globals__ }}",
        "{{ lipsum.__globals__ }}",
        "{{ page | attr('__class__') }}",
        '{% include "../../../etc/passwd" %}',
        '{% include "/etc/passwd" %}',
        "{% for i in range(10**9) %}x{% endfor %}",
        "{% for i in range(1000000) %}x{% endfor %}",
        "{{ 'x' * 100000000 }}",
        "{{ 100000000 * 'x' }}",
        "{{ 9 ** 9 ** 9 }}",
        "{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}",
        "{{ 1 / 0 }}",
        "{{ page.many.append('c') }}",
    ],
)
def test_nothing_is_reached_and_nothing_runs_away(text: str) -> None:
    assert "look/templates/page.html:1:" in refusal(text)
