"""The session: history, nudges, what is looked at, who is told."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput, NoSuch
from elevation.room.edits import replace_at, replace_rod
from elevation.room.find import layer_of
from elevation.room.model import Room, Scheme, Wall
from elevation.session.session import Session
from elevation.trade.tables import load_trade
from elevation.units import Length
from elevation.words import msg
from tests.handles.rooms import LAYER, held, inch, room

TRADE = load_trade()


class Clock:
    """Seconds that pass only when told to."""

    def __init__(self) -> None:
        self.now_s = 100.0

    def __call__(self) -> float:
        return self.now_s


def raised(now: Room, above: float) -> Room:
    return replace_rod(now, LAYER, height=held("above-casing", above))


def house() -> Room:
    """Two walls; the first has two schemes."""
    one = room()
    wall = one.walls[0]
    bare = Scheme(id="bare", name="Bare")
    return replace(one, walls=(replace(wall, schemes=(*wall.schemes, bare)), Wall(id="b", width=inch(100))))


# --- history -------------------------------------------------------------------------------------------------


def test_undo_and_redo_walk_the_same_rooms() -> None:
    session = Session(room(), TRADE)
    seen = [session.committed]
    for above in (5, 6, 7):
        session.commit(raised(session.committed, above), msg("Raise"), LAYER)
        seen.append(session.committed)
    for earlier in reversed(seen[:-1]):
        session.undo()
        assert session.committed is earlier
    session.undo()
    assert session.committed is seen[0]
    assert session.undo_label is None
    for later in seen[1:]:
        session.redo()
        assert session.committed is later
    session.redo()
    assert session.committed is seen[-1]
    assert session.redo_label is None


def test_an_edit_after_undo_forgets_what_could_be_redone() -> None:
    session = Session(room(), TRADE)
    session.commit(raised(session.committed, 5), msg("Raise"), LAYER)
    session.undo()
    session.commit(raised(session.committed, 6), msg("Lower"), LAYER)
    assert session.redo_label is None
    assert session.edits == 1
    assert session.undo_label == msg("Lower")


def test_an_equal_room_is_no_edit() -> None:
    session = Session(room(), TRADE)
    told: list[str] = []
    session.changed.connect(told.append)
    session.commit(room(), msg("Nothing"))
    assert session.edits == 0
    assert told == []


def test_undo_and_redo_select_what_the_edit_was_about() -> None:
    session = Session(house(), TRADE)
    session.commit(raised(session.committed, 5), msg("Raise"), LAYER)
    session.selection = ("a", "w1")
    session.undo()
    assert session.selection == LAYER
    session.selection = None
    session.redo()
    assert session.selection == LAYER


def test_undo_turns_to_the_wall_and_scheme_it_is_about() -> None:
    session = Session(house(), TRADE)
    session.commit(raised(session.committed, 5), msg("Raise"), LAYER)
    session.switch_scheme("bare")
    session.switch_wall("b")
    session.undo()
    assert (session.wall_id, session.scheme_id) == ("a", "s")


def test_a_wall_that_is_undone_away_is_left() -> None:
    session = Session(room(), TRADE)
    session.commit(house(), msg("Add a wall"), ("b",))
    session.switch_wall("b")
    session.selection = ("b",)
    session.undo()
    assert session.wall_id == "a"
    assert session.selection is None
    session.redo()
    assert session.wall_id == "b"


# --- nudges --------------------------------------------------------------------------------------------------


def nudger() -> tuple[Session, Clock]:
    clock = Clock()
    return Session(room(), TRADE, clock=clock), clock


def above(session: Session) -> str:
    return layer_of(session.room, LAYER).rod.height.at.text


def test_nudges_go_by_graduations_and_one_burst_is_one_edit() -> None:
    session, clock = nudger()
    handle = session.handle("rod-height", LAYER)
    for text in ("4 1/16 in", "4 1/8 in", "4 3/16 in"):
        session.nudge(handle, 1)
        clock.now_s += 0.9
        assert above(session) == text
    session.nudge(handle, -10)
    assert above(session) == "3 9/16 in"
    assert session.edits == 1
    session.undo()
    assert session.committed == room()


@pytest.mark.parametrize(("pause_s", "edits"), [(0.99, 1), (1.0, 1), (1.01, 2)])
def test_a_pause_begins_a_new_edit(pause_s: float, edits: int) -> None:
    session, clock = nudger()
    handle = session.handle("rod-height", LAYER)
    session.nudge(handle, 1)
    clock.now_s += pause_s
    session.nudge(handle, 1)
    assert session.edits == edits


def test_another_handle_begins_a_new_edit() -> None:
    session, _ = nudger()
    session.nudge(session.handle("rod-height", LAYER), 1)
    session.nudge(session.handle("rod-left", LAYER), -1)
    session.nudge(session.handle("rod-height", LAYER), 1)
    assert session.edits == 3


def test_a_burst_back_to_its_start_is_no_edit() -> None:
    session, _ = nudger()
    handle = session.handle("rod-height", LAYER)
    session.nudge(handle, 1)
    session.nudge(handle, -1)
    assert session.edits == 0
    assert session.committed == room()
    assert not session.is_modified


def test_a_nudge_stops_at_the_limit() -> None:
    session, _ = nudger()
    handle = session.handle("rod-height", LAYER)
    session.nudge(handle, 100_000)
    assert above(session) == "23 1/2 in"
    assert session.edits == 1
    session.nudge(handle, 1)
    assert session.edits == 1


def test_a_nudge_after_undo_does_not_go_on_with_what_was_undone() -> None:
    session, _ = nudger()
    handle = session.handle("rod-height", LAYER)
    session.commit(raised(session.committed, 5), msg("Raise"), LAYER)
    session.nudge(handle, 1)
    session.undo()
    session.nudge(handle, 1)
    assert session.edits == 2
    assert above(session) == "5 1/16 in"


def test_a_nudge_puts_an_odd_figure_on_a_graduation() -> None:
    session = Session(replace_rod(room(), LAYER, height=held("above-casing", "4 1/32")), TRADE)
    session.nudge(session.handle("rod-height", LAYER), 1)
    # 4 3/32 lies half way between 4 1/16 and 4 1/8: the even mark (NIST Handbook 44)
    assert above(session) == "4 1/8 in"


def test_a_nudge_moves_both_ends_or_one() -> None:
    session, _ = nudger()
    session.nudge(session.handle("rod-left", LAYER), -16)
    rod = layer_of(session.room, LAYER).rod
    assert (rod.left, rod.right) == (held("beyond-opening", 11), held("beyond-opening", 11))
    session.nudge(session.handle("rod-left", LAYER), -16, alone=True)
    rod = layer_of(session.room, LAYER).rod
    assert (rod.left, rod.right) == (held("beyond-opening", 12), held("beyond-opening", 11))


# --- what is looked at, and who is told ------------------------------------------------------------------------


def test_switching_shows_another_wall_or_scheme_and_is_no_edit() -> None:
    session = Session(house(), TRADE)
    told: list[str] = []
    session.changed.connect(told.append)
    session.switch_scheme("bare")
    assert session.set_out().scheme == "bare"
    assert session.set_out().treatments == ()
    session.switch_wall("b")
    assert (session.wall_id, session.scheme_id) == ("b", None)
    session.switch_wall("a")
    assert session.scheme_id == "s"
    assert told == ["view", "view", "view"]
    assert session.edits == 0
    session.switch_wall("a")
    assert told == ["view", "view", "view"]


def test_what_is_not_there_cannot_be_shown() -> None:
    session = Session(house(), TRADE)
    with pytest.raises(NoSuch):
        session.switch_wall("z")
    with pytest.raises(NoSuch):
        session.switch_scheme("z")
    with pytest.raises(NoSuch):
        session.handle("rod-height", ("a", "s", "t9", "front"))
    assert (session.wall_id, session.scheme_id) == ("a", "s")


def test_a_room_without_walls_can_be_open() -> None:
    session = Session(Room(), TRADE)
    assert (session.wall_id, session.scheme_id) == ("", None)
    session.commit(room(), msg("Add a wall"), ("a",))
    assert (session.wall_id, session.scheme_id) == ("a", "s")


def test_listeners_are_told_in_order_until_they_leave() -> None:
    session = Session(room(), TRADE)
    told: list[tuple[str, str]] = []

    def first(event: str) -> None:
        told.append(("first", event))
        session.changed.disconnect(first)

    def second(event: str) -> None:
        told.append(("second", event))

    session.changed.connect(first)
    session.changed.connect(second)
    session.changed.connect(second)
    assert len(session.changed) == 2
    session.selection = ("a",)
    session.selection = ("a",)
    session.selection = None
    assert told == [("first", "selection"), ("second", "selection"), ("second", "selection")]
    session.changed.disconnect(first)


def test_the_same_room_is_worked_out_once() -> None:
    session = Session(room(), TRADE)
    assert session.set_out() is session.set_out()
    assert session.findings() is session.findings()
    assert session.handles() is session.handles()
    assert session.scene() is session.scene()
    runs = session.pipeline.set_out.calls
    session.commit(replace_at(session.committed, ("a",), name="North"), msg("Rename"))
    session.set_out()
    session.undo()
    session.set_out()
    session.redo()
    session.set_out()
    assert session.pipeline.set_out.calls == runs + 1


def test_a_room_that_could_not_be_saved_is_never_committed() -> None:
    session = Session(room(), TRADE)
    before = session.committed
    with pytest.raises(BadInput, match="width"):
        session.commit(replace_at(before, ("a", "w1"), width=Length(-1.0, "-1 mm")), msg("Measure"))
    assert session.committed is before
    assert session.edits == 0
