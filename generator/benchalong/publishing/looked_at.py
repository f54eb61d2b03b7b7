"""Looking at what a project's own templates made, before it is published.

A template of the theme is known; one that came with a project could leave out the page's security
policy, or write a script or a remote address into a page. The page that comes out is looked at, not the
template: a template can make a tag in many ways, a page has it or has it not.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from html.parser import HTMLParser

from benchalong.ground.marks import Mark
from benchalong.publishing.pointing import Pointed, on_line
from benchalong.publishing.theme import Source

POLICY = "default-src 'self'"
DATA_TYPES = ("application/json", "application/ld+json")
LOADS = {"src", "srcset", "data", "poster", "background", "formaction", "manifest", "ping"}
LINK_SCHEMES = ("http", "https", "mailto")
_SCHEME = re.compile(r"[\x00-\x20]*([a-zA-Z][a-zA-Z0-9+.\-]*)[\x00-\x20]*:")
_REMOTE = re.compile(r"[\x00-\x20]*(?:[a-zA-Z][a-zA-Z0-9+.\-]*[\x00-\x20]*:|[/\\]{2})")
_FRAMES = ("iframe", "object", "embed", "applet", "frame", "base", "portal", "style")


@dataclass(frozen=True)
class Strict:
    """How strictly pages are looked at."""

    with_scripts: bool = False
    """The user said that the project's own scripts may run: inline ones pass then, remote ones never."""


def page_problems(page: str, path: str, template: Source, strict: Strict) -> list[Pointed]:
    """What a page made by a project's own templates must not hold."""
    reader = _Reader(strict)
    reader.feed(page)
    reader.close()
    if not reader.has_policy:
        reader.found.append(f"has lost its security policy, the meta element that says {POLICY}")
    return [_pointed(template, path, what) for what in dict.fromkeys(reader.found)]


def _pointed(template: Source, path: str, what: str) -> Pointed:
    mark, line = on_line(template.file, template.text, 1) if template.own else (Mark(template.file, 1, 1), "")
    return Pointed(mark, line, f"the page {path} made with this template {what}")


@dataclass
class _Reader(HTMLParser):
    strict: Strict
    found: list[str] = field(default_factory=list)
    has_policy: bool = False

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if tag == "meta":
            self._meta(given)
        elif tag in _FRAMES:
            self.found.append(f"holds a {tag} element")
        elif tag == "script" and "src" not in given and not self.strict.with_scripts:
            self._inline(given)
        for name, value in given.items():
            self._attribute(tag, name, value)

    def _meta(self, given: dict[str, str]) -> None:
        says = given.get("http-equiv", "").lower()
        if says == "content-security-policy" and given.get("content", "").strip().startswith(POLICY):
            self.has_policy = True
        elif says == "refresh":
            self.found.append("sends the reader to another page by itself")

    def _inline(self, given: dict[str, str]) -> None:
        if given.get("type", "").lower() not in DATA_TYPES:
            self.found.append("holds a script of its own")

    def _attribute(self, tag: str, name: str, value: str) -> None:
        if name.startswith("on") and not self.strict.with_scripts:
            self.found.append(f"holds a script in an {name} attribute")
        if name == "style":
            self.found.append("holds a style attribute; styles go into a style sheet")
        if name in LOADS and _REMOTE.match(value):
            self.found.append(f"loads {value[:80]} from outside the site")
        if name in ("href", "xlink:href", "action"):
            self._address(tag, name, value)

    def _address(self, tag: str, name: str, value: str) -> None:
        scheme = _SCHEME.match(value)
        is_link = tag == "a" and name == "href"
        if is_link and (scheme is None or scheme[1].lower() in LINK_SCHEMES):
            return
        if _REMOTE.match(value):
            self.found.append(f"leads to {value[:80]} with its {name}")
