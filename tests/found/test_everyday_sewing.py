"""What was found by writing down everyday things to sew, right and with one slip; each stays mended."""

from __future__ import annotations

from pathlib import Path

from proof.proving import found, step, told
from sewing.table import Table, sew

OUTLINES = """\
## Outlines

### arch
- right 20 cm (8 in) as crown, arched by 5 cm (2 in)
- down 20 cm (8 in) as right
- left 20 cm (8 in) as foot
- back to the start as left
"""


def sew_arches(statements: str) -> Table:
    pieces = """
        arch  | A | 2 | | | outline |
        slide | E | 1 | | 30 cm (12 in) | |
        """
    return sew(pieces, statements, columns=" Shape | Notes |", rest=OUTLINES)


def test_catching_something_while_finishing_ended_the_program(tmp_path: Path):
    names = [name for name, _, _ in told(step("Done.", "finish cloth, catching top of cloth"), tmp_path)]
    assert "caught-too-long" in names


def test_a_zip_at_an_edge_that_only_an_outline_has_ended_the_program():
    table = sew_arches(
        """
        panel = zip slide between foot of arch and foot of arch, showing 1 cm (3/8 in)
        finish panel
        """
    )
    assert table.names == ["raw-edge-shows"]
    assert table.mm("right of panel") == table.mm("right of arch", 0) == 200


def test_what_an_outline_cuts_can_be_lapped_and_layered():
    lapped = sew_arches(
        """
        hem foot of arch by 1 cm (3/8 in)
        panel = lap foot of arch over foot of arch by 2 cm (3/4 in)
        finish panel
        """
    )
    assert lapped.names == ["raw-edge-shows", "piece-left-over"]
    assert lapped.mm("crown of panel") == lapped.mm("crown of arch", 0)
    layered = sew_arches("mitt = layer 2 arch\nfinish mitt")
    assert layered.names == ["raw-edge-shows", "piece-left-over"]
    assert layered.mm("foot of mitt") == 200


def test_an_outline_is_not_sewn_to_itself():
    assert sew_arches("ring = join left of arch to right of arch").names[0] == "wrong-shape"


def test_an_edge_that_was_turned_over_was_told_without_its_place(tmp_path: Path):
    pieces = (
        "## Pieces\n| Piece | From | Cut | Width | Height |\n|---|---|---|---|---|\n"
        "| front | A | 1 | 50 cm (20 in) | 30 cm (12 in) |\n"
        "| back | A | 1 | 50 cm (20 in) | 30 cm (12 in) |\n\n"
    )
    hems = "hem right of front by 1.2 cm (1/2 in) twice\nhem right of back by 1.2 cm (1/2 in) twice\n"
    fragment = pieces + step("Sew.", f"{hems}case = join front to back on left, top, bottom")
    assert told(fragment.replace("finish cloth", "finish case"), tmp_path)[0] == (
        "edge-not-raw",
        "back",
        "the right of `back` is finished and cannot be joined; face down it lies on the left of `front`",
    )


def test_the_ends_of_a_tube_cannot_be_joined_and_a_way_out_is_told():
    table = sew(
        "cloth | A | 1 | 30 cm (12 in) | 40 cm (16 in)",
        "tube = join top of cloth to bottom of cloth\npouch = join left of tube to right of tube",
    )
    assert table.names[0] == "wrong-shape"
    assert "fold A in half, join sides" in table.first.hint()


def test_a_check_of_what_was_not_sewn_for_another_slip_was_told_as_a_slip_of_its_own(tmp_path: Path):
    checks = "\n## Checks\n- width of cloth < 26 cm (10 1/4 in): it fits\n"
    (one,) = found(step("Hem.", "hem all of cloth by 1.2 cm (1/2 in) twic") + checks, tmp_path)
    assert one.problem.slug() == "statement-not-read"
    assert "check-fails" in [under.problem.slug() for under in one.under]


def test_an_outline_on_a_tape_was_laid_aside_in_silence(tmp_path: Path):
    fragment = (
        f"{OUTLINES}\n## Materials\n| Key | Material | Form | Width | Sold by |\n|---|---|---|---|---|\n"
        "| A | Canvas | fabric | 110 cm (43 in) | 10 cm (1/8 yd) |\n"
        "| B | Tape | tape | | 10 cm (1/8 yd) |\n\n"
        "## Pieces\n| Piece | From | Cut | Width | Height | Shape |\n|---|---|---|---|---|---|\n"
        "| cloth | A | 1 | 30 cm (12 in) | 30 cm (12 in) | |\n| arch | B | 1 | | | outline |\n"
    )
    assert (
        "outline-of-length",
        "outline",
        "`arch` is cut by an outline, but what it is cut from is listed as `tape`",
    ) in told(fragment, tmp_path)
