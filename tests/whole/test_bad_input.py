"""Whatever is given as a recipe, it gets a problem with its place, in little time and without a crash."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

import pytest
from spec import invariants

from presscloth.dev import scaffold
from presscloth.pipeline import Proved, prove
from presscloth.problems import Problem, Severity
from presscloth.problems.report import one_by_one, report

FRONT = "---\ntitle: Plain Cloth\nrelease: 2027-01\n---\n\n"
HEMMED = "   ```sew\n   hem all of cloth by 1.2 cm (1/2 in) twice\n   finish cloth\n   ```\n"
STEPS = f"## Steps\n\n1. {{}}\n\n{HEMMED}"
PIECES = "## Pieces\n| Piece | From | Cut | Width | Height |\n|---|---|---|---|---|\n"
NAMES = [f"m{chr(97 + n // 676)}{chr(97 + n // 26 % 26)}{chr(97 + n % 26)}" for n in range(1000)]
MOST_PROBLEMS = 20
"""More at one time than an author can read."""


def bytes_as_recipe(content: bytes, folder: Path) -> Proved:
    path = folder / "recipe.md"
    path.write_bytes(content)
    return prove(path)


def fragment(text: str, folder: Path) -> Proved:
    return prove(scaffold.write(text, folder))


def told(proved: Proved) -> list[Problem]:
    """What is reported, without what follows from something else."""
    invariants.hold(proved)
    return [one.problem for one in report(proved.problems)]


def only(proved: Proved) -> Problem:
    (problem,) = told(proved)
    return problem


def place(problem: Problem) -> str:
    line = problem.span.source.line_text(problem.span.where[0])
    return line[problem.span.where[1] - 1 :][: problem.span.end - problem.span.start]


# -- the file -------------------------------------------------------------------------------------


@pytest.mark.parametrize("content", [b"", b"\n \n", b"\xef\xbb\xbf", b"\xef\xbb\xbf\r\n"])
def test_an_empty_file(content: bytes, tmp_path: Path):
    problem = only(bytes_as_recipe(content, tmp_path))
    assert problem.slug() == "empty-recipe"
    assert problem.message() == "this file is empty"


def test_a_file_of_ten_megabytes_is_not_read(tmp_path: Path):
    problem = only(bytes_as_recipe(b"- strip = 5 cm\n" * 700_000, tmp_path))
    assert problem.slug() == "file-too-large"
    assert "10,500,000 bytes" in problem.message()


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (b"\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR", "bytes that no text has"),
        (FRONT.encode() + b"Press 1\xbd in under.", "line 6 is not UTF-8"),
        (FRONT.encode("utf-16"), "bytes that no text has"),
    ],
)
def test_a_file_that_is_no_text(content: bytes, words: str, tmp_path: Path):
    problem = only(bytes_as_recipe(content, tmp_path))
    assert problem.slug() == "not-text"
    assert words in problem.message()


def test_a_mark_at_the_beginning_and_the_line_ends_of_windows_do_not_matter(tmp_path: Path):
    text = scaffold.complete("")
    assert bytes_as_recipe(text.encode(), tmp_path).problems == ()
    marked = bytes_as_recipe(b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode(), tmp_path)
    assert marked.problems == ()
    assert bytes_as_recipe(text.replace("\n", "\r").encode(), tmp_path).problems == ()


def test_places_count_lines_whatever_their_ends(tmp_path: Path):
    text = scaffold.complete("## Measures\n- base = 7.5 cm (2 in)\n")
    one = only(bytes_as_recipe(text.encode(), tmp_path))
    other = only(bytes_as_recipe(b"\xef\xbb\xbf" + text.replace("\n", "\r\n").encode(), tmp_path))
    assert one.span.where == other.span.where
    assert place(one) == place(other) == "7.5 cm (2 in)"


def test_a_folder_and_a_file_that_is_not_there(tmp_path: Path):
    assert only(prove(tmp_path)).slug() == "recipe-not-found"
    assert only(prove(tmp_path / "recipe.md")).slug() == "recipe-not-found"


# -- front matter ----------------------------------------------------------------------------------


def test_an_unknown_key(tmp_path: Path):
    problem = only(fragment("---\nsummery: A cloth\n---\n", tmp_path))
    assert (problem.slug(), place(problem)) == ("front-matter-key-unknown", "summery")
    assert problem.hint() == "write `summary`"


def test_an_alias_bomb(tmp_path: Path):
    """Nine levels of nine: a billion values, were they taken as YAML takes them."""
    lines = ["a: &a [x, x, x, x, x, x, x, x, x]"]
    for one, two in zip("abcdefgh", "bcdefghi", strict=True):
        lines.append(f"{two}: &{two} [{', '.join([f'*{one}'] * 9)}]")
    problems = told(bytes_as_recipe(f"{FRONT[:-5]}{chr(10).join(lines)}\n---\n".encode(), tmp_path))
    assert {"sign-needs-quotes"} <= {problem.slug() for problem in problems}
    assert len(problems) <= 200


def test_front_matter_that_is_nested_deeply(tmp_path: Path):
    problems = told(bytes_as_recipe(b"---\nskills: " + b"[" * 10_000 + b"\n---\n", tmp_path))
    assert {problem.slug() for problem in problems} & {"front-matter-too-deep", "front-matter-not-read"}


# -- sizes and measures ------------------------------------------------------------------------------


def test_no_row_in_sizes(tmp_path: Path):
    problem = only(fragment("## Sizes\n| Size | side |\n|---|---|\n", tmp_path))
    assert problem.slug() == "no-sizes"
    assert problem.span.text.startswith("| Size | side |")


def test_a_size_without_a_value(tmp_path: Path):
    sizes = "## Sizes\n| Size | side |\n|---|---|\n| Small | 3 cm |\n| Large | |\n"
    problem = only(fragment(sizes, tmp_path))
    assert problem.message() == "the size `Large` has no value for `side`"
    assert problem.span.source.line_text(problem.span.where[0]) == "| Large | |"
    assert place(problem) == ""
    assert problem.span.where[1] == len("| Large | ") + 1


@pytest.mark.parametrize(
    ("measure", "name", "spelt"),
    [
        ("5 furlongs", "unit-unknown", "furlongs"),
        ("5 inchs", "unit-unknown", "inchs"),
        ("1/0 in", "divided-by-nothing", "1/0"),
        ("5 cm / 0", "divides-by-nothing", "0"),
        ("9" * 1000 + " cm", "number-too-long", "9" * 1000),
        ("0." + "9" * 1000 + " cm", "number-too-long", "0." + "9" * 1000),
        ("9" * 12 + " cm × " + " × ".join(["99999999999"] * 80), "expression-too-deep", None),
        ("(" * 10_000 + "5 cm" + ")" * 10_000, "expression-too-deep", None),
        ("(" * 10_000, "expression-too-deep", None),
        ("min(" * 40 + "5 cm" + ")" * 40, "expression-too-deep", None),
        ("- " * 100 + "5 cm", "expression-unfinished", "-"),
        ("5 cm; drop table", "character-unknown", ";"),
        ("5 cm (", "bracket-not-closed", "("),
        ("__import__('os')", "character-unknown", "_"),
        ("9**9**9", "sign-without-spaces", "*"),
    ],
)
def test_a_measure_that_cannot_be_worked_out(measure: str, name: str, spelt: str | None, tmp_path: Path):
    problem = only(fragment(f"## Measures\n- strip = {measure}\n", tmp_path))
    assert problem.slug() == name, problem.message()
    assert spelt is None or place(problem) == spelt
    assert len(problem.message()) < 2000


def test_a_number_that_grows_beyond_reach(tmp_path: Path):
    lines = ["- na = 999999999999"]
    names = [f"n{letter}" for letter in "abcdefghijkl"]
    lines += [f"- {two} = {one} × {one}" for one, two in pairwise(names)]
    problem = only(fragment("## Measures\n" + "\n".join(lines) + "\n", tmp_path))
    assert problem.slug() == "beyond-reckoning"


def test_a_chain_of_a_thousand_measures(tmp_path: Path):
    lines = [f"- {one} = {two}" for one, two in pairwise(NAMES)]
    problems = told(fragment("\n".join(["## Measures", *lines, f"- {NAMES[-1]} = 5 cm\n"]), tmp_path))
    assert {problem.slug() for problem in problems} <= {"beyond-reckoning", "name-unknown"}
    assert len(problems) <= MOST_PROBLEMS


def test_a_name_used_twice(tmp_path: Path):
    problem = only(fragment("## Measures\n- strip = 5 cm\n- Strips = 6 cm\n", tmp_path))
    assert (problem.slug(), place(problem)) == ("name-twice", "Strips")
    assert [label.span.text for label in problem.labels] == ["strip"]


def test_a_circle_of_a_thousand_names(tmp_path: Path):
    lines = [f"- {one} = {two}" for one, two in pairwise([*NAMES, NAMES[0]])]
    problems = told(fragment("## Measures\n" + "\n".join(lines) + "\n", tmp_path))
    assert problems
    assert all(len(problem.message()) < 20_000 for problem in problems)


# -- tables -------------------------------------------------------------------------------------------


def test_a_missing_cell(tmp_path: Path):
    problem = only(fragment(PIECES + "| cloth | A | 1 | 30 cm (12 in) |\n", tmp_path))
    assert (problem.slug(), place(problem)) == ("cell-missing", "| cloth | A | 1 | 30 cm (12 in) |")
    assert problem.message() == "this row has 4 cells, and the table has 5 columns"


def test_a_table_of_three_thousand_rows(tmp_path: Path):
    rows = [f"| strip {name}{n} | A | 1 | 5 cm (2 in) | 5 cm (2 in) |\n" for name in NAMES for n in "abc"]
    proved = fragment(PIECES + "".join(rows), tmp_path)
    invariants.hold(proved)
    assert proved.recipe is not None
    assert not proved.sound


# -- prose and pictures -----------------------------------------------------------------------------


def test_nested_brackets_and_quotes(tmp_path: Path):
    deep = fragment("## Notes\n\n" + "[" * 10_000 + "x" + "]" * 10_000 + "\n", tmp_path)
    assert {problem.slug() for problem in told(deep)} <= {"nested-too-deep"}
    quotes = only(fragment("## Notes\n\n" + "> " * 10_000 + "x\n", tmp_path))
    assert quotes.slug() == "nested-too-deep"
    lists = fragment("## Notes\n\n" + "".join(f"{'  ' * n}- x\n" for n in range(400)), tmp_path)
    assert {problem.slug() for problem in told(lists)} <= {"nested-too-deep"}


def test_fifty_thousand_braces(tmp_path: Path):
    problem = only(fragment(STEPS.format("Hem it by " + "{" * 50_000), tmp_path))
    assert problem.slug() == "brace-not-closed"
    assert problem.span.where[1] == 14


def test_a_brace_that_is_never_closed(tmp_path: Path):
    problem = only(fragment(STEPS.format("Hem it by {seam and press."), tmp_path))
    assert (problem.slug(), place(problem)) == ("brace-not-closed", "{")


@pytest.mark.parametrize(
    ("address", "why"),
    [
        ("corner.png", "is not there"),
        ("../corner.png", "does not lie in the recipe's folder"),
        ("/etc/corner.png", "does not lie in the recipe's folder"),
        ("https://pictures.example/corner.png", "does not lie in the recipe's folder"),
        ("corner%00.png", "is not there"),
        ("..%2Fcorner.png", "does not lie in the recipe's folder"),
        ("corner.svg", "is of a kind that is not printed"),
        ("inside", "is of a kind that is not printed"),
        ("a" * 5000 + ".png", "is not there"),
    ],
)
def test_a_picture_that_cannot_be_taken(address: str, why: str, tmp_path: Path):
    problem = only(fragment(STEPS.format(f"Look: ![the corner]({address})"), tmp_path))
    assert problem.slug() == "picture-missing"
    assert why in problem.message()
    assert place(problem).startswith("![the corner]")


def test_a_link_that_leads_out_of_the_folder(tmp_path: Path):
    folder = tmp_path / "recipe"
    folder.mkdir()
    outside = tmp_path / "secret.png"
    outside.write_bytes(b"")
    (folder / "corner.png").symlink_to(outside)
    (folder / "corners").symlink_to(tmp_path)
    for address in ("corner.png", "corners/secret.png"):
        problem = only(fragment(STEPS.format(f"Look: ![the corner]({address})"), folder))
        assert problem.message() == f"the picture `{address}` does not lie in the recipe's folder"


def test_what_looks_like_a_program_stays_text(tmp_path: Path):
    proved = fragment("## Notes\n\n<script>alert(1)</script> <img src=x onerror=alert(1)>\n", tmp_path)
    assert told(proved) == []


# -- statements ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "statement",
    [
        "cloth" * 2000,
        "join " + ", ".join(["cloth"] * 500) + " side by side",
        "hem all of cloth by " + "(" * 500 + "1 cm" + ")" * 500,
        "= " * 100,
        "hem " + "left, " * 200 + "right of cloth by 1 cm",
        "x" * 50_000 + " = join 2 cloth side by side",
        "join 2 cloth cloth cloth cloth cloth cloth cloth cloth side by side",
        "\\|\t–½¼¾",
    ],
)
def test_a_statement_that_cannot_be_read(statement: str, tmp_path: Path):
    steps = f"## Steps\n\n1. Hem it.\n\n   ```sew\n   {statement}\n   finish cloth\n   ```\n"
    proved = fragment(steps, tmp_path)
    problems = told(proved)
    assert any(problem.severity is Severity.ERROR for problem in problems)
    assert len(list(one_by_one(report(proved.problems)))) <= MOST_PROBLEMS


def test_a_thousand_statements_that_cannot_be_read(tmp_path: Path):
    block = "   hem it\n" * 1000
    proved = fragment(f"## Steps\n\n1. Hem it.\n\n   ```sew\n{block}   finish cloth\n   ```\n", tmp_path)
    assert {problem.slug() for problem in told(proved)} == {"statement-not-read"}
