"""A tape misread by 10 in and more: typed, shown with the links to measure again, saved and read again; never refused."""

from __future__ import annotations

import re

import pytest

from elevation.room.file import load_room, save_room
from elevation.room.find import wall_of
from tests.window.test_forms import type_into

# The wall of 144 in: 49 1/2 + 3 1/2 + 38 + 3 1/2 + 49 1/2. The opening's right side stands 53 in from the end.
MISREAD = [
    ("gap", "59 1/2", "10 in longer"),
    ("gap", "39 1/2", "10 in shorter"),
    ("gap", "119 1/2", "70 in longer"),  # the opening reaches past the wall's right end
    ("gap_right", "59 1/2", "10 in longer"),
    ("wall", "134", "10 in longer"),
]


@pytest.mark.parametrize(("field", "text", "said"), MISREAD)
def test_a_misread_tape_is_shown_and_kept(window, tmp_path, field, text, said):
    here = (window.session.wall_id,)
    opening = wall_of(window.session.committed, here[0]).openings[0]
    key = {"gap": ((*here, opening.id), "gap"), "gap_right": (here, "gap_right"), "wall": (here, "width")}[field]
    row = window.measurements.row(*key)
    type_into(row.field, text)
    window.refresher.now()
    window.measurements.refresh()
    assert row.field.text().startswith(text)
    shown = window.measurements._closing
    assert shown.isVisible()
    assert said in shown.text()
    assert re.search(r"Measure again: \d", shown.text())
    path = tmp_path / "misread.room.json"
    save_room(window.session.committed, path)
    assert load_room(path) == window.session.committed
