"""A file is written wholly or not at all, and what stood there before is never lost."""

from __future__ import annotations

import errno
import os
import stat
import subprocess
import sys
from pathlib import Path

import pytest

from elevation import places
from elevation.errors import BadInput, BadOutput
from elevation.room.edits import replace_at
from elevation.room.file import dump_room, load_room, save_room
from elevation.room.keeping import atomic
from elevation.room.keeping.atomic import write_atomically
from elevation.room.keeping.fingerprint import fingerprint, has_changed, of_bytes
from elevation.units import Length
from tests.strategies import random_room

POSIX = pytest.mark.skipif(sys.platform == "win32", reason="modes and links of POSIX")
NOT_ROOT = pytest.mark.skipif(os.geteuid() == 0, reason="root may write everywhere")


def only(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


def test_a_new_file_and_an_old_one(tmp_path: Path) -> None:
    path = tmp_path / "a.room.json"
    write_atomically(path, b"one")
    assert path.read_bytes() == b"one"
    write_atomically(str(path), b"two")
    assert path.read_bytes() == b"two"
    assert only(tmp_path) == ["a.room.json"]


@POSIX
@pytest.mark.parametrize("mode", [0o600, 0o640, 0o664, 0o777])
def test_the_mode_of_the_old_file_stays(tmp_path: Path, mode: int) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old")
    path.chmod(mode)
    write_atomically(path, b"new")
    assert stat.S_IMODE(path.stat().st_mode) == mode


@POSIX
def test_a_new_file_gets_the_usual_mode(tmp_path: Path) -> None:
    (tmp_path / "usual").write_bytes(b"")
    write_atomically(tmp_path / "ours", b"new")
    assert (tmp_path / "ours").stat().st_mode == (tmp_path / "usual").stat().st_mode


@POSIX
def test_a_link_is_followed_and_stays(tmp_path: Path) -> None:
    there = tmp_path / "there"
    there.mkdir()
    (there / "real").write_bytes(b"old")
    link = tmp_path / "link"
    link.symlink_to("there/real")
    write_atomically(link, b"new")
    assert link.is_symlink()
    assert (there / "real").read_bytes() == b"new"
    assert only(there) == ["real"]


@POSIX
def test_a_link_to_nothing_yet_is_followed(tmp_path: Path) -> None:
    (tmp_path / "link").symlink_to("real")
    write_atomically(tmp_path / "link", b"new")
    assert (tmp_path / "link").is_symlink()
    assert (tmp_path / "real").read_bytes() == b"new"


@pytest.mark.parametrize("step", ["open", "fsync", "replace", "read_bytes", "write"])
def test_whatever_fails_the_old_file_stays(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, step: str) -> None:
    path = tmp_path / "a.room.json"
    path.write_bytes(b"old")

    def fail(*_: object, **__: object) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    with monkeypatch.context() as patch:
        if step in ("open", "fsync"):
            patch.setattr(atomic.os, step, fail)
        elif step == "write":
            patch.setattr(atomic, "_write_whole", fail)
        else:
            patch.setattr(Path, step, fail)
        with pytest.raises(BadOutput, match="no space left on device") as caught:
            write_atomically(path, b"new")
    assert str(path) in str(caught.value)
    assert path.read_bytes() == b"old"
    assert only(tmp_path) == ["a.room.json"]


def test_a_disk_that_lies_is_found_out(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a.room.json"
    path.write_bytes(b"old")
    write_whole = atomic._write_whole
    with monkeypatch.context() as patch:
        patch.setattr(atomic, "_write_whole", lambda where, data, mode: write_whole(where, data[:-1], mode))
        with pytest.raises(BadOutput, match="not stored as it was written"):
            write_atomically(path, b"new")
    assert path.read_bytes() == b"old"
    assert only(tmp_path) == ["a.room.json"]


def test_an_interrupt_leaves_no_temporary_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def stop(*_: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        patch.setattr(Path, "replace", stop)
        with pytest.raises(KeyboardInterrupt):
            write_atomically(tmp_path / "a", b"new")
    assert only(tmp_path) == []


def test_places_that_cannot_be_written(tmp_path: Path) -> None:
    (tmp_path / "file").write_bytes(b"")
    loop = tmp_path / "loop"
    loop.symlink_to(loop)
    os.mkfifo(tmp_path / "pipe")
    cases: list[tuple[Path | str, str]] = [
        (tmp_path, "is a folder"),
        (tmp_path / "none" / "a", "its folder does not exist"),
        (tmp_path / "file" / "a", "cannot be written"),
        (loop, "cannot be written"),
        (tmp_path / "pipe", "is not a plain file"),
        ("a\0b", "cannot be written"),
        (tmp_path / ("n" * 300), "cannot be written"),
    ]
    for path, part in cases:
        with pytest.raises(BadOutput, match=part) as caught:
            write_atomically(path, b"x")
        assert "\n" not in str(caught.value)


def test_the_kernel_s_own_folders_refuse_with_a_sentence() -> None:
    if not Path("/proc/self").is_dir():
        pytest.skip("no /proc here")
    with pytest.raises(BadOutput):
        write_atomically("/proc/elevation.room.json", b"x")


@POSIX
@NOT_ROOT
def test_a_read_only_folder_and_a_read_only_file(tmp_path: Path) -> None:
    path = tmp_path / "a"
    path.write_bytes(b"old")
    path.chmod(0o444)
    with pytest.raises(BadOutput, match="read-only"):
        write_atomically(path, b"new")
    path.chmod(0o644)
    tmp_path.chmod(0o555)
    try:
        with pytest.raises(BadOutput, match="may not be written"):
            write_atomically(path, b"new")
    finally:
        tmp_path.chmod(0o755)
    assert path.read_bytes() == b"old"


@POSIX
def test_a_file_that_may_not_be_written_is_not_replaced(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # Also where the tests run as root, who is asked by the same call.
    path = tmp_path / "a"
    path.write_bytes(b"old")
    with monkeypatch.context() as patch:
        patch.setattr(atomic.os, "access", lambda *_: False)
        with pytest.raises(BadOutput, match="is read-only"):
            write_atomically(path, b"new")
    assert path.read_bytes() == b"old"


def test_a_room_that_could_not_be_read_back_is_not_saved(tmp_path: Path) -> None:
    path = tmp_path / "a.room.json"
    room = random_room(1)
    save_room(room, path)
    before = path.read_bytes()
    impossible = replace_at(room, (room.walls[0].id, "o1"), width=Length(-1.0, "-1 mm"))
    with pytest.raises(BadInput, match="width"):
        save_room(impossible, path)
    assert path.read_bytes() == before
    assert load_room(path) == room


def test_a_fingerprint_sees_bytes_not_times(tmp_path: Path) -> None:
    path = tmp_path / "a"
    assert fingerprint(path) is None
    assert not has_changed(path, None)
    path.write_bytes(b"one")
    before = fingerprint(path)
    assert before == of_bytes(b"one")
    assert has_changed(path, None)
    os.utime(path, (1, 1))
    assert not has_changed(path, before)
    stamp = path.stat()
    path.write_bytes(b"two")
    os.utime(path, ns=(stamp.st_atime_ns, stamp.st_mtime_ns))
    assert has_changed(path, before)
    path.unlink()
    assert has_changed(path, before)


def test_a_kill_at_any_moment_leaves_the_old_or_the_new(tmp_path: Path) -> None:
    path = tmp_path / "a.room.json"
    old, new = dump_room(random_room(4)), dump_room(random_room(5))
    code = (
        "import sys, os; from pathlib import Path; from elevation.room.keeping import atomic\n"
        "step = sys.argv[2]\n"
        "def die(*a, **k): os._exit(9)\n"
        "if step == 'fsync': atomic.os.fsync = die\n"
        "else: Path.replace = die\n"
        "atomic.write_atomically(sys.argv[1], sys.stdin.buffer.read())\n"
    )
    for step in ("fsync", "replace"):
        path.write_bytes(old)
        done = subprocess.run([sys.executable, "-c", code, str(path), step], input=new, check=False)
        assert done.returncode == 9
        assert path.read_bytes() == old


def test_the_state_folder_follows_xdg(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # XDG Base Directory Specification 0.8: XDG_STATE_HOME, an absolute path.
    if sys.platform in ("win32", "darwin"):
        pytest.skip("XDG folders are those of Linux")
    monkeypatch.setenv("XDG_STATE_HOME", str(tmp_path / "state"))
    assert places.state_folder() == tmp_path / "state" / "elevation"
    assert places.state_folder().is_dir()
    assert places.state_is_lasting()


def test_an_unwritable_home_gives_a_temporary_state_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    blocked = tmp_path / "file"
    blocked.write_bytes(b"")  # a file where a folder should be: not even root can make one in it
    monkeypatch.setenv("HOME", str(blocked))
    monkeypatch.setenv("XDG_STATE_HOME", str(blocked / "state"))
    monkeypatch.setattr(places.tempfile, "tempdir", str(tmp_path))
    folder = places.state_folder()
    assert folder.parent == tmp_path
    assert folder.is_dir()
    assert places.state_folder() == folder
    assert not places.state_is_lasting()


@POSIX
def test_a_temporary_state_folder_of_somebody_else_is_not_used(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    blocked = tmp_path / "file"
    blocked.write_bytes(b"")
    monkeypatch.setenv("XDG_STATE_HOME", str(blocked / "state"))
    monkeypatch.setattr(places.tempfile, "tempdir", str(tmp_path))
    (tmp_path / "theirs").mkdir()
    (tmp_path / f"elevation-{os.getuid()}").symlink_to(tmp_path / "theirs")
    assert places.state_folder().resolve() != tmp_path / "theirs"
