"""A site is written beside the published one and takes its place in one step.

At any moment, also when the writer is killed, the published site is the old one or the new one,
whole. Where the system cannot swap two names at once there is an instant without a site; a run that
dies in it leaves the old one beside, and the next run puts it back. One writer at a time: the lock is
the kernel's and goes with its process.
"""

from __future__ import annotations

import ctypes
import errno
import os
import shutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

MARK = ".presscloth-site"
MARK_TEXT = "This folder is written by presscloth; whatever else is put into it is lost.\n"

AT_FDCWD = -100  # Linux, fcntl.h
RENAME_EXCHANGE = 2  # Linux, linux/fs.h
NOT_HERE = {errno.ENOSYS, errno.EINVAL, errno.ENOTSUP, errno.EPERM}


class PublishRefused(Exception):
    """The site cannot be written; the words say why and what to do."""


@contextmanager
def staged(site: Path) -> Iterator[Path]:
    """An empty folder that becomes the site when the block ends well, and goes when it does not.

    Raises `PublishRefused` where another run is writing, or where `site` holds what is not ours.
    """
    site = Path(os.path.realpath(site))
    site.parent.mkdir(parents=True, exist_ok=True)
    with _alone(site):
        _clear_up(site)
        if site.exists() and not _ours(site):
            raise PublishRefused(
                f"{site.name} holds files that presscloth did not write; name an empty folder for the site"
            )
        staging = _beside(site, f"new-{os.getpid()}")
        staging.mkdir()
        try:
            yield staging
            (staging / MARK).write_text(MARK_TEXT, encoding="utf-8")
            _settle(staging)
            put_in_place(staging, site)
            _settle_folder(site.parent)
        finally:
            shutil.rmtree(staging, ignore_errors=True)


def put_in_place(new: Path, site: Path) -> None:
    """Let `new` become the site; afterwards `new` is the old one, or nothing where there was none."""
    if not site.exists():
        new.rename(site)
    elif not _exchange(new, site):
        old = _beside(site, "old")
        site.rename(old)
        new.rename(site)
        old.rename(new)


def _exchange(one: Path, other: Path) -> bool:
    """Two folders swap their names at once; False where the system cannot do that."""
    if sys.platform != "linux":
        return False
    call = getattr(ctypes.CDLL(None, use_errno=True), "renameat2", None)
    if call is None:
        return False
    if call(AT_FDCWD, os.fsencode(one), AT_FDCWD, os.fsencode(other), RENAME_EXCHANGE) == 0:
        return True
    number = ctypes.get_errno()
    if number in NOT_HERE:
        return False
    raise OSError(number, os.strerror(number), str(one), None, str(other))


def _clear_up(site: Path) -> None:
    """What a killed run left: the old site, if it died between two renames, and its staging."""
    old = _beside(site, "old")
    if old.exists() and not site.exists():
        old.rename(site)
    for left in site.parent.glob(f"{_beside(site, '*').name}"):
        if left.is_dir():
            shutil.rmtree(left)


def _ours(site: Path) -> bool:
    return (site / MARK).is_file() or not any(site.iterdir())


def _beside(site: Path, what: str) -> Path:
    return site.parent / f".staging-{site.name}-{what}"


@contextmanager
def _alone(site: Path) -> Iterator[None]:
    with open(site.parent / f".staging-{site.name}.lock", "w") as lock:
        try:
            _lock(lock.fileno())
        except OSError as error:
            raise PublishRefused(
                "another run of presscloth is writing this site; wait until it is done"
            ) from error
        yield


if sys.platform == "win32":
    import msvcrt

    def _lock(number: int) -> None:
        msvcrt.locking(number, msvcrt.LK_NBLCK, 1)
else:
    import fcntl

    def _lock(number: int) -> None:
        fcntl.flock(number, fcntl.LOCK_EX | fcntl.LOCK_NB)


def _settle(folder: Path) -> None:
    """Have everything below a folder on the disk before it is put in place."""
    for at, _, files in os.walk(folder):
        for name in files:
            with open(Path(at) / name, "rb") as file:
                os.fsync(file.fileno())
        _settle_folder(Path(at))


def _settle_folder(folder: Path) -> None:
    if sys.platform == "win32":
        return
    number = os.open(folder, os.O_RDONLY)
    try:
        os.fsync(number)
    finally:
        os.close(number)
