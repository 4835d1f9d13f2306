"""What a wall shows in positions and with lines that are seldom asked for."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.style import style_for
from elevation.setting_out.whole import set_out
from elevation.sheet.draw_guides import guide_groups
from elevation.sheet.drawing import View, draw_treatment
from elevation.sheet.plan import plan_groups
from elevation.sheet.plan_frame import frame_of
from elevation.sheet.records import Line, Path, Text
from elevation.trade.tables import load_trade
from tests.findings.rooms import good_room
from tests.handles.rooms import WINDOW, held, room, with_rod
from tests.handles.test_guide_places import with_picture
from tests.setting_out.test_passing import one_way

TRADE = load_trade()


def guides(now):
    return guide_groups(set_out(now, "a", "s", TRADE), style_for(now), 20.0)


def lines(groups):
    return [record for group in groups for record in group.records if isinstance(record, Line)]


def test_a_line_of_what_stands_there_is_shown_only_for_a_rod_that_is_on_it() -> None:
    # The picture's top is 93 in up; the rod's centre is there, or 5 in below.
    (wall,) = with_picture().walls
    scheme = wall.schemes[0]
    raised = replace(scheme.treatments[0], layers=(with_rod(height=held("above-casing", 9)),))
    on = replace(with_picture(), walls=(replace(wall, schemes=(replace(scheme, treatments=(raised,)),)),))
    at = 93 * 25.4
    assert not [line for line in lines(guides(with_picture())) if line.a[1] == line.b[1] == pytest.approx(at)]
    assert [line for line in lines(guides(on)) if line.a[1] == line.b[1] == pytest.approx(at)]


@pytest.mark.parametrize(("right", "told"), [(10, 0), (13, 1)])
def test_unequal_reaches_say_by_how_much(right: float, told: int) -> None:
    now = room(layer=with_rod(right=held("beyond-opening", right)))
    (reach,) = guides(now)[1:]
    texts = [record.text for record in reach.records if isinstance(record, Text)]
    assert len([text for text in texts if "3 in" in text]) == told


def test_a_rod_that_ends_with_its_opening_has_no_reach_to_show() -> None:
    flush = room(layer=with_rod(left=held("beyond-opening", 0), right=held("beyond-opening", 0)))
    assert [group.records for group in guides(flush)[1:]] in ([], [()])


def test_cloth_that_passes_a_corner_is_drawn_with_the_folds_before_its_wall() -> None:
    out = set_out(one_way(), "w1", "s1", TRADE)
    (laid,) = out.treatments
    (layer,) = laid.layers
    alone = replace(laid, layers=(replace(layer, panels=tuple(replace(panel, on_mm=0.0) for panel in layer.panels)),))
    folds = [
        sum(len(record.steps) for group in groups for record in group.records if isinstance(record, Path))
        for groups in (draw_treatment(one, out.floor, TRADE, View("closed", False)) for one in (laid, alone))
    ]
    assert 0 < folds[0] < folds[1]


def test_a_plan_without_cloth_shows_the_rod_alone() -> None:
    out = set_out(good_room(), "w1", "s1", TRADE)
    frame = frame_of(out)
    hung, bare = (
        sum(len(group.records) for group in plan_groups(out, frame, style_for(good_room()), 20.0, position))
        for position in ("open", "none")
    )
    assert 0 < bare < hung
    assert WINDOW.id == "w1"
