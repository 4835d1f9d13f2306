"""The bench sheet: its marks, read back from the picture, are the set-out's lengths to the tape."""

from __future__ import annotations

import pytest

from elevation.places import demo_rooms
from elevation.planning.cut_list import cut_list
from elevation.planning.dressed import dress
from elevation.planning.rod_pieces import mark_of, piece_lengths, rod_pieces
from elevation.room.file import load_room
from elevation.room.style import style_for
from elevation.sheet.records import Text
from elevation.sheet.type_metrics import text_width
from elevation.sheet.work.bench import bench_sheet
from elevation.sheet.work.page import Sheet
from elevation.trade.tables import load_trade
from elevation.words import Mm, msg, say
from tests.strategies import random_room

TRADE = load_trade()
DEMOS = sorted(demo_rooms().glob("*.room.json"))


def made(room):
    pieces = rod_pieces((dress(room, TRADE),), TRADE)
    return pieces, cut_list(pieces, TRADE.saws["hacksaw"], TRADE, seconds=1.0)


def texts(pages):
    return [record for page in pages for group in page.groups for record in group.records if isinstance(record, Text)]


@pytest.mark.parametrize("path", DEMOS, ids=lambda path: path.name.split(".")[0])
def test_every_piece_and_every_running_mark_of_a_demo_room_is_said(path):
    room = load_room(path)
    style = style_for(room)
    pieces, cuts = made(room)
    pages = bench_sheet(cuts, TRADE.saws["hacksaw"], Sheet(room.name, style, date="2026-03-01"))
    said = [record.text for record in texts(pages)]
    for piece in pieces:
        assert piece.mark in said or any(text.startswith(f"{piece.mark}  ") for text in said)
        assert say(msg("{length}", length=Mm(piece.length_mm)), style) in said
    for one in cuts:
        for bar in one.plan.bars:
            for mark in bar.marks_mm:
                assert say(msg("{length}", length=Mm(mark)), style) in said


@pytest.mark.parametrize("seed", range(40))
def test_no_text_leaves_the_page(seed):
    room = random_room(seed)
    _, cuts = made(room)
    for page in bench_sheet(cuts, TRADE.saws["hacksaw"], Sheet(room.name, style_for(room), date="2026-03-01")):
        assert page.page is not None
        for text in texts([page]):
            wide = text_width(text.text, text.height, text.weight)
            left = text.at[0] - {"left": 0.0, "middle": wide / 2, "right": wide}[text.align]
            assert left >= 14.0
            assert left + wide <= page.page.width_mm - 14.0
            assert 10.0 <= text.at[1] <= page.page.height_mm - 10.0


@pytest.mark.parametrize("seed", range(60))
def test_the_pieces_of_a_rod_are_together_its_cut_length(seed):
    room = random_room(seed)
    for wall in dress(room, TRADE).walls:
        for laid in wall.treatments:
            for layer in laid.layers:
                if layer.support.kind == "tension-rod":
                    continue
                lengths = piece_lengths(layer.support, TRADE)
                assert len(lengths) == layer.support.pieces
                assert sum(lengths) == pytest.approx(layer.support.cut_length_mm)


def test_letters_go_on_after_z():
    assert [mark_of(number) for number in (0, 25, 26, 51, 52, 701, 702)] == ["A", "Z", "AA", "AZ", "BA", "ZZ", "AAA"]
