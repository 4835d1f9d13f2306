"""Each rule of where cables and pipes likely run, as one drawn case: its edges read back from the SVG in wall millimetres.

Figures by hand from ``tests/findings/rooms.py``: wall 144 in wide and 96 in high, window from 54 to 90 in. Bands reach 2 in
beyond a box or a pipe. British usage: BS 7671 522.6, German usage: DIN 18015-3, both from memory, to be confirmed.
"""

from __future__ import annotations

from typing import Any

import pytest

from elevation.output.svg import to_svg
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.draw_inside import band_group
from elevation.sheet.records import Group, Line, Pen, Picture
from elevation.trade import load_trade
from elevation.words import Style
from tests.cross.vectors import svg_strokes
from tests.findings.rooms import INCH, at, good_room, obstacle, with_obstacle

TRADE = load_trade()
WIDE, HIGH = 144 * INCH, 96 * INCH
LEFT, RIGHT = 54 * INCH, 90 * INCH


def edges(room: Any) -> tuple[set[int], set[int]]:
    """Where upright edges of bands stand along the wall and lying ones over the floor, whole mm, but the wall's own."""
    ruler = Group(
        (),
        "zone",
        "",
        (Line((0.0, 0.0), (WIDE, 0.0), Pen("#000000", 0.1)), Line((0.0, 0.0), (0.0, HIGH), Pen("#000000", 0.1))),
    )
    bands = band_group(set_out_afresh(room, "w1", "s1", TRADE), Style())
    data = to_svg(Picture((ruler, bands), 20.0))
    across, up = svg_strokes(data, "zone")
    x0, y0 = across.x1, across.y1
    scale = WIDE / (across.x2 - x0)
    assert (up.y2 - y0) * scale == pytest.approx(HIGH, abs=0.1)
    upright, lying = set(), set()
    for stroke in svg_strokes(data, "band"):
        if abs(stroke.x1 - stroke.x2) < 1e-6:
            upright.add(round((stroke.x1 - x0) * scale))
        else:
            assert abs(stroke.y1 - stroke.y2) < 1e-6
            lying.add(round((stroke.y1 - y0) * scale))
    return upright - {0, round(WIDE)}, lying - {0, round(HIGH)}


def wired(usage: str) -> Any:
    return at(good_room(), (), wiring=usage)


def test_every_row_of_the_table_has_its_case() -> None:
    assert set(TRADE.bands) == {"uk-ceiling", "uk-corner", "de-ceiling", "de-floor", "de-corner", "de-opening"}


def test_british_usage_under_the_ceiling_and_along_corners() -> None:
    upright, lying = edges(wired("uk"))
    assert lying == {round(HIGH - 150)}
    assert upright == {150, round(WIDE - 150)}


def test_german_usage_under_the_ceiling_over_the_floor_in_corners_and_beside_openings() -> None:
    upright, lying = edges(wired("de"))
    assert lying == {round(HIGH - 150), round(HIGH - 450), 150, 450}
    corners = {100, 300, round(WIDE - 100), round(WIDE - 300)}
    beside = {round(LEFT - 100), round(LEFT - 300), round(RIGHT + 100), round(RIGHT + 300)}
    assert upright == corners | beside


def test_not_known_usage_promises_nothing_and_draws_nothing_without_a_box() -> None:
    assert edges(wired("not-known")) == (set(), set())


@pytest.mark.parametrize("kind", ["outlet", "switch", "light"])
def test_straight_up_down_and_sideways_from_a_box(kind: str) -> None:
    upright, lying = edges(with_obstacle(good_room(), obstacle(kind, 500, 300, 70, 115)))
    assert upright == {round(500 - 50.8), round(570 + 50.8)}
    assert lying == {round(300 - 50.8), round(415 + 50.8)}


def test_a_radiators_pipes_and_a_pipe_of_its_own() -> None:
    upright, lying = edges(with_obstacle(good_room(), obstacle("hot-water-radiator", 1500, 100, 600, 500, 100)))
    assert upright == {1449, 1551, 2049, 2151}
    assert lying == {49, 151}
    upright, lying = edges(with_obstacle(good_room(), obstacle("pipe", 300, 0, 22, 2000, 60)))
    assert (upright, lying) == ({249, 373}, set())
