"""Tests keep no layouts from one run to the next."""

import os

os.environ["PRESSCLOTH_CACHE"] = ""
