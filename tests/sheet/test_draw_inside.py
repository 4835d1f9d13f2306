"""What is drawn of the inside of a wall: likely things dashed, found ones whole, labels that fit, boards under cloth."""

from __future__ import annotations

import pytest

from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.draw_inside import band_group, zone_group
from elevation.sheet.drawing import draw_wall
from elevation.sheet.elevation import inside_where_found
from elevation.sheet.records import LAYERS, Fill, Line, Polyline, Text
from elevation.trade import load_trade
from elevation.words import Style
from tests.findings.rooms import INCH, good_room, inch, obstacle, with_obstacle
from tests.findings.test_board import boarded

TRADE = load_trade()
STYLE = Style()


def out(**wall: object) -> SetOut:
    return set_out_afresh(good_room(**wall), "w1", "s1", TRADE)


def texts(set_out: SetOut, scale: float = 12.0, style: Style = STYLE) -> list[Text]:
    return [record for record in zone_group(set_out, style, scale).records if isinstance(record, Text)]


def test_what_is_likely_is_dashed_and_what_was_found_is_not() -> None:
    set_out = out(substrate="board-timber-studs", studs=(inch(20),))
    outlines = [record for record in zone_group(set_out, STYLE, 12.0).records if isinstance(record, Polyline)]
    assert len(outlines) == len(set_out.zones)
    whole = [one for one in outlines if not one.pen.dash]
    assert [min(x for x, _ in one.points) / INCH for one in whole] == pytest.approx([19.25])
    # Faint: never wider than a narrow line.
    assert all(one.pen.width <= 0.25 for one in outlines)


def test_labels_ask_for_a_probe_once_a_kind() -> None:
    said = [text.text for text in texts(out(substrate="board-timber-studs", studs=(inch(20),)))]
    assert sorted(said) == ["likely header: probe to confirm", "likely stud: probe to confirm", "stud found"]
    assert {text.text for text in texts(out(substrate="concrete"))} == {
        "likely lintel of concrete or steel: probe to confirm",
        "too near the edge to drill",
    }


def test_a_label_that_does_not_fit_is_left_out() -> None:
    # At 1:200 the header is not a millimetre high on paper.
    assert "likely header: probe to confirm" not in [
        text.text for text in texts(out(substrate="board-timber-studs"), scale=200.0)
    ]


def test_labels_stand_clear_of_furniture_and_openings() -> None:
    room = with_obstacle(
        good_room(substrate="board-timber-studs", studs=(inch(20),)), obstacle("furniture", 0, 0, 40 * INCH, 1200)
    )
    set_out = set_out_afresh(room, "w1", "s1", TRADE)
    for text in texts(set_out):
        if text.turn:
            assert not (0 < text.at[0] < 40 * INCH and text.at[1] < 1200)


def test_the_sheet_shows_the_inside_only_where_somebody_looked() -> None:
    assert inside_where_found(out(substrate="board-timber-studs"), STYLE, 24.0) == ()
    (group,) = inside_where_found(out(substrate="board-timber-studs", studs=(inch(20),)), STYLE, 24.0)
    assert group.layer == "zone"


def test_bands_are_tinted_between_dashed_edges() -> None:
    room = with_obstacle(good_room(), obstacle("outlet", 500, 300, 70, 115))
    group = band_group(set_out_afresh(room, "w1", "s1", TRADE), STYLE)
    fills = [record for record in group.records if isinstance(record, Fill)]
    edges = [record for record in group.records if isinstance(record, Line)]
    assert (group.layer, len(fills), len(edges)) == ("band", 2, 4)
    assert all(edge.pen.dash for edge in edges)
    # The title is read out: it never calls a place free.
    assert "detect first" in group.title


def test_a_board_is_drawn_on_the_wall_and_under_the_cloth() -> None:
    set_out = set_out_afresh(boarded(), "w1", "s1", TRADE)
    groups = draw_wall(set_out, TRADE)
    (board,) = [group for group in groups if group.layer == "board"]
    assert board.title == "Mounting board, Window 1"
    xs = [x for record in board.records if isinstance(record, Polyline) for x, _ in record.points]
    assert (min(xs) / INCH, max(xs) / INCH) == pytest.approx((44, 100))
    order = [LAYERS.index(group.layer) for group in groups]
    assert order == sorted(order)
    assert LAYERS.index("obstacle") < LAYERS.index("board") < LAYERS.index("panel-open")


def test_labels_on_the_sheet_keep_clear_of_cloth() -> None:
    # A stud found at 46 in, where the open left panel hangs from 45 1/2 to 50 in.
    set_out = out(substrate="board-timber-studs", studs=(inch(46.5),))
    (group,) = inside_where_found(set_out, STYLE, 12.0)
    for record in group.records:
        if isinstance(record, Text) and record.turn:
            x = record.at[0] / INCH
            assert not (45.5 < x < 50)
