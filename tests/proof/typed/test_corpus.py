"""Every sentence of the corpus: what is typed in it is found, and nothing else is.

The score of each half is printed: what was found of what stands there, and what was found besides.
`corpus.toml` was written before the finder, `held_out.toml` after it; the latter keeps the score that was
first measured, and its sentences that failed then stay as tests.
"""

import tomllib
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from presscloth.proof.typed import Value, find, find_counts, suggestion

HERE = Path(__file__).parent
HALVES = {path.stem: tomllib.loads(path.read_text("utf-8")) for path in sorted(HERE.glob("*.toml"))}
SENTENCES = [
    pytest.param(sentence, id=f"{half}-{number}")
    for half, data in HALVES.items()
    for number, sentence in enumerate(data["sentences"], start=1)
]


def number(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction())


def value(text: str) -> Value:
    """`2..3 cm` and `1 1/2 in`, as the corpus writes them."""
    numbers, _, unit = text.rpartition(" ")
    low, _, high = numbers.partition("..")
    return Value(unit, number(low), number(high or low))


def said(text: str, measures: list[dict[str, Any]]) -> list[tuple[Any, ...]]:
    """What the corpus says is typed: place, values, whether it is about."""
    wanted = []
    for measure in measures:
        about = all(part.startswith("about ") for part in measure["is"])
        values = tuple(
            tuple(value(one.removeprefix("about ")) for one in part.split(" = ")) for part in measure["is"]
        )
        wanted.append((measure["at"], values, about))
    return wanted


def found(text: str) -> list[tuple[Any, ...]]:
    return [(text[typed.start : typed.end], typed.measures, typed.about) for typed in find(text)]


def counted(sentence: dict[str, Any]) -> list[tuple[str, str, bool]]:
    text = sentence["text"]
    return [
        (text[one.start : one.end], f"{one.count} {one.name}", one.definite)
        for one in find_counts(text, sentence.get("names", []))
    ]


def counts_said(sentence: dict[str, Any]) -> list[tuple[str, str, bool]]:
    return [(count["at"], count["is"], count["the"]) for count in sentence.get("counts", [])]


@pytest.mark.parametrize("sentence", SENTENCES)
def test_measures(sentence: dict[str, Any]):
    assert found(sentence["text"]) == said(sentence["text"], sentence.get("measures", []))


@pytest.mark.parametrize("sentence", SENTENCES)
def test_counts(sentence: dict[str, Any]):
    assert counted(sentence) == counts_said(sentence)


@pytest.mark.parametrize("sentence", SENTENCES)
def test_suggestions(sentence: dict[str, Any]):
    wanted = [measure.get("say") for measure in sentence.get("measures", [])]
    worded = [suggestion(typed) for typed in find(sentence["text"])]
    assert [word for word, want in zip(worded, wanted, strict=True) if want] == [
        want for want in wanted if want
    ]


def score(half: str) -> Iterator[str]:
    """Hits and false alarms of one half, a line for each kind of thing found."""
    sentences = HALVES[half]["sentences"]
    kinds = {
        "measures": [(said(one["text"], one.get("measures", [])), found(one["text"])) for one in sentences],
        "counts": [(counts_said(one), counted(one)) for one in sentences],
    }
    for kind, results in kinds.items():
        wanted = sum(len(want) for want, _ in results)
        hits = sum(sum(one in have for one in want) for want, have in results)
        false = sum(sum(one not in want for one in have) for want, have in results)
        yield f"{half}: {len(sentences)} sentences, {hits} of {wanted} {kind} found, {false} false alarms"


@pytest.mark.parametrize("half", HALVES)
def test_score(half: str, capsys: pytest.CaptureFixture[str]):
    lines = list(score(half))
    with capsys.disabled():
        print("", *lines, sep="\n  ")
    for line in lines:
        hits, wanted = line.split(", ")[1].split(" of ")
        assert hits == wanted.split()[0]
        assert line.endswith(", 0 false alarms")


def test_the_halves_are_large_enough_and_marked():
    assert {half: data["held_out"] for half, data in HALVES.items()} == {"corpus": False, "held_out": True}
    assert all(len(data["sentences"]) >= 50 for data in HALVES.values())
