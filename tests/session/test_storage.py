"""Files: modified or not, read-only windows, files changed on disk, recovery after a crash."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from elevation.errors import BadInput, BadOutput
from elevation.places import demo_rooms
from elevation.room.edits import replace_at, replace_rod
from elevation.room.file import dump_room, load_bytes, load_room
from elevation.room.model import Room
from elevation.session.session import Session
from elevation.session.storage import ChangedOnDisk
from elevation.trade.tables import load_trade
from elevation.words import msg
from tests.handles.rooms import LAYER, held, room

TRADE = load_trade()


def raised(now: Room, above: float) -> Room:
    return replace_rod(now, LAYER, height=held("above-casing", above))


@pytest.fixture
def file(tmp_path: Path) -> Path:
    path = tmp_path / "wall.room.json"
    path.write_bytes(dump_room(room()))
    return path


@pytest.fixture
def windows(tmp_path: Path):
    """Opens sessions as windows of one person do, and closes those still open."""
    opened: list[Session] = []

    def window(path: Path | None = None, start: Room | None = None) -> Session:
        now = start if start is not None else load_room(path) if path is not None else room()
        session = Session(now, TRADE, path, state=tmp_path / "state")
        opened.append(session)
        return session

    yield window
    for session in opened:
        session.close()


# --- modified ------------------------------------------------------------------------------------------------


def test_modified_means_other_bytes_than_saved(file: Path) -> None:
    session = Session(load_room(file), TRADE, file)
    assert not session.is_modified
    session.commit(raised(session.committed, 5), msg("Raise"))
    assert session.is_modified
    session.undo()
    assert not session.is_modified
    session.redo()
    session.save()
    assert not session.is_modified
    assert load_room(file) == session.committed
    session.undo()
    assert session.is_modified
    session.commit(raised(session.committed, 5), msg("Raise again"))
    assert not session.is_modified


def test_a_hand_written_file_is_not_modified_by_being_opened_and_saving_leaves_it(file: Path) -> None:
    text = file.read_text().replace("  ", "\t").replace('"88 in"', '"88.0 in"')
    file.write_text(text)
    session = Session(load_room(file), TRADE, file)
    assert not session.is_modified
    session.save()
    assert file.read_text() == text


def test_a_new_room_is_not_saved_yet(tmp_path: Path) -> None:
    session = Session(room(), TRADE)
    session.begin(raised(room(), 7))
    assert session.is_modified
    assert session.path is None
    assert session.edits == 0
    with pytest.raises(BadOutput, match="no file yet"):
        session.save()
    session.save(tmp_path / "new.room.json")
    assert not session.is_modified
    assert session.path == tmp_path / "new.room.json"


def test_a_room_that_names_unknown_rows_is_refused_and_the_old_one_stays(file: Path, tmp_path: Path) -> None:
    session = Session(load_room(file), TRADE, file)
    before = session.committed
    bad = tmp_path / "bad.room.json"
    bad.write_bytes(dump_room(replace_at(before, LAYER, heading="clip-ring")))
    with pytest.raises(BadInput, match='did you mean "clip-rings"'):
        session.open(bad)
    assert session.committed is before
    assert session.path == file
    assert session.set_out().treatments


def test_open_is_all_or_nothing(file: Path, tmp_path: Path) -> None:
    session = Session(load_room(file), TRADE, file)
    session.commit(raised(session.committed, 5), msg("Raise"))
    before = session.committed
    bad = tmp_path / "bad.room.json"
    bad.write_text("{")
    with pytest.raises(BadInput):
        session.open(bad)
    assert session.committed is before
    assert session.path == file
    assert session.edits == 1
    demo = demo_rooms() / "3-attic.room.json"
    session.open(demo)
    assert session.committed == load_room(demo)
    assert (session.path, session.edits, session.is_modified) == (demo, 0, False)
    assert session.wall_id == session.committed.walls[0].id


def test_revert_reads_the_file_again(file: Path) -> None:
    session = Session(load_room(file), TRADE, file)
    session.commit(raised(session.committed, 5), msg("Raise"))
    file.write_bytes(dump_room(raised(room(), 9)))
    session.revert()
    assert session.committed == raised(room(), 9)
    assert (session.edits, session.is_modified) == (0, False)


def test_revert_without_a_file_goes_back_to_the_start() -> None:
    session = Session(room(), TRADE)
    session.commit(raised(session.committed, 5), msg("Raise"))
    session.revert()
    assert session.committed == room()


def test_what_cannot_be_written_loses_nothing(file: Path, tmp_path: Path) -> None:
    session = Session(load_room(file), TRADE, file)
    session.commit(raised(session.committed, 5), msg("Raise"))
    with pytest.raises(BadOutput):
        session.save(tmp_path / "nowhere" / "x.room.json")
    assert session.path == file
    assert session.is_modified
    assert load_room(file) == room()


# --- two windows, one file -------------------------------------------------------------------------------------


def test_a_second_window_may_look_and_save_elsewhere(file: Path, tmp_path: Path, windows) -> None:
    first, second = windows(file), windows(file)
    assert (first.is_read_only, second.is_read_only) == (False, True)
    second.commit(raised(second.committed, 5), msg("Raise"))
    with pytest.raises(BadOutput, match="another window"):
        second.save()
    with pytest.raises(BadOutput, match="another window"):
        second.save(file)
    second.save(tmp_path / "copy.room.json")
    assert not second.is_read_only
    assert not second.is_modified
    third = windows(tmp_path / "copy.room.json")
    assert third.is_read_only
    assert load_room(file) == room()


def test_nobody_saves_over_a_file_that_is_open_elsewhere(file: Path, tmp_path: Path, windows) -> None:
    windows(file)
    other = windows()
    with pytest.raises(BadOutput, match="another window"):
        other.save(file)
    assert load_room(file) == room()


def test_a_closed_window_lets_go(file: Path, windows) -> None:
    first = windows(file)
    first.close()
    assert not windows(file).is_read_only


def test_a_read_only_window_may_write_once_the_other_is_gone(file: Path, windows) -> None:
    first, second = windows(file), windows(file)
    second.revert()
    assert second.is_read_only
    first.close()
    second.revert()
    assert not second.is_read_only
    second.commit(raised(second.committed, 5), msg("Raise"))
    second.save()
    assert load_room(file) == second.committed


def test_opening_another_file_lets_go_of_the_first(file: Path, windows) -> None:
    first = windows(file)
    first.open(demo_rooms() / "3-attic.room.json")
    assert not windows(file).is_read_only


def test_reverting_keeps_the_lock(file: Path, windows) -> None:
    first = windows(file)
    first.revert()
    assert windows(file).is_read_only
    first.open(file)
    assert not first.is_read_only


# --- changed on disk -----------------------------------------------------------------------------------------


def test_a_file_changed_by_someone_else_is_asked_about(file: Path) -> None:
    session = Session(load_room(file), TRADE, file)
    session.commit(raised(session.committed, 5), msg("Raise"))
    assert not session.is_changed_on_disk()
    theirs = dump_room(replace_at(room(), ("a",), name="Theirs"))
    file.write_bytes(theirs)
    assert session.is_changed_on_disk()
    with pytest.raises(ChangedOnDisk):
        session.save()
    assert file.read_bytes() == theirs
    session.save(overwrite=True)
    assert load_room(file) == session.committed
    assert not session.is_changed_on_disk()
    session.commit(raised(session.committed, 6), msg("Raise"))
    session.save()


def test_a_file_that_was_taken_away_is_asked_about_too(file: Path) -> None:
    session = Session(load_room(file), TRADE, file)
    session.commit(raised(session.committed, 5), msg("Raise"))
    file.unlink()
    with pytest.raises(ChangedOnDisk):
        session.save()
    session.save(overwrite=True)
    assert load_room(file) == session.committed


# --- recovery ------------------------------------------------------------------------------------------------


def crash(session: Session) -> None:
    """End the session as a crash would: the operating system lets go of its locks, and nothing is cleared."""
    session.worker.wait()
    storage = session.storage
    assert storage._recovery is not None
    storage._recovery.abandon()
    storage._recovery = None
    storage._release()


def test_every_committed_edit_is_kept_for_recovery(file: Path, tmp_path: Path, windows) -> None:
    session = windows(file)
    session.commit(raised(session.committed, 5), msg("Raise"))
    session.commit(raised(session.committed, 6), msg("Raise"))
    kept = session.committed
    crash(session)
    after = windows()
    (orphan,) = after.orphans()
    assert orphan.path == str(file)
    after.recover(orphan)
    assert after.committed == kept
    assert after.path == file
    assert after.is_modified
    assert after.orphans() == ()
    after.save()
    assert load_room(file) == kept
    assert not after.is_modified


_KILLED = """
import os, sys
from pathlib import Path
from elevation.room.edits import rename_wall
from elevation.room.file import load_room
from elevation.session.session import Session
from elevation.trade.tables import load_trade
from elevation.words import msg

