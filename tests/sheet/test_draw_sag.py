"""The sag on the elevation: as deep as it is times a figure that is said, for all rods of a wall the same."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.edits import edit_at
from elevation.setting_out.loads import drop_at
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.draw_sag import MOST_MM, TIMES, sag_groups, times_of
from elevation.sheet.records import Polyline, Text
from elevation.words import Style
from tests.findings.rooms import LAYER, good_room, panels, rod, trade

STYLE = Style("in", 25.4 / 16, ".", "en")


def dressed(kg: float, **fields: object) -> SetOut:
    return set_out_afresh(rod(panels(good_room(), weight_kg=kg), **fields), "w1", "s1", trade())


@pytest.mark.parametrize("kg", [0.1, 1.0, 3.0, 10.0, 40.0])
def test_the_line_is_as_deep_as_it_says(kg: float) -> None:
    out = dressed(kg)
    layer = out.treatments[0].layers[0]
    times = times_of(out)
    (group,) = sag_groups(out, STYLE, 20.0)
    (line,) = [record for record in group.records if isinstance(record, Polyline)]
    for x, y in line.points:
        assert layer.support.height_mm - y == pytest.approx(times * drop_at(layer, x))
    deepest = max(layer.support.height_mm - y for _, y in line.points)
    assert deepest <= MOST_MM
    assert times == TIMES[0] or deepest * TIMES[TIMES.index(times) - 1] / times > MOST_MM
    (text,) = [record for record in group.records if isinstance(record, Text)]
    assert f"drawn {times} times as deep" in text.text


def test_a_rod_whose_sag_is_not_known_has_no_line() -> None:
    (group,) = sag_groups(dressed(3.0, kind="tension-rod"), STYLE, 20.0)
    assert group.records == ()


def test_a_free_end_that_lifts_is_drawn_above_the_rod() -> None:
    room = edit_at(
        rod(panels(good_room(), weight_kg=3.0), section="alu-25"),
        LAYER,
        lambda one: replace(one, brackets=tuple(replace(b, kit="cup") for b in one.brackets)),
    )
    out = set_out_afresh(room, "w1", "s1", trade())
    (line,) = [record for record in sag_groups(out, STYLE, 20.0)[0].records if isinstance(record, Polyline)]
    assert line.points[0][1] > out.treatments[0].layers[0].support.height_mm
