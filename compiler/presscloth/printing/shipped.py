"""Where the files lie that come with the compiler: the themes and the standing pages."""

from __future__ import annotations

from pathlib import Path

PACKAGE = Path(__file__).resolve().parent.parent
CHECKOUT = PACKAGE.parent.parent


def shipped(in_wheel: str, in_checkout: str) -> Path:
    """A folder that lies inside the package once installed, and at the top level of a checkout."""
    installed = PACKAGE / in_wheel
    return installed if installed.is_dir() else CHECKOUT / in_checkout


def themes_folder() -> Path:
    return shipped("_themes", "themes")


def standing_folder() -> Path:
    return shipped("_standing", "site/standing")
