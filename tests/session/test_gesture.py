"""A drag from press to release: candidate, Esc, typed digits, one entry, and how often anything is recomputed."""

from __future__ import annotations

import pytest

from elevation.errors import BadInput
from elevation.findings.all_rules import MEMO
from elevation.room.edits import replace_rod
from elevation.room.file import dump_room, load_bytes
from elevation.room.find import layer_of
from elevation.room.model import Hem, Room
from elevation.session.session import Session
from elevation.setting_out.whole import keeper_of
from elevation.trade.tables import load_trade
from elevation.words import Style
from elevation.words.say import say
from tests.handles.rooms import INCH, LAYER, SECOND, SECOND_TREATMENT, WINDOW, held, inch, room

TRADE = load_trade()
PX_MM = 0.1


def session_on(start: Room | None = None) -> Session:
    return Session(start or room(), TRADE)


def height_of(session: Session) -> str:
    return layer_of(session.room, LAYER).rod.height.at.text


def test_the_candidate_is_shown_and_the_committed_room_waits() -> None:
    session = session_on()
    start = session.committed
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.move(90.3 * INCH, PX_MM)
    assert height_of(session) == "6 5/16 in"
    assert session.committed is start
    assert session.set_out().treatments[0].layers[0].support.height_mm == pytest.approx(90.3125 * INCH)
    gesture.release()
    assert session.gesture is None
    assert session.committed is session.room
    assert height_of(session) == "6 5/16 in"


def test_a_gesture_is_one_entry_however_many_moves() -> None:
    session = session_on()
    gesture = session.press(session.handle("rod-height", LAYER))
    for step in range(50):
        gesture.move((88 + step / 10) * INCH, PX_MM)
        session.set_out()
    gesture.release()
    assert session.edits == 1
    assert session.undo_label is not None
    assert say(session.undo_label, Style()) == "Move rod height, Window 1"
    session.undo()
    assert session.committed == room()
    assert session.redo_label is not None
    session.redo()
    assert height_of(session) == "8 7/8 in"


def test_no_entry_if_nothing_changed() -> None:
    session = session_on()
    start = session.committed
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.release()
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.move(95 * INCH, PX_MM)
    gesture.move(88 * INCH, PX_MM)
    gesture.release()
    assert session.edits == 0
    assert session.committed is start
    assert not session.is_modified


def test_a_drag_out_and_back_leaves_no_entry_though_it_made_rooms() -> None:
    session = session_on()
    start = session.committed
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.move(95 * INCH, PX_MM)
    assert session.room is not start
    gesture.move(88 * INCH, PX_MM)
    assert session.room == start
    gesture.release()
    assert session.edits == 0
    assert not session.is_modified


def test_a_gesture_ends_once() -> None:
    session = session_on()
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.move(90.3 * INCH, PX_MM)
    gesture.release()
    committed = session.committed
    gesture.move(95 * INCH, PX_MM)
    gesture.type("9")
    gesture.release()
    gesture.cancel()
    assert gesture.is_over
    assert session.edits == 1
    assert session.committed is committed


def test_while_a_figure_is_typed_the_pointer_is_not_followed() -> None:
    session = session_on()
    gesture = session.press(session.handle("rod-height", LAYER))
    assert not gesture.is_typed
    gesture.type("7")
    assert gesture.is_typed
    told: list[str] = []
    session.changed.connect(told.append)
    gesture.move(95 * INCH, PX_MM)
    assert told == []
    assert height_of(session) == "7 in"
    gesture.type("")
    assert not gesture.is_typed
    assert height_of(session) == "11 in"


def test_an_emptied_text_after_a_click_gives_back_the_start() -> None:
    session = session_on(replace_rod(room(), LAYER, height=held("above-casing", "4 1/32")))
    handle = session.handle("rod-height", LAYER)
    gesture = session.press(handle)
    gesture.move(handle.value_mm + 1 * PX_MM, PX_MM)
    gesture.type("7")
    gesture.type("")
    assert height_of(session) == "4 1/32 in"


@pytest.mark.parametrize(("px", "moves"), [(1.9, False), (2.0, False), (2.1, True)])
def test_a_click_is_no_drag(px: float, moves: bool) -> None:
    # 4 1/32 in is no graduation: only a drag may round it.
    session = session_on(replace_rod(room(), LAYER, height=held("above-casing", "4 1/32")))
    handle = session.handle("rod-height", LAYER)
    gesture = session.press(handle)
    gesture.move(handle.value_mm + px * PX_MM, PX_MM)
    assert (height_of(session) != "4 1/32 in") is moves
    gesture.release()
    assert session.edits == moves


