"""The inside of the wall on the canvas: by a switch, and by itself while a bracket is dragged."""

from __future__ import annotations

from elevation.room.find import wall_of
from elevation.window.fact_form import Fact


def layers(window) -> set[str]:
    canvas = window.canvas
    return {group.layer for group in canvas.picture.groups(canvas.viewport, canvas.seen())}


def test_switches_show_framing_and_cables(window):
    assert not layers(window) & {"zone", "band"}
    window.actions_by_name["zones"].trigger()
    assert "zone" in layers(window)
    window.actions_by_name["bands"].trigger()
    assert {"zone", "band"} <= layers(window)
    window.actions_by_name["zones"].trigger()
    assert layers(window) & {"zone", "band"} == {"band"}


def test_a_dragged_bracket_shows_both_and_a_dragged_stud_the_framing(window):
    canvas, session = window.canvas, window.session

    def hold(axis: str) -> set[str]:
        handle = next(one for one in session.handles() if one.axis == axis)
        canvas.hand.press(handle, handle.at, canvas.viewport.to_px(handle.at), alone=False)
        shown = layers(window) & {"zone", "band"}
        canvas.hand.cancel()
        return shown

    assert hold("bracket") == {"zone", "band"}
    assert hold("stud") == {"zone"}
    assert hold("rod-height") == set()
    assert not layers(window) & {"zone", "band"}


def test_a_stud_is_typed_sorted_and_taken_back(window):
    session, panel = window.session, window.standing
    panel.refresh()
    wall = wall_of(session.committed, session.wall_id)
    count = len(wall.studs)
    blank = next(fact for fact in panel.form._facts if fact.field == f"studs.{count}")
    panel.form.enter(blank, type(wall.width)(254.0, "10 in"))
    studs = wall_of(session.committed, session.wall_id).studs
    assert studs[0].text == "10 in"
    assert [stud.mm for stud in studs] == sorted(stud.mm for stud in studs)
    panel.refresh()
    first = next(fact for fact in panel.form._facts if fact.field == "studs.0")
    panel.form.enter(first, None)
    assert wall_of(session.committed, session.wall_id).studs == wall.studs


def test_an_untested_wall_shows_the_short_test_and_no_figure(window):
    session, panel = window.session, window.standing
    panel.refresh()
    made_of = next(fact for fact in panel.form._facts if fact.field == "substrate")
    panel.form.enter(made_of, "not-known")
    panel.refresh()
    notes = [fact for fact in panel.form._facts if isinstance(fact, Fact) and fact.kind == "note"]
    assert len(notes) >= 4  # why, a knock, an outlet's depth, a pin
    assert wall_of(session.committed, session.wall_id).substrate == "not-known"
    assert any(fact.field == "substrate" for fact in session.set_out().missing)
