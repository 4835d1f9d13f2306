"""Holding something else moves nothing, and from then on follows the other thing."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput, NoSuch
from elevation.handles.hold_instead import HOLDS, hold_instead
from elevation.places import demo_rooms
from elevation.room.edits import replace_at
from elevation.room.file import dump_room, load_bytes, load_room
from elevation.room.find import layer_of, opening_of
from elevation.room.model import Hem, Room, Stool
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out_afresh
from elevation.trade.tables import load_trade
from tests.handles.rooms import LAYER, SECOND, WINDOW, held, inch, room, with_layer, with_rod

TRADE = load_trade()


def landed(now: Room) -> SetOut:
    return set_out_afresh(now, "a", "s", TRADE)


def where(now: Room) -> list[float]:
    """All that can be seen of the layer and the openings, but not who holds it."""
    out = landed(now)
    layer = out.treatments[0].layers[0]
    support = layer.support
    places = [
        support.left_mm,
        support.right_mm,
        support.height_mm,
        *(bracket.x_mm for bracket in layer.brackets),
        *(panel.hem_low_mm for panel in layer.panels),
        *(opening.left_mm for opening in out.openings),
    ]
    return [round(place_mm, 6) for place_mm in places]


CASES = [(which, hold) for which, holds in HOLDS.items() for hold in holds]


@pytest.mark.parametrize(("which", "hold"), CASES)
def test_nothing_moves(which: str, hold: str) -> None:
    start = room(
        openings=(WINDOW, SECOND), layer=with_layer(hem=Hem("length", inch({"sill": 60, "apron": 66}.get(hold, 80))))
    )
    ref = {"bracket": (*LAYER, "b1"), "opening": ("a", "w2")}.get(which, LAYER)
    now = hold_instead(start, landed(start), ref, which, hold)
    assert where(now) == where(start)
    assert load_bytes(dump_room(now), "now") == now
    layer = layer_of(now, LAYER)
    if which in ("height", "left", "right"):
        assert getattr(layer.rod, which).hold == hold
    elif which == "bracket":
        assert layer.brackets[0].place.hold == hold
    elif which == "hem":
        assert layer.hem.target == hold
    else:
        opening = opening_of(now, ("a", "w2"))
        assert getattr(opening, hold) is not None
        assert (opening.left is None) != (opening.gap is None)


def test_from_then_on_the_rod_follows_the_ceiling() -> None:
    start = room()
    now = hold_instead(start, landed(start), LAYER, "height", "below-ceiling")
    assert layer_of(now, LAYER).rod.height == held("below-ceiling", 20)
    lower = replace_at(now, ("a",), ceiling=(replace(now.walls[0].ceiling[0], height=inch(106)),))
    assert landed(lower).treatments[0].layers[0].support.height_mm == pytest.approx(86 * 25.4)


def test_holding_what_is_held_already_changes_nothing() -> None:
    start = room()
    assert hold_instead(start, landed(start), LAYER, "height", "above-casing") is start
    assert hold_instead(start, landed(start), LAYER, "left", "beyond-opening") is start


def test_only_one_end_holds_the_length() -> None:
    start = room(layer=with_rod(right=held("rod-length", 60)))
    now = hold_instead(start, landed(start), LAYER, "left", "rod-length")
    rod = layer_of(now, LAYER).rod
    assert rod.left == held("rod-length", 60)
    assert rod.right == held("beyond-opening", 10)
    assert where(now) == where(start)


def test_what_was_not_measured_cannot_hold() -> None:
    start = room(ceiling=())
    with pytest.raises(BadInput, match="ceiling"):
        hold_instead(start, landed(start), LAYER, "height", "below-ceiling")
    start = room(width=None)
    with pytest.raises(BadInput, match="width"):
        hold_instead(start, landed(start), LAYER, "right", "from-corner")


def test_a_hem_below_the_sill_cannot_be_held_above_it() -> None:
    start = room()
    with pytest.raises(BadInput, match="sill"):
        hold_instead(start, landed(start), LAYER, "hem", "sill")


def test_an_unknown_hold_or_place_is_said() -> None:
    start = room()
    with pytest.raises(NoSuch, match="above-head"):
        hold_instead(start, landed(start), LAYER, "height", "by-magic")
    with pytest.raises(NoSuch):
        hold_instead(start, landed(start), ("a", "s", "t9", "front"), "height", "above-head")


def test_brackets_that_drop_less_than_the_rod_hangs_below_the_ceiling_cannot_hold_it() -> None:
    # Under the ceiling by its bracket: a rod that stands nearer to the ceiling than the bracket drops.
    start = replace_at(room(), LAYER[:3], mount="ceiling")
    high = replace_at(start, LAYER, rod=with_rod(height=held("above-casing", 24.5)).rod)
    with pytest.raises(BadInput, match="higher than these brackets hold it"):
        hold_instead(high, landed(high), LAYER, "height", "bracket-drop")
    assert (
        layer_of(hold_instead(start, landed(start), LAYER, "height", "bracket-drop"), LAYER).rod.height.hold
        == "bracket-drop"
    )


def test_a_hem_without_a_panel_is_not_held() -> None:
    start = room(layer=with_layer(panels=()))
    with pytest.raises(BadInput, match="add a panel first"):
        hold_instead(start, landed(start), LAYER, "hem", "length")


@pytest.mark.parametrize(("apron", "stool", "below"), [(0, 0, 4), (3, 0, 1), (3, 0.75, 0.25)])
def test_below_an_apron_is_below_its_stool_too(apron: float, stool: float, below: float) -> None:
    # The sill is 24 in up; the cloth begins at 86 1/4 in and is 66 1/4 in long: its hem hangs at 20 in.
    start = room(
        openings=(replace(WINDOW, apron=inch(apron), stool=Stool(inch(stool), inch(2), inch(1)) if stool else None),),
        layer=with_layer(hem=Hem("length", inch(66.25))),
    )
    hem = layer_of(hold_instead(start, landed(start), LAYER, "hem", "apron"), LAYER).hem
    assert hem.at is not None
    assert hem.at.mm == pytest.approx(below * 25.4)


def test_openings_that_stand_in_each_other_have_no_gap() -> None:
    start = room(openings=(WINDOW, replace(SECOND, left=inch(90))))
    # The first one's casing ends at 94 in.
    with pytest.raises(BadInput, match="less than nothing"):
        hold_instead(start, landed(start), ("a", "w2"), "opening", "gap")


def test_the_height_of_a_leg_is_held_where_its_rod_begins() -> None:
    bay = load_room(demo_rooms() / "9-bay.room.json")
    out = set_out_afresh(bay, "middle", "s1", TRADE)
    with pytest.raises(BadInput, match="takes its height from the wall where it begins"):
        hold_instead(bay, out, ("middle", "s1", "t1", "l1"), "height", "above-head")
