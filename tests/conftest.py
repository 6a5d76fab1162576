"""Tests keep no layouts from one run to the next; a browser serves one file of tests at a time."""

import os

import pytest
from printing.tools import opened_browser

os.environ["PRESSCLOTH_CACHE"] = ""


@pytest.fixture(scope="module")
def browser():
    """Debian's chromium; the test is skipped where there is none, and fails in CI."""
    with opened_browser() as opened:
        yield opened
