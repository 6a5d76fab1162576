"""Parts of a longer project: each week once, none left out, across the recipes of a folder."""

from __future__ import annotations

from pathlib import Path

from presscloth.dev import scaffold
from presscloth.pipeline import prove
from presscloth.proof.projects import WeekMissing, WeekTwice


def part(recipes: Path, slug: str, title: str, project: str, week: int, more: str = "") -> Path:
    folder = recipes / slug
    folder.mkdir(parents=True)
    front = f"---\ntitle: {title}\npart of: {project}\nweek: {week}\n{more}---\n"
    return scaffold.write(front, folder)


def test_weeks_in_order_are_right(tmp_path):
    paths = [part(tmp_path, f"part-{week}", f"Part {week}", "Quay Table", week) for week in (1, 2, 3)]
    assert [prove(path).problems for path in paths] == [(), (), ()]


def test_a_week_twice_is_told_in_both_recipes(tmp_path):
    one = part(tmp_path, "runner", "Runner", "Quay Table", 1)
    other = part(tmp_path, "mats", "Mats", "quay table", 1)
    (here,), (there,) = prove(one).problems, prove(other).problems
    assert isinstance(here, WeekTwice) and isinstance(there, WeekTwice)
    assert here.message() == "week 1 of Quay Table is Mats already"
    assert there.message() == "week 1 of quay table is Runner already"
    assert here.span.text == "1"
    assert Path(here.labels[0].span.source.name) == other
    assert not prove(one).sound


def test_a_gap_is_a_warning_at_the_part_after_it(tmp_path):
    first = part(tmp_path, "one", "One", "Quay Table", 1)
    third = part(tmp_path, "three", "Three", "Quay Table", 3)
    assert prove(first).problems == ()
    (found,) = prove(third).problems
    assert isinstance(found, WeekMissing)
    assert found.message() == "Quay Table has a part for week 3 and none for week 2"
    assert prove(third).sound


def test_a_gap_can_be_accepted_and_only_a_gap(tmp_path):
    accepting = "accept:\n  - week missing: nobody sews at the regatta\n"
    third = part(tmp_path, "three", "Three", "Quay Table", 3, accepting)
    assert prove(third).problems == ()
    part(tmp_path, "two", "Two", "Quay Table", 2)
    assert [each.slug() for each in prove(third).problems] == ["accepted-without-need"]


def test_other_projects_do_not_matter(tmp_path):
    one = part(tmp_path, "one", "One", "Quay Table", 1)
    part(tmp_path, "other", "Other", "Loft Curtains", 1)
    assert prove(one).problems == ()


def test_a_neighbour_that_cannot_be_read_is_passed_by(tmp_path):
    one = part(tmp_path, "one", "One", "Quay Table", 1)
    (tmp_path / "broken").mkdir()
    (tmp_path / "broken" / "recipe.md").write_bytes(b"\xff\xfe\x00")
    assert prove(one).problems == ()
