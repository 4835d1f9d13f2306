"""The drilling sheet on the page: holes, bars and axis measured back from the PDF to a tenth of a millimetre."""

from __future__ import annotations

import io
from itertools import combinations, pairwise

import pypdf
import pytest

from elevation.output.painters.pdf import to_pdf
from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.drilling import drill_places, mirrored
from elevation.room.file import load_room
from elevation.sheet.work.true_size import allowed_off, bar_lengths
from elevation.sheet.work.whole import drilling_pages
from elevation.trade.tables import load_trade
from tests.cross.vectors import MM_PER_POINT, pdf_strokes

TRADE = load_trade()
CROSS = 14.0


def crosses(strokes):
    """Middles of the crosses: an upright and a level stroke of the cross's length with one middle."""
    arms = [one for one in strokes if abs(max(abs(one.x2 - one.x1), abs(one.y2 - one.y1)) - CROSS) < 0.05]
    found = []
    for one, other in combinations(arms, 2):
        (x1, y1), (x2, y2) = one.middle, other.middle
        is_crossed = abs(one.x1 - one.x2) < 0.01 and abs(other.y1 - other.y2) < 0.01
        is_crossed |= abs(other.x1 - other.x2) < 0.01 and abs(one.y1 - one.y2) < 0.01
        if is_crossed and abs(x1 - x2) < 0.1 and abs(y1 - y2) < 0.1:
            found.append(one.middle)
    return sorted(found, key=lambda at: (-at[1], at[0]))


@pytest.mark.parametrize("name", ["1-bedroom", "4-flat", "7-guest-room", "5-kitchen", "6-hall"])
def test_holes_and_bars_have_their_true_size(name, qapp):
    room = load_room(demo_rooms() / f"{name}.room.json")
    dressed = dress(room, TRADE)
    pages = drilling_pages((dressed,), TRADE)
    data = to_pdf(pages)
    expected = []
    for wall in dressed.walls:
        for laid in wall.treatments:
            rods = {}
            for place in drill_places(wall, laid, TRADE):
                rods.setdefault(place.ref[:-1], []).append(place)
            expected += [pair[0] for rod in rods.values() for pair in mirrored(rod)]
    assert len(pypdf.PdfReader(io.BytesIO(data)).pages) == len(expected)
    for number, place in enumerate(expected):
        strokes = pdf_strokes(data, number)
        found = crosses(strokes)
        wanted = sorted(place.kit.holes_mm, reverse=place.on != "ceiling")
        assert len(found) == len(wanted)
        axis = 1 if place.on != "ceiling" else 0
        gaps = [abs(b[axis] - a[axis]) for a, b in pairwise(found)]
        assert gaps == pytest.approx([abs(b - a) for a, b in pairwise(wanted)], abs=0.1)
        lengths = [max(abs(one.x2 - one.x1), abs(one.y2 - one.y1)) for one in strokes]
        for bar in bar_lengths(room.unit):
            assert any(abs(length - bar) < 0.1 for length in lengths)


def test_a_page_is_as_large_as_its_paper(qapp):
    room = load_room(demo_rooms() / "1-bedroom.room.json")
    page = pypdf.PdfReader(io.BytesIO(to_pdf(drilling_pages((dress(room, TRADE),), TRADE)))).pages[0]
    # ASME Y14.1, size A, upright; Qt's writer rounds to whole points.
    assert float(page.mediabox.width) * MM_PER_POINT == pytest.approx(215.9, abs=0.177)
    assert float(page.mediabox.height) * MM_PER_POINT == pytest.approx(279.4, abs=0.177)


def test_what_a_bar_may_be_off_by_hand():
    """Holes 3 in apart may be off 1/32 in: a 6 in bar 1/16 in, a 7 in bar 7/96 in."""
    room = load_room(demo_rooms() / "1-bedroom.room.json")
    dressed = dress(room, TRADE)
    place = drill_places(dressed.walls[0], dressed.walls[0].treatments[0], TRADE)[0]
    assert allowed_off(place, 6 * 25.4) == pytest.approx(25.4 / 16)
    assert allowed_off(place, 7 * 25.4) == pytest.approx(25.4 * 7 / 96)