def test_a_drag_that_comes_back_near_its_start_is_still_a_drag() -> None:
    session = session_on(replace_rod(room(), LAYER, height=held("above-casing", "4 1/32")))
    handle = session.handle("rod-height", LAYER)
    gesture = session.press(handle)
    gesture.move(handle.value_mm + 100 * PX_MM, PX_MM)
    gesture.move(handle.value_mm + 1 * PX_MM, PX_MM)
    assert height_of(session) == "4 1/16 in"


def test_escape_gives_back_the_very_same_room() -> None:
    session = session_on()
    start, set_out = session.committed, session.set_out()
    gesture = session.press(session.handle("rod-left", LAYER))
    gesture.move(20 * INCH, PX_MM)
    assert session.set_out() is not set_out
    gesture.cancel()
    assert session.room is start
    assert session.set_out() == set_out
    assert session.edits == 0
    gesture.move(10 * INCH, PX_MM)
    gesture.release()
    assert session.room is start


@pytest.mark.parametrize("act", ["undo", "redo", "commit", "switch", "save"])
def test_anything_else_ends_the_drag_without_an_edit(act: str, tmp_path) -> None:
    session = session_on()
    start = session.committed
    gesture = session.press(session.handle("rod-left", LAYER))
    gesture.move(20 * INCH, PX_MM)
    if act == "commit":
        session.commit(start, gesture.handle.name)
    elif act == "switch":
        session.switch_wall("a")
    elif act == "save":
        session.save(tmp_path / "a.room.json")
    else:
        getattr(session, act)()
    assert gesture.is_over
    assert session.room is start
    assert session.edits == 0


# --- typed digits --------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "kept"),
    [("7", "7 in"), ("4 3/32", "4 3/32 in"), ("12.7 cm", "12.7 cm"), ("4 + 1/2", "4 in + 1/2 in"), ("-1", "-1 in")],
)
def test_typed_digits_set_the_exact_figure(text: str, kept: str) -> None:
    session = session_on()
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.move(95 * INCH, PX_MM)
    gesture.type(text)
    assert height_of(session) == kept
    gesture.move(101 * INCH, PX_MM)
    assert height_of(session) == kept
    gesture.release()
    assert height_of(session) == kept


def test_an_emptied_text_gives_the_handle_back_to_the_pointer() -> None:
    session = session_on()
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.move(95.3 * INCH, PX_MM)
    gesture.type("7")
    gesture.type("")
    assert height_of(session) == "11 5/16 in"


def test_what_cannot_be_read_or_reached_changes_nothing() -> None:
    session = session_on()
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.type("7")
    with pytest.raises(BadInput):
        gesture.type("7 apples")
    with pytest.raises(BadInput, match=r"out of reach.* 23 1/2 in"):
        gesture.type("24")
    assert height_of(session) == "7 in"


def test_typed_digits_move_both_ends_or_one() -> None:
    session = session_on()
    gesture = session.press(session.handle("rod-left", LAYER))
    gesture.type("12")
    gesture.release()
    assert layer_of(session.room, LAYER).rod.right == held("beyond-opening", 12)
    gesture = session.press(session.handle("rod-left", LAYER), alone=True)
    gesture.type("14")
    gesture.release()
    rod = layer_of(session.room, LAYER).rod
    assert (rod.left, rod.right) == (held("beyond-opening", 14), held("beyond-opening", 12))


@pytest.mark.parametrize(
    ("text", "hem"),
    [
        ("2 3/32", Hem("clear", inch("2 3/32"))),
        ("-1 3/32", Hem("break", inch("1 3/32"))),
        ("1 - 4", Hem("break", inch(3))),
        ("-1 - 4", Hem("puddle", inch(5))),
        ("2 - 2", Hem("kiss")),
    ],
)
def test_a_typed_hem_below_the_floor_is_cloth_on_it(text: str, hem: Hem) -> None:
    session = session_on()
    gesture = session.press(session.handle("hem", LAYER))
    gesture.type(text)
    gesture.release()
    assert layer_of(session.committed, LAYER).hem == hem
    assert load_bytes(dump_room(session.committed), "now") == session.committed


def test_typed_digits_in_a_room_in_millimetres_are_millimetres() -> None:
    metric = Room(unit="mm", walls=room().walls)
    session = session_on(metric)
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.type("150")
    assert height_of(session) == "150 mm"


