"""`site/publisher.yaml`, read strictly."""

import inspect

import pytest

from presscloth.handout.tree import Publisher
from presscloth.measure import System
from presscloth.problems import Problem, Problems
from presscloth.publish import publisher_problems
from presscloth.publish.publisher import NOBODY, publisher_of, read_publisher
from presscloth.publish.publisher_problems import (
    PublisherFileUnreadable,
    PublisherKeyUnknown,
    PublisherValueWrong,
    ThemeUnknown,
)
from presscloth.source import Source


def read(text: str) -> tuple[Publisher, tuple[Problem, ...]]:
    problems = Problems()
    return read_publisher(Source("site/publisher.yaml", text), problems), problems.found()


def test_a_whole_file():
    publisher, problems = read(
        "name: Tidewrack sewing room\n"
        "about: >\n  Above the old\n  lifeboat shed.\n"
        "address: https://tidewrack.example\n"
        "papers: [letter, A4]\n"
        "systems: [imperial, metric]\n"
        "theme: plain-seam\n"
    )
    assert problems == ()
    assert publisher == Publisher(
        name="Tidewrack sewing room",
        address="https://tidewrack.example",
        papers=("Letter", "A4"),
        systems=(System.IMPERIAL, System.METRIC),
        theme="plain-seam",
        about="Above the old lifeboat shed.",
    )


@pytest.mark.parametrize("text", ["", "# nothing\n"])
def test_an_empty_file_leaves_the_defaults(text):
    assert read(text) == (NOBODY, ())


def test_no_file_leaves_the_defaults(tmp_path):
    problems = Problems()
    assert publisher_of(tmp_path, problems) == NOBODY
    assert problems.found() == ()


def test_one_value_needs_no_list():
    publisher, problems = read("papers: A4\nsystems: metric\n")
    assert (publisher.papers, publisher.systems, problems) == (("A4",), (System.METRIC,), ())


def test_yaml_guesses_at_no_types():
    publisher, problems = read("name: 1:30\nabout: no\n")
    assert (publisher.name, publisher.about, problems) == ("1:30", "no", ())


@pytest.mark.parametrize(
    ("text", "kind", "place", "said", "hint"),
    [
        ("adress: x", PublisherKeyUnknown, "adress", "`adress` is not a key", "write `address`"),
        ("colour: x", PublisherKeyUnknown, "colour", "`colour` is not a key", "the keys are name, address"),
        ("theme: plain-seem", ThemeUnknown, "plain-seem", "no theme `plain-seem`", "write `plain-seam`"),
        ("theme: zzz", ThemeUnknown, "zzz", "no theme `zzz`", "the themes are "),
        ("papers: [A4, Legal]", PublisherValueWrong, "Legal", "`Legal` cannot be", "A4, Letter, or both"),
        ("papers: [A4, a4]", PublisherValueWrong, "a4", "`a4` cannot be", "A4, Letter, or both"),
        ("papers: []", PublisherValueWrong, "[]", "`[]` cannot be", "A4, Letter, or both"),
        ("systems: both", PublisherValueWrong, "both", "`both` cannot be", "metric, imperial, or both"),
        ("address: tidewrack", PublisherValueWrong, "tidewrack", "publisher's address", "https://"),
        ("name: [a, b]", PublisherValueWrong, "[a, b]", "publisher's name", "a name on one line"),
        ("name:", PublisherValueWrong, "", "publisher's name", "a name on one line"),
        ("name: a\nname: b", PublisherFileUnreadable, "name", "the key name twice", "each key once"),
        ("name: [a", PublisherFileUnreadable, "", "cannot be read", "`key: value`"),
        ("- a\n- b", PublisherFileUnreadable, "- a\n- b", "it has no keys", "`key: value`"),
        ("name: &x a\nabout: *x", PublisherFileUnreadable, "&x", "anchors, aliases", "`key: value`"),
        (
            "name: !!python/name:os.system a",
            PublisherFileUnreadable,
            "!!python/name:os.system",
            "tags",
            "key",
        ),
        ("name: {a: b}", PublisherFileUnreadable, "{a: b}", "only texts and lists", "`key: value`"),
        ("name: a\n" + "#" * 30_000, PublisherFileUnreadable, "", "longer than 20000", "`key: value`"),
    ],
)
def test_what_is_wrong_is_said_at_its_place(text, kind, place, said, hint):
    publisher, (problem,) = read(text)
    assert type(problem) is kind
    assert problem.span.text == place
    assert said in problem.message()
    assert hint in problem.hint()
    assert publisher.papers and publisher.name and publisher.theme == "plain-seam"


def test_what_is_right_beside_a_problem_still_counts():
    publisher, problems = read("adress: x\nname: Tidewrack\npapers: [Legal, Letter]\n")
    assert [type(problem) for problem in problems] == [PublisherKeyUnknown, PublisherValueWrong]
    assert (publisher.name, publisher.papers) == ("Tidewrack", ("Letter",))


@pytest.mark.parametrize("nest", ["[" * 9_000, "{a: " * 4_000, "\n" + "- " * 9_000])
def test_deep_nesting_is_refused_where_it_begins(nest):
    """Read on, a line of brackets would take the square of its length."""
    _, (problem,) = read("name: " + nest)
    assert isinstance(problem, PublisherFileUnreadable)
    assert "only texts and lists of texts" in problem.why
    assert problem.span.start < 30


KINDS = [kind for _, kind in inspect.getmembers(publisher_problems, inspect.isclass) if kind is not Problem]
KINDS = [kind for kind in KINDS if issubclass(kind, Problem)]


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.__name__)
def test_the_examples_of_each_problem_hold(kind):
    page = inspect.getdoc(kind)
    fails, passes = (part.split("\n\n")[1] for part in page.split("Fails:")[1].split("Passes:"))
    for example in (fails, passes):
        assert inspect.cleandoc(example).startswith("# site/publisher.yaml\n")
    assert kind in {type(problem) for problem in read(inspect.cleandoc(fails))[1]}
    assert read(inspect.cleandoc(passes))[1] == ()
