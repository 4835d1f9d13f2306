"""The long form of what hangs: one step to any of its headings."""

from __future__ import annotations


def test_a_heading_comes_to_the_top_with_the_keyboard_under_it(window):
    window.drawers[2].set_open(True)
    hang, area = window.hang, window.drawers[2].area
    texts = [hang.go_to.itemText(index) for index in range(hang.go_to.count())]
    assert {"Rod", "Hem", "Panel 1, left", "Panel 2, right", "Bracket 1", "As built"} <= set(texts)
    for heading in ("Hem", "Rod"):
        hang.go_to.choose(str(texts.index(heading)))
        _, title, editor = hang.form.places()[texts.index(heading)]
        assert title.text() == heading
        assert title.mapTo(area.viewport(), title.rect().topLeft()).y() == 0
        assert editor.hasFocus()
        assert hang.go_to.currentIndex() == -1


def test_the_buttons_that_add_are_found_from_the_top(window):
    window.drawers[2].set_open(True)
    hang, area = window.hang, window.drawers[2].area
    hang.go_to.choose(str(hang.go_to.count() - 1))
    assert hang.add_bracket.hasFocus()
    low = hang.buttons.mapTo(area.viewport(), hang.buttons.rect().bottomLeft()).y()
    assert 0 < low <= area.viewport().height()