path = Path(sys.argv[1])
session = Session(load_room(path), load_trade(), path, state=Path(sys.argv[2]))
session.commit(rename_wall(session.committed, "a", "North"), msg("Rename"))
session.worker.wait()
print("read-only" if session.is_read_only else "kept", flush=True)
os._exit(9)
"""


def test_a_process_that_is_killed_leaves_its_last_edit_and_no_lock(file: Path, tmp_path: Path, windows) -> None:
    command = [sys.executable, "-c", _KILLED, str(file), str(tmp_path / "state")]
    killed = subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)
    assert (killed.returncode, killed.stdout.strip()) == (9, "kept"), killed.stderr
    after = windows(file)
    assert not after.is_read_only
    (orphan,) = after.orphans()
    after.recover(orphan)
    assert after.committed.walls[0].name == "North"
    assert after.is_modified
    after.save()
    assert load_room(file).walls[0].name == "North"


def test_another_process_has_the_file(file: Path, tmp_path: Path, windows) -> None:
    windows(file)
    command = [sys.executable, "-c", _KILLED, str(file), str(tmp_path / "state")]
    other = subprocess.run(command, capture_output=True, text=True, timeout=60, check=False)
    assert other.stdout.strip() == "read-only", other.stderr


def test_a_new_room_is_kept_before_its_first_edit(windows) -> None:
    session = windows()
    session.begin(raised(room(), 7))
    crash(session)
    after = windows()
    (orphan,) = after.orphans()
    after.recover(orphan)
    assert after.committed == raised(room(), 7)
    assert after.path is None
    assert after.is_modified


def test_a_recovery_asks_before_it_writes_over_a_file_that_changed_meanwhile(file: Path, windows) -> None:
    session = windows(file)
    session.commit(raised(session.committed, 5), msg("Raise"))
    crash(session)
    file.write_bytes(dump_room(raised(room(), 9)))
    after = windows()
    after.recover(after.orphans()[0])
    with pytest.raises(ChangedOnDisk):
        after.save()


@pytest.mark.parametrize("end", ["close", "save", "undo", "revert"])
def test_nothing_is_offered_when_nothing_is_lost(end: str, file: Path, windows) -> None:
    session = windows(file)
    session.commit(raised(session.committed, 5), msg("Raise"))
    getattr(session, end)()
    if end != "close":
        session.worker.wait()
        storage = session.storage
        if storage._recovery is not None:
            storage._recovery.abandon()
            storage._recovery = None
    assert windows().orphans() == ()


def test_a_living_window_is_not_offered(file: Path, windows) -> None:
    session = windows(file)
    session.commit(raised(session.committed, 5), msg("Raise"))
    session.worker.wait()
    assert windows().orphans() == ()


def test_a_state_folder_that_cannot_be_written_stops_no_work(file: Path, tmp_path: Path) -> None:
    blocked = tmp_path / "state"
    blocked.write_text("in the way")
    session = Session(load_room(file), TRADE, file, state=blocked)
    session.commit(raised(session.committed, 5), msg("Raise"))
    session.worker.wait()
    assert session.storage.trouble is not None
    session.save()
    assert load_room(file) == session.committed
    session.close()


def test_what_is_kept_is_a_room_file_like_any_other(file: Path, windows) -> None:
    session = windows(file)
    session.commit(raised(session.committed, 5), msg("Raise"))
    crash(session)
    orphan = windows().orphans()[0]
    assert load_bytes(orphan.room_path.read_bytes(), "kept") == session.committed