# --- what is said --------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("y_in", "told"),
    [
        # The casing's upper edge is at 84 in: a hair above, at it, a hair below.
        (84 + 1 / 16, "¹⁄₁₆ in above the casing"),
        (84.0, "0 in above the casing"),
        (84 - 1 / 16, "¹⁄₁₆ in below the casing's upper edge"),
    ],
)
def test_nobody_reads_less_than_nothing_above_a_casing(y_in: float, told: str) -> None:
    session = session_on()
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.move(y_in * INCH, 0.01)
    assert say(gesture.readout, Style()).startswith(told)


def test_the_readout_says_figure_reason_and_the_rule_broken() -> None:
    session = session_on()
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.move(100.05 * INCH, 0.5)
    assert say(gesture.readout, Style()) == "16 in above the casing: two thirds up from head to ceiling"
    assert gesture.stuck.breaks is None
    gesture.move(86.02 * INCH, 0.5)
    assert gesture.stuck.breaks == "rod-low"
    gesture.move(107 * INCH, 0.01)
    assert gesture.stuck.breaks == "rod-under-ceiling"


def test_what_was_broken_before_and_does_not_change_is_not_held_against_the_drag() -> None:
    # The brackets reach only 1 in beyond the second window: broken, but not by moving the first rod.
    session = session_on(room(openings=(WINDOW, SECOND), more=(SECOND_TREATMENT,)))
    assert any(finding.rule == "reach-short" for finding in session.findings())
    gesture = session.press(session.handle("rod-height", LAYER))
    gesture.move(89 * INCH, PX_MM)
    assert gesture.stuck.breaks is None


# --- counters ------------------------------------------------------------------------------------------------


def test_moves_cost_nothing_until_someone_looks() -> None:
    session = session_on()
    session.findings()
    gesture = session.press(session.handle("rod-height", LAYER))
    runs = session.pipeline.set_out.calls
    told: list[str] = []
    session.changed.connect(told.append)
    for step in range(200):
        gesture.move((89 + step / 40) * INCH, PX_MM)
    assert session.pipeline.set_out.calls == runs
    assert told == ["room"] * 200
    for _ in range(5):
        session.set_out()
        session.findings()
    assert session.pipeline.set_out.calls == runs + 1
    gesture.release()
    session.set_out()
    session.findings()
    assert session.pipeline.set_out.calls == runs + 1


def test_dragging_one_rod_recomputes_no_other_treatment() -> None:
    session = session_on(room(openings=(WINDOW, SECOND), more=(SECOND_TREATMENT,)))
    session.findings()
    gesture = session.press(session.handle("rod-height", LAYER))
    keeper = keeper_of("a")
    before, opening_runs, rule_runs = keeper.treatment_runs(), keeper.opening_runs(), MEMO.calls
    set_out_runs = session.pipeline.set_out.calls
    for step in range(1, 21):
        gesture.move((88 + step / 4) * INCH, PX_MM)
        other = session.set_out().treatments[1]
        session.findings()
        assert other is session.set_out().treatments[1]
    after = keeper.treatment_runs()
    first, second = ("a", "s", "t1"), ("a", "s", "t2")
    assert session.pipeline.set_out.calls - set_out_runs == 20
    assert after[first] - before[first] == 20
    assert after[second] == before[second]
    assert keeper.opening_runs() == opening_runs
    assert MEMO.calls - rule_runs == 20


def test_the_selection_is_what_is_dragged() -> None:
    session = session_on()
    told: list[str] = []
    session.changed.connect(told.append)
    session.press(session.handle("rod-height", LAYER))
    assert session.selection == LAYER
    assert told == ["selection"]


def test_with_a_ceiling_point_its_wall_is_selected() -> None:
    session = session_on()
    gesture = session.press(session.handle("ceiling", ("a", "0")))
    assert session.selection == ("a",)
    gesture.move(110 * INCH, PX_MM)
    gesture.release()
    assert session.selection == ("a",)
    session.undo()
    assert session.selection == ("a",)


def test_a_hem_sticks_where_a_panel_from_the_shop_just_clears_the_floor() -> None:
    session = session_on()
    gesture = session.press(session.handle("rod-height", LAYER))
    # On the way up it is held by the rule at 96 in, 12 in above the casing: 8 pixels are 30 mm here.
    gesture.move(96.2 * INCH, 3.8)
    assert say(gesture.readout, Style()).endswith("the most that is usual")
    gesture.move(97.3 * INCH, 3.8)
    # 95 in + 1/2 in clear + 1 3/4 in for the clips
    assert say(gesture.readout, Style()) == "13¹⁄₄ in above the casing: 95 in panel just clears the floor"
    assert inch("13 1/4") == layer_of(session.room, LAYER).rod.height.at
