"""After a crash the last committed edit is offered; a living window's file never is; one window writes a file."""

from __future__ import annotations

import errno
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import BinaryIO

import pytest

from elevation.errors import BadInput
from elevation.room.keeping import lock as lock_module
from elevation.room.keeping import recovery as recovery_module
from elevation.room.keeping.lock import lock_room, take_lock
from elevation.room.keeping.recovery import Recovery, begin_recovery, orphans
from tests.strategies import random_room

ROOM, OTHER = random_room(1), random_room(2)


@pytest.fixture
def recovery(tmp_path: Path) -> Iterator[Recovery]:
    made = begin_recovery(tmp_path)
    yield made
    made.close()


def files(state: Path) -> list[str]:
    folder = state / "autosave"
    return sorted(path.name.split(".", 1)[1] for path in folder.iterdir()) if folder.is_dir() else []


def test_nothing_is_offered_where_nothing_happened(tmp_path: Path) -> None:
    assert orphans(tmp_path) == ()
    assert orphans(tmp_path / "none") == ()


def test_a_living_window_s_recovery_is_never_offered(tmp_path: Path, recovery: Recovery) -> None:
    recovery.keep(ROOM, tmp_path / "a.room.json", "mark")
    assert orphans(tmp_path) == ()


def test_after_a_crash_the_last_edit_is_offered(tmp_path: Path, recovery: Recovery) -> None:
    recovery.keep(ROOM, tmp_path / "a.room.json", "mark")
    recovery.keep(OTHER, tmp_path / "a.room.json", "mark")
    recovery.abandon()
    (orphan,) = orphans(tmp_path)
    assert orphan.load() == OTHER
    assert orphan.path == str(tmp_path / "a.room.json")
    assert orphan.fingerprint == "mark"
    assert orphan.kept.endswith("+00:00")
    taken = orphan.take()
    assert taken is not None
    assert orphans(tmp_path) == ()  # it has an owner again
    assert orphan.take() is None
    taken.close()
    assert orphans(tmp_path) == ()
    assert files(tmp_path) == []
    assert orphan.take() is None


def test_a_room_that_was_never_saved_has_no_path(tmp_path: Path, recovery: Recovery) -> None:
    recovery.keep(ROOM, None)
    recovery.abandon()
    (orphan,) = orphans(tmp_path)
    assert orphan.path is None
    assert orphan.fingerprint is None
    orphan.discard()
    assert files(tmp_path) == []


def test_a_saved_or_closed_window_leaves_nothing(tmp_path: Path, recovery: Recovery) -> None:
    recovery.keep(ROOM, None)
    recovery.clear()
    assert files(tmp_path) == ["lock"]
    recovery.keep(OTHER, None)
    recovery.close()
    recovery.close()
    assert files(tmp_path) == []
    assert orphans(tmp_path) == ()


