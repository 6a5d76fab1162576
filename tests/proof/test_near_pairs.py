"""Pairs that agree and are neither round nor near; pairs as they are published are let alone."""

from __future__ import annotations

from pathlib import Path

import pytest

from presscloth.dev import scaffold
from presscloth.pipeline import prove


def questioned(pair: str, folder: Path, more: str = "") -> list[str]:
    text = f"## Measures\n- drop = {pair}{more}\n"
    found = prove(scaffold.write(text, folder)).problems
    return [problem.message() for problem in found if problem.slug() == "pair-could-be-nearer"]


@pytest.mark.parametrize(
    "pair",
    [
        "15 cm (6 in)",
        "40 cm (16 in)",
        "50 cm (20 in)",
        "41 cm (16 in)",
        "85 cm (33 1/2 in)",
        "48.5 cm (19 in)",
        "33 1/2 in (85 cm)",
        # Published zip lengths and half-centimetre steps: each the nearest of its own.
        "61 cm (24 in)",
        "76 cm (30 in)",
        "30.5 cm (12 in)",
        "38 cm (15 in)",
    ],
)
def test_round_or_near(pair: str, tmp_path: Path) -> None:
    assert questioned(pair, tmp_path) == []


def test_neither(tmp_path: Path) -> None:
    # 33 1/2 in is 85.09 cm, 9 mm from 86; 86 cm is 33.86 in, a third of an inch from 33 1/2.
    assert questioned("86 cm (33 1/2 in)", tmp_path) == [
        "`86 cm (33 1/2 in)` is neither round nor near: 86 cm comes to 34 in, and 33 1/2 in to 85 cm"
    ]
    assert len(questioned("33 1/2 in (86 cm)", tmp_path)) == 1


def test_what_is_about_may_lie_apart(tmp_path: Path) -> None:
    assert questioned("86 cm (33 1/2 in)", tmp_path, ", about") == []


def steps(step: str, folder: Path) -> list[str]:
    text = f"## Measures\n- drop = round up(21 cm (8 1/4 in) to {step})\n"
    found = prove(scaffold.write(text, folder)).problems
    return [problem.message() for problem in found if problem.slug() == "steps-far-apart"]


@pytest.mark.parametrize("step", ["5 mm (1/4 in)", "1/4 in (5 mm)", "1 cm (1/2 in)", "5 cm (2 in)"])
def test_steps_need_not_agree(step: str, tmp_path: Path) -> None:
    assert steps(step, tmp_path) == []


def test_steps_of_another_unit_or_digit(tmp_path: Path) -> None:
    # 5 cm is 7.87 times 1/4 in; 1/2 in is 2.54 times 5 mm.
    assert steps("5 cm (1/4 in)", tmp_path) == [
        "one half of the step `5 cm (1/4 in)` is 7.9 times as large as the other"
    ]
    assert len(steps("1/2 in (5 mm)", tmp_path)) == 1
