"""Filling templates, safely, and pointing at the line when one is at fault.

Templates may come from a project that somebody sent, so all run in Jinja's sandbox: they read what
they are given, and reach neither files nor Python. Everything is escaped unless the record says it is
safe HTML already. An unknown name is an error, never an empty space on a page at the saw.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from traceback import walk_tb
from typing import Any

from jinja2 import BaseLoader, Environment, StrictUndefined, TemplateNotFound, TemplateSyntaxError, nodes
from jinja2.compiler import CodeGenerator, Frame
from jinja2.exceptions import TemplateError
from jinja2.runtime import Context
from jinja2.sandbox import ImmutableSandboxedEnvironment
from markupsafe import Markup, escape

from benchalong.ground.marks import Mark
from benchalong.ground.problems import Unreadable
from benchalong.publishing.pointing import Pointed, on_line, unreadable
from benchalong.publishing.theme import Sources

LONGEST = 1_000_000
"""No template makes a text or list longer than this by multiplying."""


class Templates:
    """The templates of a theme, each compiled once."""

    def __init__(self, sources: Sources, given: Mapping[str, object], *, theme: str = "") -> None:
        """`given` is what every page knows, by name; `theme` the theme's name, for messages."""
        self._sources = sources
        self._theme = theme
        self._environment = _Sandbox(
            loader=_Loader(sources),
            autoescape=True,
            undefined=StrictUndefined,
            auto_reload=False,
            cache_size=-1,
            trim_blocks=True,
            lstrip_blocks=True,
            keep_trailing_newline=True,
        )
        self._environment.globals = dict(given)

    def fill(self, name: str, record: object) -> str:
        """The page. Raises Unreadable, pointing into the template, when it is at fault."""
        if name not in self._sources:
            message = f"the theme has no template {name}, and falls back to none that has"
            raise unreadable([Pointed(Mark(f"{self._theme}/templates/{name}", 1, 1), "", message)])
        try:
            return self._environment.get_template(name).render(page=record)
        except TemplateError as error:
            raise self._pointed(error) from error
        except (TypeError, ValueError, AttributeError, LookupError, ArithmeticError, RecursionError) as error:
            raise self._pointed(error) from error

    def _pointed(self, error: Exception) -> Unreadable:
        found = _where(error, {source.file: name for name, source in self._sources.items()})
        if found is None:
            raise error
        file, line = found
        text = next(source.text for source in self._sources.values() if source.file == file)
        mark, shown = on_line(file, text, line)
        return unreadable([Pointed(mark, shown, f"the template can't be filled: {_said(error)}")])


class _Quick(CodeGenerator):
    """What a template puts out is escaped by `_Sandbox.escaped` and not by the library's `escape`, which puts
    each piece into a new object. Nothing else of a template's code differs."""

    def _output_child_pre(
        self, node: nodes.Expr, frame: Frame, finalize: CodeGenerator._FinalizeInfo
    ) -> None:
        if frame.eval_ctx.volatile or not frame.eval_ctx.autoescape or finalize.src is not None:
            super()._output_child_pre(node, frame, finalize)
        else:
            self.write("environment.escaped(")


class _Sandbox(ImmutableSandboxedEnvironment):
    """Jinja's sandbox, quicker where it can be: the fields of a record are plain data by their making, so
    each is judged once a type. A large site asks for a record's field 300,000 times and puts out as many."""

    intercepted_binops = frozenset(["*", "**"])
    code_generator_class = _Quick

    def __init__(self, **settings: Any) -> None:
        super().__init__(**settings)
        self._plain: set[tuple[type, str]] = set()

    def getattr(self, obj: Any, attribute: str) -> Any:
        kind = type(obj)
        if (kind, attribute) in self._plain:
            return getattr(obj, attribute)
        if not attribute.startswith("_") and attribute in getattr(kind, "__dataclass_fields__", ()):
            self._plain.add((kind, attribute))
        return super().getattr(obj, attribute)

    @staticmethod
    def escaped(value: Any) -> str:
        """As it stands in a page: safe HTML as it is, anything else with its special characters escaped."""
        return value if type(value) is Markup else escape(value)

    def call_binop(self, context: Context, operator: str, left: Any, right: Any) -> Any:
        if operator == "**":
            raise TypeError("templates don't raise to powers")
        for many, times in ((left, right), (right, left)):
            if hasattr(many, "__len__") and isinstance(times, int) and len(many) * times > LONGEST:
                raise ValueError("the text would be too long")
        return super().call_binop(context, operator, left, right)


class _Loader(BaseLoader):
    """Only the sources given; names are looked up, never paths."""

    def __init__(self, sources: Sources) -> None:
        self._sources = sources

    def get_source(
        self,
        environment: Environment,  # noqa: ARG002
        template: str,
    ) -> tuple[str, str | None, Callable[[], bool] | None]:
        source = self._sources.get(template)
        if source is None:
            raise TemplateNotFound(template)
        return source.text, source.file, lambda: True

    def list_templates(self) -> list[str]:
        return sorted(self._sources)


def _where(error: Exception, files: Mapping[str, str]) -> tuple[str, int] | None:
    """The file and line a template error comes from; the innermost template that was being filled."""
    if isinstance(error, TemplateSyntaxError) and error.filename in files:
        return str(error.filename), error.lineno
    lines = [
        (frame.f_code.co_filename, line)
        for frame, line in walk_tb(error.__traceback__)
        if frame.f_code.co_filename in files
    ]
    return lines[-1] if lines else None


def _said(error: Exception) -> str:
    if isinstance(error, TemplateNotFound):
        return f"there is no template called {error.name}"
    return str(error).rstrip(".") or type(error).__name__