def test_a_killed_process_leaves_an_orphan(tmp_path: Path) -> None:
    code = (
        "import os, sys; from pathlib import Path\n"
        "from elevation.room.file import load_room\n"
        "from elevation.room.keeping.recovery import begin_recovery\n"
        "recovery = begin_recovery(Path(sys.argv[1])); recovery.keep(load_room(sys.argv[2]), sys.argv[2] + 'x')\n"
        "print('kept', flush=True); sys.stdin.read(); os._exit(9)\n"
    )
    from elevation.room.file import save_room

    path = tmp_path / "a.room.json"
    save_room(ROOM, path)
    child = subprocess.Popen(
        [sys.executable, "-c", code, str(tmp_path), str(path)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    with child:
        assert child.stdout is not None
        assert child.stdin is not None
        assert child.stdout.readline() == "kept\n"
        assert orphans(tmp_path) == ()  # another process owns it and lives
        child.stdin.close()
        assert child.wait(timeout=30) == 9
    (orphan,) = orphans(tmp_path)
    assert orphan.load() == ROOM
    orphan.discard()


def test_newest_first(tmp_path: Path) -> None:
    made = [begin_recovery(tmp_path) for _ in range(3)]
    for number, one in enumerate(made):
        one.keep(ROOM, f"/room-{number}")
        text = one.about_path.read_text()
        stamp = text.split('"kept": "')[1].split('"')[0]
        one.about_path.write_text(text.replace(stamp, f"2024-05-0{number + 1}T12:00:00+00:00"))
        one.abandon()
    assert [orphan.path for orphan in orphans(tmp_path)] == ["/room-2", "/room-1", "/room-0"]


@pytest.mark.parametrize("damage", [b"", b"{", b"[]", b'{"path": 7, "kept": {}}', b"\xff\xfe", b"[" * 100_000])
def test_damaged_news_about_a_recovery_does_not_hide_its_room(tmp_path: Path, recovery: Recovery, damage: bytes) -> None:
    recovery.keep(ROOM, "/somewhere")
    recovery.about_path.write_bytes(damage)
    recovery.abandon()
    (orphan,) = orphans(tmp_path)
    assert orphan.path is None
    assert orphan.kept == ""
    assert orphan.load() == ROOM


def test_a_damaged_recovery_says_so(tmp_path: Path, recovery: Recovery) -> None:
    recovery.keep(ROOM, None)
    recovery.room_path.write_bytes(b"{")
    recovery.abandon()
    (orphan,) = orphans(tmp_path)
    with pytest.raises(BadInput, match="not JSON"):
        orphan.load()
    orphan.discard()
    assert files(tmp_path) == []


def test_a_lock_has_one_holder(tmp_path: Path) -> None:
    first = take_lock(tmp_path / "locks" / "a")
    assert first is not None
    assert first.is_held
    assert take_lock(tmp_path / "locks" / "a") is None
    other = take_lock(tmp_path / "locks" / "b")
    assert other is not None
    other.release()
    first.release()
    first.release()
    assert not first.is_held
    again = take_lock(tmp_path / "locks" / "a")
    assert again is not None
    again.release()
    assert list((tmp_path / "locks").iterdir()) == []


def test_a_disk_that_knows_no_locks_is_not_taken_for_a_held_one(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(_stream: object) -> None:
        raise OSError(errno.ENOLCK, "No locks available")

    monkeypatch.setattr(lock_module, "_take", refuse)
    with pytest.raises(OSError, match="No locks"):
        take_lock(tmp_path / "a")
    # And what could not be locked is not offered: it may be somebody's.
    (tmp_path / "autosave").mkdir()
    (tmp_path / "autosave" / "k.room.json").write_bytes(b"{}")
    assert orphans(tmp_path) == ()


def test_a_lock_left_by_a_dead_process_is_free(tmp_path: Path) -> None:
    (tmp_path / "a").write_bytes(b"left behind")
    lock = take_lock(tmp_path / "a")
    assert lock is not None
    lock.release()


def test_another_process_holds_a_lock_until_it_dies(tmp_path: Path) -> None:
    code = (
        "import os, sys; from pathlib import Path\n"
        "from elevation.room.keeping.lock import take_lock\n"
        "lock = take_lock(Path(sys.argv[1])); print(lock is not None, flush=True); sys.stdin.read(); os._exit(9)\n"
    )
    child = subprocess.Popen(
        [sys.executable, "-c", code, str(tmp_path / "a")], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    )
    with child:
        assert child.stdout is not None
        assert child.stdin is not None
        assert child.stdout.readline() == "True\n"
        assert take_lock(tmp_path / "a") is None
        child.stdin.close()
        child.wait(timeout=30)
    lock = take_lock(tmp_path / "a")
    assert lock is not None
    lock.release()


def test_the_second_window_on_a_file_may_not_write(tmp_path: Path) -> None:
    state, path = tmp_path / "state", tmp_path / "a.room.json"
    path.write_bytes(b"{}")
    link = tmp_path / "link.room.json"
    link.symlink_to(path)
    first = lock_room(path, state)
    assert first is not None
    assert lock_room(path, state) is None
    assert lock_room(link, state) is None  # the same file under another name
    assert lock_room(str(tmp_path / "." / "a.room.json"), state) is None
    other = lock_room(tmp_path / "b.room.json", state)
    assert other is not None
    other.release()
    first.release()
    again = lock_room(link, state)
    assert again is not None
    again.release()
    assert sorted(tmp_path.iterdir()) == [path, link, state]  # nothing appeared beside the room


def test_a_key_that_is_taken_is_not_taken_twice(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    # As if another window had drawn the same number a moment before.
    answers = [lambda _: None]
    real = recovery_module.take_lock
    monkeypatch.setattr(recovery_module, "take_lock", lambda path: (answers.pop() if answers else real)(path))
    made = begin_recovery(tmp_path)
    made.keep(ROOM, None)
    made.abandon()
    (orphan,) = orphans(tmp_path)
    # Offered in two windows, taken in one: the other can neither take it nor throw it away.
    taken = orphan.take()
    assert taken is not None
    orphan.discard()
    assert orphan.take() is None
    assert orphan.room_path.exists()
    taken.close()
    assert not orphan.room_path.exists()


def test_a_state_folder_that_cannot_be_looked_into_offers_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuses(*_: object) -> Iterator[Path]:
        raise OSError(5, "Input/output error")

    monkeypatch.setattr(Path, "glob", refuses)
    assert orphans(tmp_path) == ()


def test_a_lock_whose_name_went_away_meanwhile_is_taken_under_the_new_one(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path, real, seen = tmp_path / "a.lock", lock_module._is_same, []

    def once_gone(where: Path, stream: BinaryIO) -> bool:
        if not seen:
            # Its last holder lets go and takes the name away between our opening and our locking.
            where.unlink()
        seen.append(stream)
        return real(where, stream)

    monkeypatch.setattr(lock_module, "_is_same", once_gone)
    held = take_lock(path)
    assert held is not None
    assert len(seen) >= 2
    assert seen[0].closed
    assert path.exists()
    held.release()
