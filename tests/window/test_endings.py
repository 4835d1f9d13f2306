"""The ending of a file that is written: the one typed, else that of the kind chosen."""

from __future__ import annotations

from pathlib import Path

import pytest

from elevation.window.endings import with_ending

KINDS = "PDF to print (*.pdf);;Drawing for editing (*.svg);;Picture (*.png)"
ROOMS = "Rooms (*.room.json)"


@pytest.mark.parametrize(
    ("typed", "kinds", "chosen", "written"),
    [
        ("wall.pdf", KINDS, "PDF to print (*.pdf)", "wall.pdf"),
        ("wall.pdf", KINDS, "Picture (*.png)", "wall.png"),  # left as proposed: the kind was chosen
        ("mine.pdf", KINDS, "Picture (*.png)", "mine.pdf"),  # typed by hand: what is typed counts
        ("mine", KINDS, "Drawing for editing (*.svg)", "mine.svg"),
        ("wall 1.5", KINDS, "Picture (*.png)", "wall 1.5.png"),
        ("mine.SVG", KINDS, "PDF to print (*.pdf)", "mine.SVG"),
        ("mine", KINDS, "", "mine.pdf"),  # some desktops give no kind back
        ("kitchen", ROOMS, "Rooms (*.room.json)", "kitchen.room.json"),
        ("kitchen.room.json", ROOMS, "Rooms (*.room.json)", "kitchen.room.json"),
        ("kitchen.json", ROOMS, "Rooms (*.room.json)", "kitchen.json"),
    ],
)
def test_the_ending_is_what_was_typed_or_chosen(typed, kinds, chosen, written):
    assert with_ending(Path("/home") / typed, "wall.pdf", kinds, chosen) == Path("/home") / written
