"""The shipped site and a browser, for the tests of the whole."""

import pytest
from whole.shipped import Shipped, shipped_site


@pytest.fixture(scope="session")
def shipped(tmp_path_factory) -> Shipped:
    return shipped_site(tmp_path_factory.getbasetemp())
