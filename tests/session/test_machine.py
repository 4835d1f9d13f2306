"""Whatever a person does through the session, history, file and modified flag tell one story."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from hypothesis import settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from elevation.errors import BadInput
from elevation.room.edits import rename_wall
from elevation.room.file import dump_room, load_bytes, load_room
from elevation.room.model import Room
from elevation.session.session import Session
from elevation.trade.tables import load_trade
from elevation.words import msg
from tests.handles.rooms import SECOND, SECOND_TREATMENT, WINDOW, room

TRADE = load_trade()


class SessionMachine(RuleBasedStateMachine):
    """Compares the session with a plain list of rooms and a place in it."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp())
        self.path = self.folder / "wall.room.json"
        self.now_s = 0.0

    @initialize()
    def begin(self) -> None:
        start = room(openings=(WINDOW, SECOND), more=(SECOND_TREATMENT,))
        self.path.write_bytes(dump_room(start))
        self.session = Session(load_room(self.path), TRADE, self.path, clock=lambda: self.now_s)
        self.rooms: list[Room] = [self.session.committed]
        self.index = 0
        self.saved = dump_room(start)

    def teardown(self) -> None:
        shutil.rmtree(self.folder)
        if hasattr(self, "session"):
            for _ in range(len(self.rooms)):
                self.session.undo()
            assert self.session.committed == self.rooms[0]
            self.session.close()

    def edited(self) -> None:
        """The model takes over what the session did, if it did anything."""
        now = self.session.committed
        if now != self.rooms[self.index]:
            del self.rooms[self.index + 1 :]
            self.rooms.append(now)
            self.index += 1

    @rule(
        nth=st.integers(0, 200),
        parts=st.lists(st.floats(-0.1, 1.1), min_size=1, max_size=4),
        px_mm=st.sampled_from([0.3, 3.0]),
        free=st.booleans(),
        alone=st.booleans(),
        looks=st.booleans(),
    )
    def drag(self, nth: int, parts: list[float], px_mm: float, free: bool, alone: bool, looks: bool) -> None:
        handles = self.session.handles()
        handle = handles[nth % len(handles)]
        gesture = self.session.press(handle, alone)
        low_mm, high_mm = gesture.handle.low_mm, min(gesture.handle.high_mm, gesture.handle.value_mm + 2000.0)
        for part in parts:
            gesture.move(low_mm + part * (high_mm - low_mm), px_mm, free)
            if looks:
                self.session.findings()
                assert gesture.handle.low_mm - 1e-6 <= gesture.stuck.value_mm <= gesture.handle.high_mm + 1e-6
        gesture.release()
        self.edited()

    @rule(nth=st.integers(0, 200), part=st.floats(0, 1))
    def drag_and_escape(self, nth: int, part: float) -> None:
        before, set_out = self.session.committed, self.session.set_out()
        handles = self.session.handles()
        gesture = self.session.press(handles[nth % len(handles)])
        gesture.move(gesture.handle.low_mm + part * (gesture.handle.high_mm - gesture.handle.low_mm), 1.0)
        self.session.set_out()
        gesture.cancel()
        assert self.session.room is before
        assert self.session.set_out() == set_out

    @rule(nth=st.integers(0, 200), text=st.sampled_from(["1", "12 3/4", "36 1/32", "80", "2 m", "nothing", "-3"]))
    def type_digits(self, nth: int, text: str) -> None:
        handles = self.session.handles()
        gesture = self.session.press(handles[nth % len(handles)])
        try:
            gesture.type(text)
        except BadInput:
            gesture.cancel()
        else:
            gesture.release()
        self.edited()

    @rule(nth=st.integers(0, 200), steps=st.integers(-20, 20), alone=st.booleans())
    def nudge(self, nth: int, steps: int, alone: bool) -> None:
        self.now_s += 5.0
        handles = self.session.handles()
        self.session.nudge(handles[nth % len(handles)], steps, alone)
        self.edited()

    @rule(name=st.sampled_from(["North", "South", ""]))
    def edit(self, name: str) -> None:
        self.session.commit(rename_wall(self.session.committed, "a", name), msg("Rename"), ("a",))
        self.edited()

    @precondition(lambda self: self.index > 0)
    @rule()
    def undo(self) -> None:
        self.session.undo()
        self.index -= 1

    @precondition(lambda self: self.index + 1 < len(self.rooms))
    @rule()
    def redo(self) -> None:
        self.session.redo()
        self.index += 1

    @rule()
    def save(self) -> None:
        self.session.save()
        self.saved = dump_room(self.session.committed)
        assert self.path.read_bytes() == self.saved

    @rule()
    def reload(self) -> None:
        self.session.open(self.path)
        self.rooms, self.index = [self.session.committed], 0

    @invariant()
    def one_story(self) -> None:
        if not hasattr(self, "session"):
            return
        session = self.session
        assert session.committed == self.rooms[self.index]
        assert session.room is session.committed
        assert session.edits == len(self.rooms) - 1
        assert (session.undo_label is not None) == (self.index > 0)
        assert (session.redo_label is not None) == (self.index + 1 < len(self.rooms))
        now = dump_room(session.committed)
        assert session.is_modified == (now != self.saved)
        assert load_bytes(now, "now") == session.committed


SessionMachine.TestCase.settings = settings(max_examples=25, stateful_step_count=20)
TestSessionMachine = SessionMachine.TestCase
