"""Tests keep no layouts from one run to the next; a browser serves one file of tests at a time."""

import os

import pytest
from hypothesis import HealthCheck, settings
from printing.tools import opened_browser

os.environ["PRESSCLOTH_CACHE"] = ""

# No test is timed: a busy machine is not a fault of the code.
settings.register_profile("untimed", deadline=None, suppress_health_check=[HealthCheck.too_slow])
settings.load_profile("untimed")


@pytest.fixture(scope="module")
def browser():
    """Debian's chromium; the test is skipped where there is none, and fails in CI."""
    with opened_browser() as opened:
        yield opened
