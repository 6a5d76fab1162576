"""Every kind of problem has a page, and the examples on it do what they say."""

from __future__ import annotations

import pkgutil
from collections import Counter
from importlib import import_module
from pathlib import Path

import pytest

import presscloth
from presscloth.dev import scaffold
from presscloth.every_problem import every, meant, named
from presscloth.pipeline import prove
from presscloth.problems import Problem, Problems, Severity, subclasses
from presscloth.problems.pages import PUBLISHER, TRANSLATION, Example, page
from presscloth.problems.report import one_by_one, report
from presscloth.publish.publisher import read_publisher
from presscloth.source import Source
from presscloth.translation.problems import TranslationMissing

KINDS = [pytest.param(kind, id=kind.__qualname__) for kind in every()]


def found(example: Example, folder: Path) -> tuple[Problem, ...]:
    """Everything that is reported when the example is run."""
    if example.file == PUBLISHER:
        problems = Problems()
        read_publisher(Source(PUBLISHER, example.text), problems)
        return problems.found()
    alone = folder / "recipes" / "plain-cloth"  # with no other test's recipe beside it
    alone.mkdir(parents=True, exist_ok=True)
    if example.file == TRANSLATION:
        path = scaffold.write("", alone)
        path.with_name(TRANSLATION).write_text(example.text.partition("\n")[2], encoding="utf-8")
        return tuple(each for each in prove(path).problems if not isinstance(each, TranslationMissing))
    return prove(scaffold.write(example.text, alone)).problems


def said(problems: tuple[Problem, ...]) -> str:
    return "\n".join(f"{each.slug()}: {each.message()}" for each in problems)


@pytest.mark.parametrize("kind", KINDS)
def test_what_fails_reports_this_and_no_other_error(kind: type[Problem], tmp_path: Path):
    fails = page(kind).fails
    assert fails is not None, "the docstring has no `Fails:`"
    if not fails.runs:
        return
    problems = found(fails, tmp_path)
    assert kind in {type(each) for each in problems}, said(problems)
    top = [type(one.problem) for one in report(problems) if one.severity is Severity.ERROR]
    assert set(top) <= {kind}, said(problems)


@pytest.mark.parametrize("kind", KINDS)
def test_what_passes_reports_nothing(kind: type[Problem], tmp_path: Path):
    passes = page(kind).passes
    assert passes is not None, "the docstring has no `Passes:`"
    if not passes.runs:
        return
    assert said(found(passes, tmp_path)) == ""


@pytest.mark.parametrize("kind", KINDS)
def test_a_page_is_written_in_whole_sentences(kind: type[Problem]):
    of = page(kind)
    assert of.what.endswith((".", "!", "?")), of.what
    assert of.what[0].isupper() or of.what[0] == "`"
    assert (of.fails is None or of.fails.runs) == (of.passes is None or of.passes.runs)


def test_no_name_is_used_twice():
    names = Counter(kind.slug() for kind in every())
    assert {name: count for name, count in names.items() if count > 1} == {}


def test_no_problem_is_defined_outside_the_rooms_that_are_looked_through():
    for module in pkgutil.walk_packages(presscloth.__path__, "presscloth."):
        if not module.name.endswith("__main__"):
            import_module(module.name)
    ours = {kind for kind in subclasses() if kind.__module__.startswith("presscloth.")}
    assert ours == set(every())


@pytest.mark.parametrize("typed", ["pair-disagrees", "pair disagrees", "Pair Disagrees", "PairDisagrees"])
def test_a_name_is_found_however_it_is_typed(typed: str):
    kind = named(typed)
    assert kind is not None
    assert kind.slug() == "pair-disagrees"


def test_an_unknown_name_gets_the_nearest():
    assert named("pair-disagree") is None
    assert meant("pair-disagree") == "pair-disagrees"
    assert meant("disagrees") == "pair-disagrees"
    assert meant("xyzzy") is None


def test_consequences_hang_under_their_cause(tmp_path: Path):
    proof = prove(scaffold.write("## Measures\n- base = 7.5 cm (2 in)\n- strip = 2 × base\n", tmp_path))
    assert [one.problem.slug() for one in one_by_one(report(proof.problems))] == ["pair-disagrees"]
