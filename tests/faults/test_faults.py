"""After every fault the file is the old one or the new one, whole, and recovery offers the last edit."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest

import elevation.room.file
from elevation.errors import BadOutput, ElevationError
from elevation.room.edits import rename_wall
from elevation.room.file import dump_room, load_room, save_room
from elevation.room.keeping.recovery import begin_recovery
from elevation.session.session import Session
from elevation.session.storage import ChangedOnDisk
from elevation.trade.tables import load_trade
from elevation.words import msg
from tests.faults.breaking import FAULTS, Desk, desk, filled, small_disk
from tests.handles.rooms import room

TRADE = load_trade()


@pytest.fixture
def at() -> Iterator[Desk]:
    with desk() as made:
        yield made


def window(at: Desk) -> Session:
    """A window on the desk's room, which is written first where there is none."""
    if not at.file.exists():
        save_room(room(), at.file)
    return Session(load_room(at.file), TRADE, at.file, state=at.state)


def name_wall(session: Session, name: str) -> None:
    session.commit(rename_wall(session.committed, "a", name), msg("Rename"))
    session.worker.wait()


def crash(session: Session) -> None:
    """The process is gone: its locks with it, what it kept stays."""
    session.worker.close()
    session.storage._release()
    if session.storage._recovery is not None:
        session.storage._recovery.abandon()


def offered(at: Desk) -> list[str]:
    """Names of the walls in what a window that opens now offers."""
    after = Session(room(), TRADE, None, state=at.state)
    found = [orphan.load().walls[0].name for orphan in after.orphans()]
    after.close()
    return found


def left_behind(at: Desk) -> list[str]:
    return sorted(path.name for path in at.folder.iterdir() if path.name != at.file.name)


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.__name__)
def test_a_save_that_fails_loses_nothing(at: Desk, fault) -> None:
    session = window(at)
    name_wall(session, "saved")
    session.save()
    old = at.file.read_bytes()
    name_wall(session, "last")
    with fault(at):
        for overwrite in (False, True):
            with pytest.raises(BadOutput) as caught:
                session.save(overwrite=overwrite)
            assert "\n" not in str(caught.value)
            assert at.file.name in str(caught.value)
        assert session.committed.walls[0].name == "last"
        assert session.is_modified
        with suppress(OSError):
            # Where it can be looked at now: the old file, and nothing half written beside it.
            assert not [name for name in left_behind(at) if name.endswith(".tmp")]
    assert at.file.read_bytes() == old
    crash(session)
    assert offered(at) == ["last"]


@pytest.mark.parametrize("fault", FAULTS, ids=lambda fault: fault.__name__)
def test_when_it_is_mended_saving_goes_on(at: Desk, fault) -> None:
    session = window(at)
    name_wall(session, "last")
    with fault(at), suppress(BadOutput):
        session.save()
    # A file that was away and is back says what it said: nobody need be asked.
    session.save()
    assert load_room(at.file).walls[0].name == "last"
    assert left_behind(at) == []
    assert not session.is_modified
    crash(session)
    assert offered(at) == []


def test_a_full_state_folder_is_told_and_does_not_keep_anyone_from_saving(at: Desk) -> None:
    with small_disk(at.state):
        session = window(at)
        name_wall(session, "kept")
        with filled(at.state):
            name_wall(session, "not kept")
            assert "no space left" in str(session.storage.trouble).lower()
            session.save()
            assert load_room(at.file).walls[0].name == "not kept"
        name_wall(session, "kept again")
        assert session.storage.trouble is None
        crash(session)
        assert offered(at) == ["kept again"]


def test_what_was_kept_before_the_state_folder_was_full_is_still_offered(at: Desk) -> None:
    with small_disk(at.state):
        session = window(at)
        name_wall(session, "kept")
        with filled(at.state):
            name_wall(session, "not kept")
            crash(session)
        assert offered(at) == ["kept"]


def test_a_state_folder_that_is_cleaned_out_under_a_window_is_begun_anew(at: Desk) -> None:
    session = window(at)
    name_wall(session, "before")
    for path in (at.state / "autosave").iterdir():
        path.unlink()
    (at.state / "autosave").rmdir()
    name_wall(session, "after")
    assert session.storage.trouble is None
    assert offered(at) == []  # its window lives
    crash(session)
    assert offered(at) == ["after"]


def test_a_window_whose_lock_was_cleaned_away_leaves_another_s_alone(at: Desk) -> None:
    mine = begin_recovery(at.state)
    (at.state / "autosave" / f"{mine.key}.lock").unlink()
    assert not mine.is_there()
    other = at.state / "autosave" / f"{mine.key}.lock"
    other.write_bytes(b"")  # another's, under the same name
    mine.abandon()
    assert other.exists()


# --- links ---------------------------------------------------------------------------------------------------


def test_a_linked_file_is_saved_where_it_lies(at: Desk) -> None:
    real = at.state.with_name("real.room.json")
    save_room(room(), real)
    at.file.symlink_to(real)
    session = window(at)
    name_wall(session, "last")
    session.save()
    assert at.file.is_symlink()
    assert load_room(real).walls[0].name == "last"
    session.close()


