"""The rows of the form about cloth and headings."""

from __future__ import annotations

from msgspec.structs import replace

from elevation.room.edits import replace_rod
from elevation.room.find import layer_of, panel_of
from elevation.room.model import Pelmet
from elevation.units import Length
from elevation.words import msg
from tests.findings.rooms import at


def test_seldom_headings_are_a_step_away(window):
    ref = window.hang.layer_ref
    choice = window.hang.form.rows[ref, "heading"].editor
    texts = [choice.itemText(index) for index in range(choice.count())]
    assert texts[-1] == "more …"
    assert "wave" not in texts
    choice.choose("wave")
    assert choice.currentText() == "wave"
    assert layer_of(window.session.room, ref).heading == "wave"
    texts = [choice.itemText(index) for index in range(choice.count())]
    assert texts.count("wave") == 1
    assert "more …" not in texts


def test_the_last_entry_unfolds_and_chooses_nothing(window):
    ref = window.hang.layer_ref
    before = window.session.committed
    choice = window.hang.form.rows[ref, "heading"].editor
    named = choice.currentText()
    choice.setCurrentIndex(choice.count() - 1)
    choice.activated.emit(choice.count() - 1)
    choice.hidePopup()
    assert window.session.committed is before
    assert choice.currentText() == named
    assert choice.findText("goblet pleats") >= 0


def test_cloth_and_lining_are_chosen_and_the_body_follows(window):
    ref = window.hang.layer_ref
    rows = window.hang.form.rows
    rows[ref, "fabric.row"].editor.choose("voile")
    assert layer_of(window.session.room, ref).fabric.body == "sheer"
    rows[ref, "fabric.lining"].editor.choose("lining-sateen")
    rows[ref, "fabric.interlining"].editor.choose("bump")
    fabric = layer_of(window.session.room, ref).fabric
    assert (fabric.row, fabric.lining, fabric.interlining, fabric.body) == ("voile", "lining-sateen", "bump", "interlined")
    rows[ref, "fabric.interlining"].editor.choose("")
    assert layer_of(window.session.room, ref).fabric.body == "lined"


def test_weights_are_typed_and_refused(window):
    ref = window.hang.layer_ref
    form = window.hang.form
    fact = form.rows[ref, "fabric.grams"].tag
    form.enter(fact, "5.3 oz")
    assert round(layer_of(window.session.room, ref).fabric.grams) == 180
    told = []
    form.refused.connect(told.append)
    form.enter(fact, "thick")
    assert "is no weight of cloth" in told[-1]
    form.enter(fact, "")
    assert layer_of(window.session.room, ref).fabric.grams is None
    panel = (*ref, layer_of(window.session.room, ref).panels[0].id)
    form.enter(form.rows[panel, "weight_kg"].tag, "2 lb")
    assert round(panel_of(window.session.room, panel).weight_kg, 4) == 0.9072
    form.enter(form.rows[panel, "weight_kg"].tag, "0 kg")
    assert "more than 0" in told[-1]


def test_cloth_to_buy_follows_the_rod(window):
    drawer = window.drawers[-1]
    assert drawer.head.text() == "Cloth to buy"
    drawer.set_open(True)
    before = window.cloth.text()
    assert "of flat cloth" in before
    ref = window.hang.layer_ref
    room = window.session.committed
    at = layer_of(room, ref).rod.left.at
    longer = replace_rod(room, ref, left=replace(layer_of(room, ref).rod.left, at=Length(at.mm + 508.0, "")))
    window.session.commit(longer, msg("Change {what}", what=msg("rod")), ref)
    window.refresher.now()
    after = window.cloth.text()
    assert after != before
    window.refresh()
    assert window.cloth.text() == after


def test_a_valance_is_told_with_the_cloth_of_its_front_layer(window):
    window.drawers[-1].set_open(True)
    assert "The valance takes" not in window.cloth.text()
    ref = window.hang.layer_ref
    pelmet = Pelmet(Length(350.0, ""), Length(80.0, ""), Length(100.0, ""), Length(100.0, ""), Length(150.0, ""), "valance")
    room = at(window.session.committed, ref[:3], pelmet=pelmet)
    window.session.commit(room, msg("Change {what}", what=msg("rod")), ref)
    window.refresher.now()
    # A rod of 60 in, 100 mm beyond each end, 150 mm of return at each: 2,024 mm at 2.5, in widths of 54 in.
    assert "The valance takes 4 widths, each cut 20" in window.cloth.text()
