"""What a published site holds, and what keeps one from being written."""

from __future__ import annotations

from pathlib import Path

from presscloth.problems import Problem
from presscloth.publish.entry import ENTRY_FILE


class SiteNotWritten(Problem):
    """The site could not be written; the published one is as it was.

    Fails: another compile is at work on the same site, its folder holds something else, or a
    recipe's folder has a name that cannot be an address.

    Passes: the site's folder is a site or is not there yet, and nobody else is writing it.
    """

    why: str

    def message(self) -> str:
        return f"the site was not written: {self.why}"

    def hint(self) -> str:
        return "mend that and compile again; what was published before is still whole"


def published_slugs(folder: Path) -> tuple[str, ...]:
    """The recipes that a site holds, by their short names."""
    return tuple(sorted(entry.parent.name for entry in folder.glob(f"*/{ENTRY_FILE}")))
