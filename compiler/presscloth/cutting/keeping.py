"""Layouts that were found before, kept in files by everything that they depend on.

A file is named by a digest of the whole question: parts, cloth, step, way, budget, and the source of
the engine itself, so that a kept answer is the one that the engine would give. It carries a digest of
its own text; one that was damaged is worked out anew. A file is written aside and then renamed, so
that no reader meets half of one, however many write at once. Whatever a folder refuses is let be. A folder
that has grown too large is tidied (`tidying`).
"""

from __future__ import annotations

import json
import os
from collections.abc import Callable, Mapping
from functools import cache
from pathlib import Path

from presscloth.cutting.tidying import tidy, used

Rows = list[list[int]]
"""An answer as rows of whole numbers; what they mean is the caller's affair."""


def own_folder(environ: Mapping[str, str]) -> Path | None:
    """Where a user's programs keep what can be worked out again (XDG Base Directory Specification).

    `PRESSCLOTH_CACHE` names another folder; when it is empty, nothing is kept.
    """
    if "PRESSCLOTH_CACHE" in environ:
        return Path(environ["PRESSCLOTH_CACHE"]) if environ["PRESSCLOTH_CACHE"] else None
    base = environ.get("XDG_CACHE_HOME", "")
    if os.path.isabs(base):  # a relative one is to be passed over
        return Path(base) / "presscloth" / "layouts"
    home = environ.get("HOME") or environ.get("USERPROFILE")
    return Path(home) / ".cache" / "presscloth" / "layouts" if home else None


def kept(folder: Path | None, question: object, work: Callable[[], Rows | None]) -> Rows | None:
    """The answer to a question, from its file or else from `work`; None is never kept.

    `question` is told apart by its `repr`, which must show everything that the answer depends on.
    """
    if folder is None:
        return work()
    name = _digest(f"{engine()} {question!r}".encode())
    file = folder / name[:2] / name[2:]
    found = _read(file)
    if found is not None:
        used(file)
        return found
    found = work()
    if found is not None:
        _write(file, found)
        _tidy_once(folder)
    return found


@cache
def _tidy_once(folder: Path) -> None:
    """Only a process that adds to a folder looks whether it has grown too large, and once is enough."""
    tidy(folder)


@cache
def engine() -> str:
    """A digest of the source of this room: an engine that was changed gives answers of its own."""
    sources = sorted(Path(__file__).parent.glob("*.py"))
    return _digest(b"\0".join(source.read_bytes() for source in sources))


def _digest(content: bytes) -> str:
    from hashlib import sha256  # a check keeps nothing, and need not wait for it

    return sha256(content).hexdigest()


def _read(file: Path) -> Rows | None:
    """The answer in a file; None where there is none, or not a whole one."""
    try:
        digest, _, text = file.read_text(encoding="ascii").partition("\n")
    except (OSError, UnicodeDecodeError):
        return None
    if digest != _digest(text.encode()):
        return None
    rows: Rows = json.loads(text)
    return rows


def _write(file: Path, rows: Rows) -> None:
    from tempfile import NamedTemporaryFile

    text = json.dumps(rows, separators=(",", ":"))
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        with NamedTemporaryFile(
            "w", encoding="ascii", newline="", dir=file.parent, prefix=".new-", delete=False
        ) as aside:
            aside.write(f"{_digest(text.encode())}\n{text}")
        os.replace(aside.name, file)
    except OSError:
        return  # a full disk or a folder that may not be written costs time, and nothing else
