"""Where cables and pipes likely run, each rule as one case by hand; widths and countries' usage are from memory.

The wall is 144 in wide and 96 in high, its window stands from 54 to 90 in. Bands reach 2 in beyond a box or a pipe.
British usage: 150 mm from ceiling and corners (BS 7671 522.6, from memory). German usage: 15 to 45 cm from ceiling and
floor, 10 to 30 cm from corners and beside openings (DIN 18015-3, from memory).
"""

from __future__ import annotations

from typing import Any

import pytest
from msgspec.structs import replace

from elevation.room.model import WallEnd
from elevation.setting_out.whole import set_out_afresh
from elevation.trade import load_trade
from tests.findings.rooms import INCH, at, good_room, obstacle, with_obstacle

TRADE = load_trade()
WIDE, HIGH = 144 * INCH, 96 * INCH
Box = tuple[float, float, float, float]


def bands(room: Any) -> list[tuple[str, Box]]:
    out = set_out_afresh(room, "w1", "s1", TRADE).bands
    return [(one.kind, (one.left_mm, one.bottom_mm, one.right_mm, one.top_mm)) for one in out]


def near(found: list[tuple[str, Box]], wanted: list[tuple[str, Box]]) -> None:
    assert [kind for kind, _ in found] == [kind for kind, _ in wanted]
    for (_, box), (_, other) in zip(found, wanted, strict=True):
        assert box == pytest.approx(other)


@pytest.mark.parametrize("kind", ["outlet", "switch", "light"])
def test_straight_up_down_and_sideways_from_a_box(kind: str) -> None:
    room = with_obstacle(good_room(), obstacle(kind, 500, 300, 70, 115))
    near(bands(room), [("cable", (449.2, 0, 620.8, HIGH)), ("cable", (0, 249.2, WIDE, 465.8))])


def test_pipes_of_a_radiator_rise_at_its_lower_corners() -> None:
    room = with_obstacle(good_room(), obstacle("hot-water-radiator", 1500, 100, 600, 500, 100))
    near(
        bands(room),
        [
            ("pipe", (1449.2, 0, 1550.8, HIGH)),
            ("pipe", (2049.2, 0, 2150.8, HIGH)),
            ("pipe", (0, 49.2, WIDE, 150.8)),
        ],
    )


def test_a_pipe_goes_on_in_its_own_line() -> None:
    upright = with_obstacle(good_room(), obstacle("pipe", 300, 0, 22, 2000, 60))
    near(bands(upright), [("pipe", (249.2, 0, 372.8, HIGH))])
    lying = with_obstacle(good_room(), obstacle("pipe", 300, 100, 2000, 22, 60))
    near(bands(lying), [("pipe", (0, 49.2, WIDE, 172.8))])


def test_other_things_feed_nothing() -> None:
    for kind in ("shelf", "picture", "furniture", "electric-heater", "smoke-alarm"):
        assert bands(with_obstacle(good_room(), obstacle(kind, 500, 300, 70, 115))) == []


def test_british_usage() -> None:
    room = at(good_room(), (), wiring="uk")
    near(
        bands(room),
        [
            ("cable", (0, HIGH - 150, WIDE, HIGH)),
            ("cable", (0, 0, 150, HIGH)),
            ("cable", (WIDE - 150, 0, WIDE, HIGH)),
        ],
    )
    # An open end is no corner.
    open_end = at(room, ("w1",), right=WallEnd("open"))
    assert [box[0] for _, box in bands(open_end)] == [0, 0]


def test_german_usage() -> None:
    left, right = 54 * INCH, 90 * INCH
    near(
        bands(at(good_room(), (), wiring="de")),
        [
            ("cable", (0, HIGH - 450, WIDE, HIGH - 150)),
            ("cable", (0, 150, WIDE, 450)),
            ("cable", (100, 0, 300, HIGH)),
            ("cable", (WIDE - 300, 0, WIDE - 100, HIGH)),
            ("cable", (left - 300, 0, left - 100, HIGH)),
            ("cable", (right + 100, 0, right + 300, HIGH)),
        ],
    )


def test_usage_is_told_only_where_the_country_is_known() -> None:
    assert bands(good_room()) == []


def test_every_row_is_from_memory_and_says_so() -> None:
    assert {row.sure for row in TRADE.bands.values()} == {"from memory"}
    assert all("to be confirmed" in row.authority for row in TRADE.bands.values())


def test_a_rooms_own_width_wins() -> None:
    room = with_obstacle(good_room(), obstacle("outlet", 500, 300, 70, 115))
    own = replace(room, limits={"cable-band": replace(room.walls[0].obstacles[0].left, mm=10.0, text="10 mm")})
    assert bands(own)[0][1][0] == pytest.approx(490)
