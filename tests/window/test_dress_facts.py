"""A pelmet and a blind in the form: put on, set, and taken away; a pelmet's edge is dragged in the window."""

from __future__ import annotations

from elevation.room.find import treatment_of
from tests.window.test_tie_facts import enter


def test_a_pelmet_is_put_on_in_proportion_and_taken_away(window):
    session, ref = window.session, window.hang.layer_ref[:3]
    before = {(one.rule, one.subject) for one in session.findings()}
    enter(window, "pelmet", True)
    pelmet = treatment_of(session.committed, ref).pelmet
    assert pelmet.kind == "board"
    new = {(one.rule, one.subject) for one in session.findings()} - before
    assert not {rule for rule, _ in new if rule.startswith("pelmet-m") or rule == "pelmet-clear"}
    enter(window, "pelmet.kind", "valance")
    assert treatment_of(session.committed, ref).pelmet.kind == "valance"
    assert {"pelmet-depth", "pelmet-top", "pelmet-left", "pelmet-right"} <= {one.axis for one in session.handles()}
    enter(window, "pelmet", False)
    assert treatment_of(session.committed, ref).pelmet is None


def test_a_blind_is_put_behind_given_a_cord_and_taken_away(window):
    session, ref = window.session, window.hang.layer_ref[:3]
    enter(window, "blind", True)
    assert treatment_of(session.committed, ref).blind.cord == "none"
    enter(window, "blind.place", "wall")
    enter(window, "blind.cord", "loop")
    enter(window, "blind.cord_side", "left")
    blind = treatment_of(session.committed, ref).blind
    assert (blind.place, blind.cord, blind.cord_side) == ("wall", "loop", "left")
    enter(window, "blind", False)
    assert treatment_of(session.committed, ref).blind is None


def test_a_shops_price_is_typed_with_shop_and_day_and_taken_away(make_window, demo_room):
    window = make_window(demo_room())
    session, form = window.session, window.hang.form
    ref = (
        session.wall_id,
        session.committed.walls[0].schemes[0].id,
        session.committed.walls[0].schemes[0].treatments[0].id,
    )

    def offer():
        return session.committed.walls[0].schemes[0].treatments[0].offer

    def enter(field, text):
        form.enter(form.rows[ref, field].tag, text)
        window.hang.refresh()

    assert (ref, "offer.currency") not in form.rows
    enter("offer.price", "249,50")
    assert offer().price == 249.5
    enter("offer.currency", "USD")
    enter("offer.place", "the shop")
    enter("offer.date", "2026-03-31")
    assert (offer().currency, offer().place, offer().date) == ("USD", "the shop", "2026-03-31")
    enter("offer.date", "yesterday")
    assert offer().date == "2026-03-31"
    enter("offer.price", "1,000")
    assert offer().price == 249.5
    enter("offer.price", "")
    assert offer() is None
    session.undo()
    assert offer().price == 249.5
