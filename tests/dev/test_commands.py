"""The commands of contributors."""

from types import SimpleNamespace

import pytest

from presscloth.dev import bench, clocks, reference
from presscloth.dev.__main__ import check, main
from presscloth.handout.tree import Booklet


def test_an_unknown_command_shows_what_there_is(capsys: pytest.CaptureFixture[str]):
    for typed in ([], ["benches"], ["check", "more"]):
        assert main(typed) == 2
        said = capsys.readouterr().err
        assert all(word in said for word in ("check", "bench cutting", "slips", "reference"))


def test_check_runs_everything_and_names_what_failed(capfd: pytest.CaptureFixture[str]):
    fine, broken = ("fine", ("calendar", "2027", "1")), ("broken", ("presscloth.not_there",))
    assert check([fine]) == 0
    assert "== fine" in capfd.readouterr().out
    assert check([broken, fine]) == 1
    said = capfd.readouterr().out
    assert "January" in said
    assert said.endswith("failed: broken\n")


def test_a_clock_counts_a_start_within_another_once(monkeypatch):
    times = iter((1.0, 1.5, 4.0, 4.25))
    monkeypatch.setattr(clocks, "process_time", lambda: next(times))
    clock = clocks.Clock()
    with clock, clock:
        pass
    assert clock.total == 0.5
    with clock:
        pass
    assert clock.total == 0.75


def test_a_clocked_function_does_its_work_and_is_given_back():
    owner, clock = SimpleNamespace(double=lambda number: 2 * number), clocks.Clock()
    was = owner.double
    with clocks.clocked(owner, "double", clock):
        assert owner.double(21) == 42
        assert clock.total > 0
    assert owner.double is was


def test_booklets_are_repeated_under_other_names_until_they_suffice(tmp_path):
    from presscloth.dev import scaffold

    booklets = bench._enough((scaffold.write("", tmp_path),))
    assert all(isinstance(each, Booklet) for each in booklets)
    assert len({each.first.slug for each in booklets}) == len(booklets) == bench.HANDOUTS


@pytest.mark.parametrize("name", sorted(reference.pages()))
def test_the_reference_is_as_it_would_be_written_now(name: str):
    file = reference.FOLDER / name
    assert file.is_file(), "run `python -m presscloth.dev reference`"
    assert file.read_text("utf-8") == reference.pages()[name], "run `python -m presscloth.dev reference`"


def test_chapters_stand_a_level_lower_and_examples_as_they_are(tmp_path):
    chapter = tmp_path / "one.md"
    example = "~~~~markdown\n## Measures\n```sew\n# x\n```\n~~~~"
    chapter.write_text(f"# Measures\n\n{example}\n\n## Units\n#no heading\n")
    assert reference.language([chapter]) == (
        f"# The recipe language\n\n{reference.WRITTEN}\n\n"
        f"## Measures\n\n{example}\n\n### Units\n#no heading\n"
    )


def test_every_problem_has_its_place_in_the_reference():
    text = reference.pages()["problems.md"]
    errors, warnings = text.split("\n## Warnings\n")
    assert "\n### pair-disagrees\n\nThe two halves of a pair are not the same measure.\n" in errors
    assert "~~~~markdown\n## Measures\n- base = 7.5 cm (2 in)\n~~~~\n" in errors
    assert "\n### carried-over-elsewhere\n" in warnings


def test_the_shares_of_a_compile_are_parts_of_the_whole_of_it(tmp_path):
    from presscloth.dev import scaffold
    from presscloth.dev.bench_compile import compiled

    folder = tmp_path / "plain-cloth"
    folder.mkdir()
    shares = compiled((scaffold.write("", folder),), tmp_path / "compiled", 2)
    assert shares.handouts == 2
    there = [file for file in (tmp_path / "compiled/site").rglob("[!.]*") if file.is_file()]
    assert shares.files == 2 * len(there)
    assert 0 < shares.collecting < shares.weasyprint < 1
    assert shares.proving > 0 and shares.wording > 0
    assert shares.proving + shares.wording < shares.besides == 1 - shares.weasyprint
