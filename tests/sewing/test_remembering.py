"""What is remembered of statements changes nothing but the time that proving takes."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields, replace
from functools import partial
from pathlib import Path

import pytest

from presscloth.dev import scaffold
from presscloth.edition import Edition, make_edition
from presscloth.measure import System
from presscloth.problems import Problems
from presscloth.recipe.load import load
from presscloth.recipe.read import read
from presscloth.sewing import carrying, verbs
from presscloth.sewing.carrying import sew, sew_on_paper
from presscloth.sewing.construction import Construction
from presscloth.sewing.proving import chosen_ends, prove_sewing, unasked
from presscloth.sewing.remembering import Memory
from presscloth.sewing.verbs.verb import Carry
from presscloth.sewing.ways import ways
from presscloth.sewing.work import Made, Work

RECIPES = sorted((Path(__file__).parents[2] / "recipes").glob("*/recipe.md"))


def editions(path: Path) -> Iterator[Edition]:
    source = load(path, Problems())
    assert source is not None
    recipe = read(source, slug=path.parent.name, folder=path.parent, verbs=verbs.forms(), problems=Problems())
    for size in recipe.sizes:
        yield make_edition(recipe, size, Problems(), unasked)


def told(made: Construction) -> dict[str, object]:
    """All that a construction says, the reckoning by what it remembers."""
    said = {field.name: getattr(made, field.name) for field in fields(made)}
    said["reckoned"] = (made.reckoned.amounts, made.reckoned.counts)
    return said


@pytest.mark.parametrize("path", RECIPES, ids=lambda path: path.parent.name)
def test_a_memory_that_is_shared_tells_what_an_empty_one_tells(path: Path) -> None:
    for edition in editions(path):
        memory = Memory()
        chosen = [(edition, None)]
        for ends in chosen_ends(edition):
            other = make_edition(edition.recipe, edition.size, Problems(), unasked, ends.choices)
            chosen.append((other, ends.choices))
        for each, choices in chosen:
            for way in ways(each):
                shared, alone = sew(each, way, choices, memory), sew(each, way, choices)
                assert told(shared) == told(alone)
                for system in edition.recipe.front.systems:
                    assert told(sew_on_paper(shared, system, memory)) == told(sew_on_paper(alone, system))


MEETS_IN_METRIC_ONLY = """\
## Pieces
| Piece | From | Cut | Width         | Height              |
|-------|------|-----|---------------|---------------------|
| cloth | A    | 1   | 30 cm (12 in) | 30 cm (12 in)       |
| other | A    | 1   | 30 cm (12 in) | 30 cm (11 7/8 in)   |

## Steps
1. Join them.

   ```sew
   sheet = join cloth, other side by side
   ```

2. Optional: Hem it.

   ```sew
   hem all of sheet by 1.2 cm (1/2 in) twice
   ```

3. Press.

   ```sew
   finish sheet
   ```
"""


def test_what_is_sound_on_the_paper_of_one_system_is_not_taken_for_sound_in_both(tmp_path: Path) -> None:
    edition = next(editions(scaffold.write(MEETS_IN_METRIC_ONLY, tmp_path)))
    first, second = ways(edition)
    memory = Memory()
    sew_on_paper(sew(edition, first, None, memory), System.METRIC, memory)
    again = sew(edition, second, None, memory)
    assert [type(problem).__name__ for problem in again.problems][:1] == ["MeetsInOneSystem"]
    assert told(again) == told(sew(edition, second))


def carried_out(monkeypatch: pytest.MonkeyPatch, edition: Edition) -> int:
    """How many statements are carried out by their verbs while an edition is proved."""
    done = []

    def counting(verb: verbs.Verb) -> verbs.Verb:
        def counted(work: Work, carry: Carry) -> Made:
            done.append(verb.name)
            return carry(work)

        return replace(
            verb, ways={pattern: partial(counted, carry=carry) for pattern, carry in verb.ways.items()}
        )

    monkeypatch.setattr(carrying, "_VERBS", {verb.name: counting(verb) for verb in verbs.VERBS})
    prove_sewing(edition)
    return len(done)


def test_what_no_choice_touches_is_carried_out_once(monkeypatch: pytest.MonkeyPatch) -> None:
    """Six runs (two ways, a choice as it is and at both ends), and six on paper, do not take those of six."""
    edition = next(editions(next(path for path in RECIPES if path.parent.name == "harbour-kit-bag")))
    runs = len(ways(edition)) * (1 + len(tuple(chosen_ends(edition))))
    once = len(sew(edition, ways(edition)[0]).events)
    assert runs == 6
    assert once < carried_out(monkeypatch, edition) < runs * once


@pytest.mark.parametrize("path", RECIPES[:3], ids=lambda path: path.parent.name)
def test_a_copy_knows_what_was_known_and_keeps_what_it_learns_to_itself(path: Path, monkeypatch) -> None:
    edition = next(editions(path))
    memory = Memory()
    way = next(iter(ways(edition)))
    alone = sew(edition, way, None, memory)
    worked = []
    work_out = carrying._Sewing._work_out
    monkeypatch.setattr(
        carrying._Sewing, "_work_out", lambda *args, **named: worked.append(1) or work_out(*args, **named)
    )
    assert told(sew(edition, way, None, memory.copy())) == told(alone)
    assert not worked
    empty = Memory()
    sew(edition, way, None, empty.copy())
    before = len(worked)
    sew(edition, way, None, empty)
    assert before > 0 and len(worked) == 2 * before
