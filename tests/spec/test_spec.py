"""The language by example: every example in the chapters of this folder does what it claims."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from spec import invariants
from spec.notation import Claimed, Example, claimed, examples, fits
from spec.running import (
    as_printed,
    as_read,
    exactly,
    handouts,
    places,
    reported,
    run,
    said,
    spelt,
    translated,
)

from presscloth.edition import statements
from presscloth.pipeline import Proved
from presscloth.problems.as_json import as_json
from presscloth.problems.report import Reported
from presscloth.proof.size import WorkedSize

FOLDER = Path(__file__).parent
CHAPTERS = sorted(FOLDER.glob("*.md"))
EXAMPLES = [example for chapter in CHAPTERS for example in examples(chapter)]

_EXACT = re.compile(r"-?\d+(/\d+)?( \S+)?, -?\d+(/\d+)?( \S+)?|-?\d+(/\d+)?")


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda example: example.name)
def test_example(example: Example, tmp_path: Path):
    proved = run(example, tmp_path)
    hold_says(example, proved)
    hold_gives(example, proved)
    hold_prints(example, proved)
    hold_reads(example, proved)
    hold_translated(example, proved)
    invariants.hold(proved)
    assert as_json(reported(run(example, tmp_path))) == as_json(reported(proved))


def shown(one: Reported, example: Example) -> Claimed:
    """A reported problem as an example would claim it."""
    problem = one.problem
    line, column = places(example).of(problem.span)
    messages = " / ".join(said(variant) for variant in one.all_variants)
    return Claimed(
        line, column, one.severity.value, problem.title(), spelt(problem.span), messages, problem.hint()
    )


def written(problem: Claimed) -> str:
    place = f": `{problem.spelt}`" if problem.spelt else ""
    head = f"{problem.line}:{problem.column}: {problem.severity}: {problem.title}{place}"
    return f"{head}\n  {problem.message}\n  hint: {problem.hint}"


def is_as_claimed(claim: Claimed, found: Claimed) -> bool:
    same_place = (claim.line, claim.column, claim.severity, claim.title) == (
        found.line,
        found.column,
        found.severity,
        found.title,
    )
    texts = ((claim.spelt, found.spelt), (claim.message, found.message), (claim.hint, found.hint))
    return same_place and all(fits(wanted, there) for wanted, there in texts)


def hold_translated(example: Example, proved: Proved) -> None:
    for claim in example.claims.get("translated", ()):
        text = translated(proved)
        assert claim in text, f"`{claim}` does not stand in: {text}"


def hold_says(example: Example, proved: Proved) -> None:
    found = [shown(one, example) for one in reported(proved)]
    claims = list(claimed(example.claims.get("says", ("nothing",))))
    agree = len(claims) == len(found) and all(map(is_as_claimed, claims, found))
    assert agree, "it says:\n" + "\n".join(map(written, found))


def sized(line: str, proved: Proved) -> tuple[list[str], bool, str]:
    """The sizes of which a line speaks, whether it speaks of what is not there, and the rest of it."""
    assert proved.recipe is not None
    names = [size.name for size in proved.recipe.sizes]
    match = re.match(rf"(?:({'|'.join(map(re.escape, names))})( not)?|(not)): ", line)
    if match is None:
        return names, False, line
    return [match[1]] if match[1] else names, bool(match[2] or match[3]), line[match.end() :]


def hold_gives(example: Example, proved: Proved) -> None:
    for line in example.claims.get("gives", ()):
        names, _, claim = sized(line, proved)
        text, _, wanted = claim.rpartition(" = ")
        for size in proved.sizes:
            if size.edition.size.name in names:
                found = comes_to(text, size, wanted)
                assert found == wanted, f"{line}: it is {found}"


def comes_to(text: str, size: WorkedSize, wanted: str) -> str:
    return exactly(text, size) if _EXACT.fullmatch(wanted) else as_printed(text, size)


def hold_prints(example: Example, proved: Proved) -> None:
    if "prints" not in example.claims:
        return
    printed = handouts(proved)
    for line in example.claims["prints"]:
        names, absent, wanted = sized(line, proved)
        for name in names:
            assert (" ".join(wanted.split()) in printed[name]) is not absent, f"{line}\n{printed[name]}"


def hold_reads(example: Example, proved: Proved) -> None:
    if "reads" not in example.claims:
        return
    assert proved.recipe is not None
    parts = [part for step in proved.recipe.steps for part in step.parts]
    found = [as_read(statement) for part in parts for statement in statements(part.content)]
    assert found == list(example.claims["reads"])


@pytest.mark.parametrize("chapter", CHAPTERS, ids=lambda chapter: chapter.name)
def test_a_chapter_shows_what_works_and_what_does_not(chapter: Path):
    kinds = {example.fails for example in examples(chapter)}
    assert kinds == {True, False}


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda example: example.name)
def test_every_example_claims_something(example: Example):
    assert example.claims