def test_a_link_that_was_turned_to_another_file_is_asked_about(at: Desk) -> None:
    real, other = at.state.with_name("real.room.json"), at.state.with_name("other.room.json")
    for path, name in ((real, "real"), (other, "other")):
        save_room(rename_wall(room(), "a", name), path)
    at.file.symlink_to(real)
    session = window(at)
    name_wall(session, "last")
    at.file.unlink()
    at.file.symlink_to(other)
    with pytest.raises(ChangedOnDisk):
        session.save()
    assert load_room(other).walls[0].name == "other"
    assert load_room(real).walls[0].name == "real"
    crash(session)
    assert offered(at) == ["last"]


def test_a_link_that_leads_nowhere_any_more_is_a_sentence(at: Desk) -> None:
    real = at.state.with_name("real.room.json")
    save_room(room(), real)
    at.file.symlink_to(real)
    session = window(at)
    name_wall(session, "last")
    at.file.unlink()
    at.file.symlink_to(at.file)
    for overwrite in (False, True):
        with pytest.raises(BadOutput) as caught:
            session.save(overwrite=overwrite)
        assert "\n" not in str(caught.value)
    crash(session)
    assert offered(at) == ["last"]


# --- others at the same file -----------------------------------------------------------------------------------


def test_two_windows_on_one_file_never_write_over_each_other(at: Desk) -> None:
    first = window(at)
    link = at.folder / "link.room.json"
    link.symlink_to(at.file.name)
    second = Session(load_room(link), TRADE, link, state=at.state)
    assert second.is_read_only
    name_wall(first, "first")
    name_wall(second, "second")
    first.save()
    with pytest.raises(BadOutput, match="open in another window"):
        second.save(overwrite=True)
    assert load_room(at.file).walls[0].name == "first"
    crash(first)
    crash(second)
    assert offered(at) == ["second"]


def test_a_file_that_is_changed_underneath_is_asked_about_and_both_are_kept(at: Desk) -> None:
    session = window(at)
    name_wall(session, "mine")
    at.file.write_bytes(dump_room(rename_wall(room(), "a", "theirs")))
    with pytest.raises(ChangedOnDisk):
        session.save()
    assert load_room(at.file).walls[0].name == "theirs"
    crash(session)
    assert offered(at) == ["mine"]


def test_a_file_that_is_damaged_underneath_is_asked_about(at: Desk) -> None:
    session = window(at)
    name_wall(session, "mine")
    at.file.write_bytes(at.file.read_bytes()[:100])
    with pytest.raises(ChangedOnDisk):
        session.save()
    with pytest.raises(ElevationError):
        session.revert()
    assert session.committed.walls[0].name == "mine"
    session.save(overwrite=True)
    assert load_room(at.file).walls[0].name == "mine"
    session.close()


def test_a_change_in_the_moment_after_saving_is_seen(at: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    session = window(at)
    name_wall(session, "mine")
    write = elevation.room.file.write_atomically

    def write_and_lose(path: Path, data: bytes) -> None:
        write(path, data)
        write(path, dump_room(rename_wall(room(), "a", "theirs")))

    with monkeypatch.context() as patch:
        patch.setattr(elevation.room.file, "write_atomically", write_and_lose)
        session.save()
    assert session.storage.is_changed_on_disk()
    name_wall(session, "more")
    with pytest.raises(ChangedOnDisk):
        session.save()
    session.close()


def test_after_a_save_elsewhere_that_failed_the_recovery_belongs_to_its_own_file(at: Desk) -> None:
    session = window(at)
    name_wall(session, "last")
    with pytest.raises(BadOutput):
        session.save(at.folder / "none" / "other.room.json")
    session.worker.wait()
    crash(session)
    after = Session(room(), TRADE, None, state=at.state)
    assert [orphan.path for orphan in after.orphans()] == [str(at.file)]
    after.close()


# --- what a kill leaves ----------------------------------------------------------------------------------------


def test_left_temporary_files_go_with_the_next_save_and_nothing_else_does(at: Desk) -> None:
    session = window(at)
    old = at.folder / f".{at.file.name}.0123456789ab.tmp"
    young = at.folder / f".{at.file.name}.ba9876543210.tmp"
    others = [
        at.folder / name
        for name in (".other.room.json.0123456789ab.tmp", f".{at.file.name}.tmp", f".{at.file.name}.0123456789aX.tmp")
    ]
    for path in (old, young, *others):
        path.write_bytes(b"left")
        if path is not young:
            os.utime(path, (1, 1))
    name_wall(session, "last")
    session.save()
    assert not old.exists()
    assert young.exists()  # another program may be writing it just now
    assert all(path.exists() for path in others)
    session.close()


def test_a_long_name_in_letters_of_three_bytes_can_be_saved(at: Desk) -> None:
    # 255 bytes is the longest name of most file systems.
    path = at.folder / ("窓" * 80 + ".json")
    save_room(room(), path)
    assert load_room(path) == room()


def test_a_crash_between_saving_and_forgetting_offers_nothing(at: Desk, monkeypatch: pytest.MonkeyPatch) -> None:
    session = window(at)
    name_wall(session, "one")
    session.commit(rename_wall(session.committed, "a", "two"), msg("Rename"))
    with monkeypatch.context() as patch:
        patch.setattr("elevation.room.keeping.recovery.Recovery.clear", lambda _self: None)
        session.save()
    crash(session)
    assert load_room(at.file).walls[0].name == "two"
    assert offered(at) == []
    assert list(Path(at.state / "autosave").glob("*.json")) == []
