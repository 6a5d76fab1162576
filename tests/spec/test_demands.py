"""For each demand of each verb, the chapter on verbs has an example that fails it."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest
from spec.notation import Example, examples

from presscloth.every_problem import every
from presscloth.sewing.verbs import VERBS

CHAPTERS = sorted(Path(__file__).parent.glob("[0-9]*.md"))
VERBS_CHAPTER = Path(__file__).parent / "12-verbs.md"

# What any statement demands, of the numbers of things and of its last words, is shown once for all verbs.
DEMANDS = {
    "join": "allowances-differ between-miscounted edge-not-raw edges-do-not-meet neighbouring-edges"
    " no-such-edge nothing-left nothing-to-centre nothing-to-join sides-make-no-pouch wrong-shape",
    "lap": "edges-do-not-meet lap-too-wide no-such-edge raw-edge-lapped",
    "set in": "allowances-differ edge-not-raw edges-do-not-meet no-such-edge wrong-shape",
    "gather": "allowances-differ edge-not-raw fullness-unusual no-such-edge wrong-shape",
    "fold": "edge-not-raw fold-differs fold-unclear opening-uneven seam-not-in-the-middle wrong-shape",
    "box": "boxed-already corners-not-sewn nothing-left wrong-shape",
    "line": "allowances-differ edge-not-raw edges-do-not-meet gap-twice no-turning-gap wrong-shape",
    "layer": "layer-too-small nothing-to-join wrong-shape",
    "bind": "edge-not-raw no-such-edge strip-too-short wrong-shape",
    "face": "edge-not-raw no-such-edge nothing-left strip-too-short wrong-shape",
    "border": "borders-miscounted edge-not-raw edges-do-not-meet mitre-too-short wrong-shape",
    "hem": "edge-not-raw no-such-edge nothing-left",
    "tack": "edge-not-raw edges-do-not-meet no-such-edge",
    "band": "allowances-differ edge-not-raw edges-do-not-meet fullness-unusual no-such-edge wrong-shape",
    "draw": "cord-too-short no-such-edge",
    "trim": "trimmed-larger wrong-shape",
    "cut": "fewer-would-do too-few-segments wrong-shape",
    "cut bias": "edge-not-raw fewer-would-do too-few-segments wrong-shape",
    "cut continuous bias": "bias-too-wide edge-not-raw not-square wrong-shape",
    "pair": "allowances-differ does-not-come-out edge-not-raw edges-do-not-meet not-square nothing-left"
    " units-unknown wrong-shape",
    "set on point": "edge-not-raw edges-do-not-meet not-square setting-miscounted triangle-too-small"
    " wrong-shape",
    "zip": "allowances-differ edge-not-raw edges-do-not-meet no-such-edge zip-too-short",
    "bag out": "cannot-be-turned edge-not-raw edges-do-not-meet wrong-shape",
    "lay": "edge-not-raw edges-do-not-meet no-such-edge",
    "fuse": "does-not-fit",
    "attach": "does-not-fit",
    "insert": "no-such-edge zip-too-short",
    "fill": "wrong-kind",
    "stitch out": "cloth-smaller-than-field field-unusual stitching-outside-field wrong-shape",
    "finish": "raw-edge-shows thing-left-over",
}


def slugs(example: Example) -> Iterator[str]:
    """The names of the problems that an example claims."""
    for line in example.claims.get("says", ()):
        found = re.match(r"\d+:\d+: (?:error|warning): ([^:]+)", line)
        if found:
            yield found[1].replace(" ", "-")


def by_section(chapter: Path) -> Mapping[str, set[str]]:
    """The problems that are shown under each heading of a chapter."""
    text = chapter.read_text(encoding="utf-8").splitlines()
    found: dict[str, set[str]] = defaultdict(set)
    for example in examples(chapter):
        heading = next(line for line in reversed(text[: example.line - 1]) if is_heading(line))
        found[heading.removeprefix("## ")] |= set(slugs(example))
    return found


def is_heading(line: str) -> bool:
    name = line.removeprefix("## ")
    return name != line and name in (*DEMANDS, "Gaps and what is caught")


SHOWN = by_section(VERBS_CHAPTER)


@pytest.mark.parametrize("verb", VERBS, ids=lambda verb: verb.name)
def test_every_demand_of_a_verb_is_shown(verb):
    assert SHOWN[verb.name] == set(DEMANDS[verb.name].split())


def test_every_problem_of_a_verb_is_shown():
    own = {kind.slug() for kind in every() if kind.__module__.startswith("presscloth.sewing.verbs.")}
    assert own <= {slug for found in SHOWN.values() for slug in found}
