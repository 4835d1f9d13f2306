"""Tie-backs in the form: put on, set, and taken away."""

from __future__ import annotations

from elevation.room.find import layer_of


def enter(window, field: str, value: object) -> None:
    panel = window.hang
    panel.refresh()
    found = next(fact for fact in panel.form._facts if fact.field == field)
    panel.form.enter(found, value)


def test_tie_backs_are_put_on_set_and_taken_away(window):
    session, ref = window.session, window.hang.layer_ref

    def tie():
        return layer_of(session.committed, ref).tie

    enter(window, "tie", True)
    assert tie().hold == "share-of-drop"
    assert all(panel.tie is not None for panel in session.set_out().treatments[0].layers[0].panels)
    enter(window, "tie.hold", "two-thirds")
    assert tie().share == 2 / 3
    enter(window, "tie.hold", "above-floor")
    assert (tie().hold, tie().at is not None) == ("above-floor", True)
    enter(window, "tie.kind", "arm")
    enter(window, "tie.there", True)
    assert (tie().kind, tie().there) == ("arm", True)
    enter(window, "tie.hold", "third")
    assert (tie().hold, tie().at) == ("share-of-drop", None)
    enter(window, "tie", False)
    assert tie() is None
