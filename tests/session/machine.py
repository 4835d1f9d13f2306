"""Whatever a person does through the session, history, file and modified flag tell one story."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule

from elevation.errors import BadInput
from elevation.findings.all_rules import find, find_afresh
from elevation.findings.memo import TreatmentMemo
from elevation.findings.model import Scene
from elevation.places import demo_rooms
from elevation.room.edits import changed, duplicate_scheme, keep_scheme, remove, rename_scheme, rename_wall, replace_at
from elevation.room.file import dump_room, load_bytes, load_room
from elevation.room.find import children
from elevation.room.model import Ref, Room
from elevation.session.session import Session
from elevation.setting_out.whole import set_out_afresh
from elevation.trade.tables import load_trade
from elevation.units import Length
from elevation.words import msg
from tests.handles.rooms import SECOND, SECOND_TREATMENT, WINDOW, room

TRADE = load_trade()
HAND = room(openings=(WINDOW, SECOND), more=(SECOND_TREATMENT,))
DEMOS = tuple(load_room(demo_rooms() / f"{name}.room.json") for name in ("1-bedroom", "2-living-room", "9-bay"))


class SessionMachine(RuleBasedStateMachine):
    """Compares the session with a plain list of rooms and a place in it."""

    def __init__(self) -> None:
        super().__init__()
        self.folder = Path(tempfile.mkdtemp())
        self.path = self.folder / "wall.room.json"
        self.now_s = 0.0

    def starts(self) -> tuple[Room, ...]:
        """Rooms to begin with: one worked out by hand, and demo rooms with corners, schemes and two layers."""
        return HAND, *DEMOS

    @initialize(nth=st.integers(0, 1000))
    def begin(self, nth: int) -> None:
        rooms = self.starts()
        start = rooms[nth % len(rooms)]
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
            assert dump_room(self.session.committed) == dump_room(self.rooms[0])
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
        if not handles:
            return
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
        if not handles:
            return
        gesture = self.session.press(handles[nth % len(handles)])
        gesture.move(gesture.handle.low_mm + part * (gesture.handle.high_mm - gesture.handle.low_mm), 1.0)
        self.session.set_out()
        gesture.cancel()
        assert self.session.room is before
        assert self.session.set_out() == set_out

    @rule(nth=st.integers(0, 200), text=st.sampled_from(["1", "12 3/4", "36 1/32", "80", "2 m", "nothing", "-3"]))
    def type_digits(self, nth: int, text: str) -> None:
        handles = self.session.handles()
        if not handles:
            return
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
        if not handles:
            return
        self.session.nudge(handles[nth % len(handles)], steps, alone)
        self.edited()

    def commit(self, now: Room, ref: Ref = ()) -> None:
        """An edit by a form: an impossible one is refused, and everything stays as it was."""
        before = self.session.committed
        try:
            self.session.commit(now, msg("Edit"), ref)
        except BadInput:
            assert self.session.committed is before
        self.edited()

    @rule(name=st.sampled_from(["North", "South", ""]))
    def rename(self, name: str) -> None:
        wall_id = self.session.wall_id
        self.commit(rename_wall(self.session.committed, wall_id, name), (wall_id,))

    @rule(flag=st.sampled_from(["sleeping", "children", "no_holes", "one_height"]))
    def say_of_the_room(self, flag: str) -> None:
        now = self.session.committed
        self.commit(changed(now, **{flag: not getattr(now, flag)}))

    @rule(nth=st.integers(0, 50), field=st.sampled_from(["width", "height", "left", "sill"]), by=st.integers(-60, 300))
    def measure_again(self, nth: int, field: str, by: int) -> None:
        now, wall_id = self.session.committed, self.session.wall_id
        openings = next(wall for wall in now.walls if wall.id == wall_id).openings
        if openings:
            opening = openings[nth % len(openings)]
            old = getattr(opening, field)
            mm = round((0.0 if old is None else old.mm) + by)
            now = replace_at(now, (wall_id, opening.id), **{field: Length(float(mm), f"{mm} mm")})
            self.commit(now, (wall_id, opening.id))

    @rule(nth=st.integers(0, 500))
    def take_away(self, nth: int) -> None:
        now, wall_id = self.session.committed, self.session.wall_id
        wall = next(wall for wall in now.walls if wall.id == wall_id)
        refs: list[Ref] = [(wall_id, child.id) for child in children(wall)]
        refs += [(wall_id, scheme.id, child.id) for scheme in wall.schemes for child in scheme.treatments]
        refs += [
            (wall_id, scheme.id, treatment.id, layer.id, child.id)
            for scheme in wall.schemes
            for treatment in scheme.treatments
            for layer in treatment.layers
            for child in children(layer)
        ]
        if refs:
            self.commit(remove(now, refs[nth % len(refs)]))

    @rule(name=st.sampled_from(["Simple", "Rich"]), what=st.sampled_from(["copy", "copy", "rename", "keep"]))
    def schemes(self, name: str, what: str) -> None:
        now, wall_id, scheme_id = self.session.committed, self.session.wall_id, self.session.scheme_id
        if scheme_id is None:
            return
        if what == "copy":
            now, ref = duplicate_scheme(now, wall_id, scheme_id, name)
            self.commit(now, ref)
            assert self.session.scheme_id == scheme_id or ref[1] == self.session.scheme_id
        elif what == "rename":
            self.commit(rename_scheme(now, wall_id, scheme_id, name), (wall_id, scheme_id))
        else:
            self.commit(keep_scheme(now, wall_id, scheme_id), (wall_id, scheme_id))

    @rule(wall=st.integers(0, 20), scheme=st.integers(0, 20))
    def look_elsewhere(self, wall: int, scheme: int) -> None:
        now = self.session.committed
        shown = now.walls[wall % len(now.walls)]
        self.session.switch_wall(shown.id)
        if shown.schemes:
            self.session.switch_scheme(shown.schemes[scheme % len(shown.schemes)].id)

    @rule()
    def nothing_is_stale(self) -> None:
        """Set-out and findings are what they would be if nothing were remembered."""
        session = self.session
        fresh = set_out_afresh(session.room, session.wall_id, session.scheme_id, TRADE)
        assert session.set_out() == fresh
        assert session.findings() == find(Scene(session.room, fresh, TRADE), TreatmentMemo(find_afresh))

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
