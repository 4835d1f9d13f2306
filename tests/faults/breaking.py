"""Ways to break a folder or a file for real: as an ordinary user, by mounts where this process may mount, by limits.

Each is a context manager over the place that a person works in; leaving it mends what was broken. Where the machine
does not let a test break something for real, the test is skipped and says why.
"""

from __future__ import annotations

import errno
import os
import shutil
import signal
import subprocess
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from msgspec import Struct

NOBODY = 65534


class Desk(Struct):
    """Where a person works: the folder of her room, the room's file, and the state folder."""

    folder: Path
    file: Path
    state: Path


@contextmanager
def desk() -> Iterator[Desk]:
    """An empty desk that an ordinary user owns, whoever runs the tests."""
    with tempfile.TemporaryDirectory(prefix="desk-") as made:
        root = Path(made)
        root.chmod(0o755)
        for name in ("rooms", "state"):
            (root / name).mkdir()
        try:
            yield Desk(root / "rooms", root / "rooms" / "wall.room.json", root / "state")
        finally:
            for path in (root / "rooms", root / "state", *root.rglob("*")):
                if path.is_dir() and not path.is_symlink():
                    path.chmod(0o755)


@contextmanager
def ordinary_user(*roots: Path) -> Iterator[None]:
    """Whoever runs the tests: inside, permissions count. Root becomes nobody and owns what is under ``roots``."""
    if os.geteuid() != 0:
        yield
        return
    for root in roots:
        for path in (root, *root.rglob("*")):
            os.chown(path, NOBODY, NOBODY, follow_symlinks=False)
    try:
        # The saved id stays root's, which is the way back.
        os.setresuid(NOBODY, NOBODY, 0)
    except OSError:
        pytest.skip("root here may not become another user")
    try:
        yield
    finally:
        os.setresuid(0, 0, 0)


def _run(*command: str) -> None:
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    if done.returncode:
        pytest.skip(f"this process may not mount: {done.stderr.strip()[:80]}")


@contextmanager
def _mounted(place: Path, *how: str) -> Iterator[None]:
    if os.geteuid() != 0 or shutil.which("mount") is None:
        pytest.skip("only root may mount")
    _run("mount", *how, str(place))
    try:
        yield
    finally:
        subprocess.run(["umount", str(place)], check=True)


@contextmanager
def small_disk(place: Path) -> Iterator[Path]:
    """A disk of 64 KB at ``place``; what was there is copied on to it and back."""
    with tempfile.TemporaryDirectory() as aside:
        shutil.copytree(place, aside, dirs_exist_ok=True)
        with _mounted(place, "-t", "tmpfs", "-o", "size=64k", "none"):
            shutil.copytree(aside, place, dirs_exist_ok=True)
            yield place


@contextmanager
def filled(place: Path) -> Iterator[None]:
    """The disk at ``place`` is full to the last byte."""
    hog = place / "hog"
    with hog.open("wb", buffering=0) as stream:
        size = 4096
        while size:
            try:
                stream.write(b"x" * size)
            except OSError:
                size //= 2
    try:
        yield
    finally:
        hog.unlink()


@contextmanager
def full_disk(at: Desk) -> Iterator[None]:
    """The room's disk is full."""
    with small_disk(at.folder), filled(at.folder):
        yield


@contextmanager
def size_limit(at: Desk) -> Iterator[None]:
    """No file may grow past 1000 bytes: a write fails half way, as over a quota."""
    resource = pytest.importorskip("resource")
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    was = signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (1000, before[1]))
    try:
        yield
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
        signal.signal(signal.SIGXFSZ, was)


@contextmanager
def read_only_disk(at: Desk) -> Iterator[None]:
    """The room's disk has gone read-only, as after an error of the medium."""
    with _mounted(at.folder, "--bind", str(at.folder)):
        _run("mount", "-o", "remount,bind,ro", str(at.folder))
        yield


@contextmanager
def busy_file(at: Desk) -> Iterator[None]:
    """Nothing may take the file's place: it is a mount point, as a single file is that a container is given."""
    with _mounted(at.file, "--bind", str(at.file)):
        yield


@contextmanager
def _mode(place: Path, mode: int, at: Desk) -> Iterator[None]:
    before = place.stat().st_mode & 0o777
    with ordinary_user(at.folder, at.state):
        place.chmod(mode)
        try:
            yield
        finally:
            place.chmod(before)


@contextmanager
def read_only_folder(at: Desk) -> Iterator[None]:
    """The room's folder may not be written."""
    with _mode(at.folder, 0o555, at):
        yield


@contextmanager
def closed_folder(at: Desk) -> Iterator[None]:
    """The room's folder has lost every permission."""
    with _mode(at.folder, 0o000, at):
        yield


@contextmanager
def read_only_file(at: Desk) -> Iterator[None]:
    """The file may not be written, though its folder may."""
    with _mode(at.file, 0o444, at):
        yield


@contextmanager
def closed_file(at: Desk) -> Iterator[None]:
    """The file may be neither read nor written."""
    with _mode(at.file, 0o000, at):
        yield


@contextmanager
def vanished_folder(at: Desk) -> Iterator[None]:
    """The room's folder is gone, as a stick that was pulled out."""
    aside = at.folder.with_name("pulled-out")
    at.folder.rename(aside)
    try:
        yield
    finally:
        aside.rename(at.folder)


@contextmanager
def folder_in_its_place(at: Desk) -> Iterator[None]:
    """Where the file was there is a folder of that name."""
    aside = at.file.with_name("aside")
    at.file.rename(aside)
    at.file.mkdir()
    try:
        yield
    finally:
        at.file.rmdir()
        aside.rename(at.file)


@contextmanager
def failing_rename(at: Desk) -> Iterator[None]:
    """The last step fails: the new file cannot take the old one's place."""
    with pytest.MonkeyPatch.context() as patch:

        def fail(*_: object) -> None:
            raise OSError(errno.EIO, os.strerror(errno.EIO))

        patch.setattr(Path, "replace", fail)
        yield


FAULTS = (
    full_disk, size_limit, read_only_disk, busy_file, read_only_folder, closed_folder, read_only_file, closed_file,
    vanished_folder, folder_in_its_place, failing_rename,
)  # fmt: skip
"""Every way in which saving can fail."""
