"""Labels: one for each piece by the names of the other sheets, none off the page, no word lost."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.drilling import drill_places
from elevation.planning.hanging import hanging_steps
from elevation.planning.labels import labels_of
from elevation.planning.piece_names import hung_layers, panel_names
from elevation.planning.rod_pieces import rod_pieces
from elevation.planning.sewing.said import piece_mark
from elevation.planning.sewing.whole import sewing_of
from elevation.room.file import load_room
from elevation.room.style import style_for
from elevation.sheet.work.whole import labels_pages, labels_rows, sewing_pages
from elevation.trade.tables import load_trade
from elevation.words import say
from tests.planning.test_sewing import t21
from tests.sheet.pages import check_inside, texts
from tests.strategies import random_room

TRADE = load_trade()
DEMOS = sorted(demo_rooms().glob("*.room.json"))


def marks(labels, kind, style):
    return [say(label.mark, style) for label in labels if label.kind == kind]


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.name.split(".")[0])
def test_every_piece_of_a_demo_room_has_its_label(path):
    room = load_room(path)
    dressed, style = dress(room, TRADE), style_for(room)
    labels = labels_of((dressed,), TRADE)
    # Rods by the letters of the bench sheet, brackets by the numbers of the drilling and hanging sheets.
    assert sorted(marks(labels, "rod", style)) == sorted(piece.mark for piece in rod_pieces((dressed,), TRADE))
    holes = [hole for hung in hung_layers(dressed) for hole in drill_places(hung.wall, hung.laid, TRADE)]
    assert len(set(marks(labels, "bracket", style))) == len({hole.mark for hole in holes})
    assert marks(labels, "panel", style) == [say(name.mark, style) for name in panel_names(dressed).values()]
    cut = [
        say(piece_mark(piece), style)
        for bolt in sewing_of(dressed, TRADE).bolts
        for piece in bolt.pieces
        if piece.count > 1 or bolt.use != "face"
    ]
    assert sorted(marks(labels, "cloth", style)) == sorted(cut)
    assert len(labels_rows((dressed,), TRADE)) == len(labels) + 1


@pytest.mark.parametrize("language", ["en", "de"])
def test_no_word_is_lost_and_nothing_leaves_the_page(language):
    rooms = [replace(load_room(path), language=language) for path in DEMOS[:5]]
    dressed = tuple(dress(room, TRADE) for room in rooms)
    pages = labels_pages(dressed, TRADE)
    check_inside(pages)
    drawn = " ".join(text.text for text in texts(pages))
    for label in labels_of(dressed, TRADE):
        style = style_for(rooms[label.at])
        for message in (label.name, label.side, *((label.size,) if label.size else ())):
            assert all(word in drawn for word in say(message, style).split())


@pytest.mark.parametrize("seed", range(8))
def test_labels_of_random_rooms_stay_on_the_page(seed):
    dressed = dress(random_room(seed), TRADE)
    if labels_of((dressed,), TRADE):
        check_inside(labels_pages((dressed,), TRADE))


def test_panels_have_one_name_on_every_sheet():
    room = load_room(demo_rooms() / "7-guest-room.room.json")
    dressed, style = dress(room, TRADE), style_for(room)
    sewn = " ".join(text.text for text in texts(sewing_pages((dressed,), TRADE)))
    labelled = " ".join(text.text for text in texts(labels_pages((dressed,), TRADE)))
    for hung in hung_layers(dressed):
        steps = hanging_steps(room, hung.wall, hung.laid, TRADE)
        hanging = " ".join(say(text, style) for one in steps for text in (one.text, *one.details))
        for panel in hung.layer.panels:
            name = panel_names(dressed)[panel.ref]
            assert say(name.mark, style) in sewn
            assert say(name.mark, style) in labelled
            for sheet in (sewn, labelled, hanging):
                assert say(name.name, style) in sheet


def test_a_half_width_says_where_its_cut_edge_goes():
    labels = labels_of((dress(t21(), TRADE),), TRADE)
    style = style_for(t21())
    halves = {say(one.mark, style): say(one.side, style) for one in labels if "cut edge" in say(one.side, style)}
    assert halves["1L-2"].endswith("to the left")
    assert halves["1R-2"].endswith("to the right")
