"""Transform the docstring of a kind of problem into its page.

The first paragraph says what is wrong; the paragraphs after it what would happen at the sewing table
and how it is put right. `Fails:` and `Passes:`, each alone on a line, begin an indented piece of a
recipe that a test runs. What no piece of a recipe can show is said in words on the same line, and not
run: `Fails: a file of more than a megabyte.` A piece of another file, the publisher's or a translation,
begins with a line that names it: `# site/publisher.yaml`, `# recipe.de.md`.
"""

from __future__ import annotations

import re
from inspect import cleandoc

from presscloth.frozen import dataclass
from presscloth.problems.base import Problem, Severity

RECIPE, PUBLISHER, TRANSLATION = "recipe.md", "site/publisher.yaml", "recipe.de.md"

_EXAMPLE = re.compile(r"^(Fails|Passes):[ \t]*(.*)\n?((?:[ \t]+\S.*\n?|[ \t]*\n)*)", re.MULTILINE)


@dataclass(frozen=True, slots=True)
class Example:
    """A piece of a recipe or of another `file`; or words that describe what no such piece can show."""

    text: str
    file: str | None

    @property
    def runs(self) -> bool:
        return self.file is not None


@dataclass(frozen=True, slots=True)
class Page:
    """What there is to know about a kind of problem. An example that is not there is None."""

    name: str
    title: str
    severity: Severity
    what: str
    why: tuple[str, ...]
    fails: Example | None
    passes: Example | None


def page(kind: type[Problem]) -> Page:
    text = cleandoc(kind.__doc__ or "")
    examples = {match[1]: _example(match[2], match[3]) for match in _EXAMPLE.finditer(text)}
    paragraphs = [" ".join(part.split()) for part in _EXAMPLE.sub("", text).split("\n\n") if part.strip()]
    return Page(
        name=kind.slug(),
        title=kind.title(),
        severity=kind.severity,
        what=paragraphs[0] if paragraphs else "",
        why=tuple(paragraphs[1:]),
        fails=examples.get("Fails"),
        passes=examples.get("Passes"),
    )


def _example(words: str, block: str) -> Example | None:
    if words.strip():
        return Example(" ".join(f"{words} {block}".split()), file=None)
    text = cleandoc("\n" + block).strip("\n")
    file = next((other for other in (PUBLISHER, TRANSLATION) if text.startswith(f"# {other}\n")), RECIPE)
    return Example(text + "\n", file) if text else None
