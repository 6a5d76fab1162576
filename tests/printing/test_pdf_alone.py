"""PDFs that stand alone: nothing foreign is fetched, nothing of the machine stays in them.

The same handout gives the same bytes; a machine that cannot make PDFs is told why.
"""

import io
import logging
import os
import re
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pikepdf
import pytest
from printing.making import para, with_picture, words
from printing.samples import MUG_MAT, PUBLISHER, TALL
from printing.tagged import elements

from presscloth.handout.tree import Emphasis, Figure, Image, Link
from presscloth.printing import pdf as printing_pdf
from presscloth.printing.pdf import PrintingRefused, pango_missing, paper_html, pdf
from presscloth.printing.theme import open_theme

THEME = open_theme()
ROOT = Path(__file__).resolve().parents[2]


# -- what may be fetched -------------------------------------------------------------------------


def test_a_picture_is_printed_with_its_words(tmp_path):
    (made,) = pdf(with_picture(MUG_MAT, tmp_path), THEME, PUBLISHER, ("A4",))
    with pikepdf.open(io.BytesIO(made)) as document:
        figure, _ = (figure for figure, _ in elements(document, "/Figure"))  # the code of the page is last
        assert str(figure.Alt) == "A boxed corner, seen from inside the bag"


def test_a_picture_that_is_not_there_is_refused(tmp_path):
    lost = Figure(Image(tmp_path / "gone.png", "gone.png", "gone"))
    with pytest.raises(PrintingRefused, match=r"the picture gone\.png cannot be read"):
        pdf(replace(MUG_MAT, intro=(lost,)), THEME, PUBLISHER, ("A4",))


def test_a_picture_that_would_unpack_to_gigabytes_is_refused(tmp_path):
    with pytest.raises(PrintingRefused, match="more than 60 million points"):
        pdf(with_picture(MUG_MAT, tmp_path, 8_000, 8_000), THEME, PUBLISHER, ("A4",))


@pytest.mark.parametrize("secret", ["file:///etc/hostname", "https://tidewrack.example/x.png", "x.png"])
def test_nothing_else_is_fetched(monkeypatch, secret):
    """A theme that asks for more than its fonts: the fetcher refuses, and no file is written."""
    page = paper_html(MUG_MAT, THEME, PUBLISHER).replace(
        "</header>", f'<img alt="x" src="{secret}"></header>'
    )
    monkeypatch.setattr(printing_pdf, "paper_html", lambda *_: page)
    if secret == "x.png":
        (made,) = pdf(MUG_MAT, THEME, PUBLISHER, ("A4",))
        assert b"x.png" not in made
    else:
        with pytest.raises(PrintingRefused, match=f"may not fetch {re.escape(secret)}"):
            pdf(MUG_MAT, THEME, PUBLISHER, ("A4",))


def test_links_lead_to_no_file_and_no_page_of_the_site(tmp_path):
    links = [Link(to, words("there")) for to in ("file:///etc/passwd", "other.html", "/etc/passwd")]
    intro = (para(*links, Emphasis((Link("https://tidewrack.example/x", words("x")),), strong=False)),)
    (made,) = pdf(replace(MUG_MAT, intro=intro), THEME, PUBLISHER, ("A4",))
    with pikepdf.open(io.BytesIO(made)) as document:
        notes = [note.A for page in document.pages for note in page.get("/Annots", [])]
        assert {str(note.URI) for note in notes} == {
            "https://tidewrack.example/x",
            PUBLISHER.address,
            f"{PUBLISHER.address}/mug-mat/",
        }


def test_weasyprint_has_nothing_to_complain_of(caplog):
    with caplog.at_level(logging.WARNING, logger="weasyprint"):
        pdf(TALL, THEME, PUBLISHER, ("A4",))
    assert [record.getMessage() for record in caplog.records] == []


# -- the same bytes ------------------------------------------------------------------------------

MAKE = """
import sys
from pathlib import Path
sys.path[:0] = {paths!r}
from printing.making import with_picture
from printing.samples import PUBLISHER, TALL
from presscloth.printing.pdf import pdf
from presscloth.printing.theme import open_theme
made = pdf(with_picture(TALL, Path.cwd()), open_theme(), PUBLISHER, ("A4", "Letter"))
for name, content in zip(("a4", "letter"), made):
    Path(name).write_bytes(content)
"""


def test_two_folders_two_processes_the_same_bytes(tmp_path):
    program = MAKE.format(paths=[str(ROOT / "compiler"), str(ROOT / "tests")])
    for name, seed, zone in (("one", "1", "UTC"), ("two/deeper down", "2", "Pacific/Auckland")):
        folder = tmp_path / name
        folder.mkdir(parents=True)
        environment = {**os.environ, "PYTHONHASHSEED": seed, "TZ": zone}
        subprocess.run([sys.executable, "-c", program], cwd=folder, env=environment, check=True)
    for paper in ("a4", "letter"):
        one = (tmp_path / "one" / paper).read_bytes()
        assert one == (tmp_path / "two" / "deeper down" / paper).read_bytes()
        with pikepdf.open(io.BytesIO(one)) as document:
            plain = io.BytesIO()
            document.save(plain, compress_streams=False, stream_decode_level=pikepdf.StreamDecodeLevel.all)
            unpacked = plain.getvalue()
        for held in (one, unpacked):
            assert b"file:" not in held
            assert str(tmp_path).encode() not in held
            assert str(ROOT).encode() not in held
            assert b"CreationDate" not in held


# -- without Pango -------------------------------------------------------------------------------


def test_pango_is_here():
    assert pango_missing() is None


@pytest.mark.parametrize(
    ("error", "said"),
    [
        (OSError("cannot load library 'libpango-1.0-0': not found"), "text library Pango.*libpango-1.0-0"),
        (ImportError("No module named 'weasyprint'"), "package weasyprint"),
    ],
)
def test_a_missing_pango_is_said_clearly(monkeypatch, error, said):
    class Refuses:
        def find_spec(self, name, path=None, target=None):
            if name == "weasyprint":
                raise error

    for name in [name for name in sys.modules if name.split(".")[0] == "weasyprint"]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.setattr(sys, "meta_path", [Refuses(), *sys.meta_path])
    assert re.search(said, pango_missing() or "", re.DOTALL)


def test_importing_the_room_loads_nothing_heavy():
    code = (
        f"import sys; sys.path.insert(0, {str(ROOT / 'compiler')!r}); "
        "import presscloth.publish.site, presscloth.publish.publisher; "
        "print([name for name in ('weasyprint', 'pikepdf', 'jinja2', 'PIL', 'uharfbuzz', 'fontTools') "
        "if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
