"""Read a chapter of the reference: its examples, and what each of them claims.

An example is a fenced block `recipe` (a fragment that the scaffold completes) or `file` (a whole file).
What follows it, up to the next example, says what becomes of it:

`gives`   what is worked out: `front width = 19 cm (7 1/2 in)`, or exactly, `front width = 190 mm, 15/2 in`
`prints`  what stands on the handout
`reads`   how statements are read: `hem: edges = bottom of cloth; first = 1 cm (3/8 in)`
`says`    the problems, all of them, as the compiler shows them

A block `translation` is the file `recipe.de.md` beside the recipe; `translated` is what its handout prints.

A line of `gives` or `prints` may begin with a size and a colon (`Large: …`), one of `prints` also with
`not`, for what must not stand there (`Small not: …`). An example without `says` has no problems.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

_FENCE = re.compile(r"^(`{3,}|~{3,})(\w+)\n(.*?)^\1[ \t]*$", re.MULTILINE | re.DOTALL)

EXAMPLES = ("recipe", "file")
CLAIMS = ("gives", "prints", "reads", "translated", "says")
TRANSLATION = "translation"
NOTHING = "nothing"


@dataclass(frozen=True)
class Example:
    """One example with its claims: the lines of each kind. `line` is where it begins in the chapter."""

    chapter: str
    line: int
    text: str
    whole: bool
    translation: str = ""
    claims: Mapping[str, tuple[str, ...]] = field(default_factory=dict)

    @property
    def name(self) -> str:
        return f"{self.chapter}:{self.line}"

    @property
    def fails(self) -> bool:
        return "says" in self.claims and self.claims["says"] != (NOTHING,)


@dataclass(frozen=True)
class Claimed:
    """A problem that an example claims: its place in the example, its name, and what it says."""

    line: int
    column: int
    severity: str
    title: str
    spelt: str
    message: str
    hint: str


def examples(chapter: Path) -> Iterator[Example]:
    text = chapter.read_text("utf-8")
    current: Example | None = None
    for match in _FENCE.finditer(text):
        _, kind, content = match.groups()
        line = text.count("\n", 0, match.start()) + 1
        if kind in EXAMPLES:
            if current is not None:
                yield current
            current = Example(chapter.name, line, content, whole=kind == "file")
        elif kind == TRANSLATION:
            assert current is not None, f"{chapter.name}:{line} translates no example"
            current = replace(current, translation=content)
        elif kind in CLAIMS:
            assert current is not None, f"{chapter.name}:{line} claims something of no example"
            assert kind not in current.claims, f"{chapter.name}:{line} claims `{kind}` a second time"
            claimed = tuple(content.rstrip("\n").split("\n"))
            current = replace(current, claims={**current.claims, kind: claimed})
        else:
            raise AssertionError(f"{chapter.name}:{line} has a block `{kind}` that means nothing")
    if current is not None:
        yield current


_HEAD = re.compile(r"(\d+):(\d+): (error|warning): ([^:]+?)(?:: `(.*)`)?")


def claimed(lines: tuple[str, ...]) -> Iterator[Claimed]:
    """The problems of a `says`: a head, the message, and the hint, each on a line of its own."""
    if lines == (NOTHING,):
        return
    assert len(lines) % 3 == 0, "each problem takes three lines: its place, its message, its hint"
    for head, message, hint in zip(lines[::3], lines[1::3], lines[2::3], strict=True):
        match = _HEAD.fullmatch(head)
        assert match is not None, f"`{head}` is not `line:column: error: name: `what stands there``"
        assert hint.startswith("  hint: "), f"`{hint}` is no hint"
        line, column, severity, title, spelt = match.groups()
        yield Claimed(
            int(line),
            int(column),
            severity,
            title,
            spelt or "",
            message.strip(),
            hint.removeprefix("  hint: "),
        )


def fits(claim: str, said: str) -> bool:
    """Whether what is said is what is claimed; `…` in a claim stands for anything."""
    return re.fullmatch(".*".join(re.escape(part) for part in claim.split("…")), said) is not None
