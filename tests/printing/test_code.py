"""The QR code on paper: read again from the printed page by a reader of another make."""

from __future__ import annotations

import io
import re
import shutil
from dataclasses import replace

import pikepdf
import pytest
import zxingcpp
from PIL import Image
from printing.samples import MUG_MAT, PUBLISHER
from printing.tagged import elements
from printing.tools import run

from presscloth.printing.code import QUIET, page_code
from presscloth.printing.pdf import paper_html, pdf
from presscloth.printing.theme import open_theme

ADDRESS = "https://tidewrack.example/mug-mat/"
ADDRESSED = replace(PUBLISHER, address="https://tidewrack.example")


def test_without_an_address_there_is_no_code():
    bare = replace(PUBLISHER, address="")
    assert page_code(bare, "mug-mat") is None
    assert 'class="code"' not in paper_html(MUG_MAT, open_theme(), bare)


@pytest.mark.parametrize("address", ["https://tidewrack.example", "https://tidewrack.example/"])
def test_the_address_is_that_of_the_recipe_and_stands_in_words(address):
    code = page_code(replace(PUBLISHER, address=address), "mug-mat")
    assert code is not None and code.address == ADDRESS
    assert f"<title>QR code: {ADDRESS}</title>" in code.picture
    page = paper_html(MUG_MAT, open_theme(), replace(PUBLISHER, address=address))
    assert f'<a href="{ADDRESS}">{ADDRESS}</a></figcaption>' in page


def test_white_lies_around_it():
    """ISO/IEC 18004: four modules on each side. What is dark is drawn within them, and reaches their edge."""
    code = page_code(ADDRESSED, "mug-mat")
    (whole,) = re.findall(r'viewBox="0 0 (\d+) \1"', code.picture)
    runs = [tuple(map(int, run)) for run in re.findall(r"M(\d+) (\d+)h(\d+)v1h-\3z", code.picture)]
    assert QUIET == 4
    assert min(x for x, _, _ in runs) == min(y for _, y, _ in runs) == 4
    assert max(x + length for x, _, length in runs) == max(y + 1 for _, y, _ in runs) == int(whole) - 4
    assert (int(whole) - 8 - 17) % 4 == 0  # a version of the standard: 21, 25, 29 … modules


@pytest.mark.parametrize("theme", ["plain-seam", "large-print"])
@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.browser
def test_it_is_read_from_the_printed_page(tmp_path, theme, paper):
    (made,) = pdf(MUG_MAT, open_theme(theme), ADDRESSED, (paper,))
    file = tmp_path / "made.pdf"
    file.write_bytes(made)
    run("pdftoppm", "-r", "150", "-png", file, tmp_path / "page")
    found = []
    for page in sorted(tmp_path.glob("page*.png")):
        with Image.open(page) as picture:
            found += zxingcpp.read_barcodes(picture.convert("L"))
    assert [(each.format, each.text) for each in found] == [(zxingcpp.BarcodeFormat.QRCode, ADDRESS)]
    corners = found[0].position
    side = (corners.top_right.x - corners.top_left.x) / 150 * 25.4
    assert 20 <= side <= 24  # 29 of 37 modules of 28 mm
    words = run("pdftotext", file, "-")
    assert ADDRESS in "".join(words.split())  # it may go on in a second line
    shutil.rmtree(tmp_path)


def test_it_is_drawn_in_lines_and_says_what_it_is():
    (made,) = pdf(MUG_MAT, open_theme(), ADDRESSED, ("A4",))
    with pikepdf.open(io.BytesIO(made)) as document:
        alts = [str(each.Alt) for each, _ in elements(document, "/Figure") if "/Alt" in each]
        assert f"QR code: {ADDRESS}" in alts
        images = [
            each
            for each in document.objects
            if isinstance(each, pikepdf.Stream) and each.get("/Subtype") == "/Image"
        ]
        assert images == []
