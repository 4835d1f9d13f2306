"""Where no remedy exists: the two rules that leave no room are named, or that no single change could help.

The room is that of ``tests/findings/rooms.py``; figures by hand from its first lines.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.edits import edit_at
from elevation.room.model import Hem, Room, Sash, Station, WallEnd
from tests.findings import test_carrying as carrying
from tests.findings import test_escape as way_out
from tests.findings import test_fixing, test_sag
from tests.findings import test_layers as layers
from tests.findings import test_limits as limits
from tests.findings import test_on_leaf as on_leaf
from tests.findings import test_pelmet_framing as pelmet_framing
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    OPENING,
    at,
    ceiling,
    good_room,
    held,
    inch,
    layer,
    mm,
    obstacle,
    panels,
    reach,
    rod,
    said,
    with_obstacle,
)
from tests.planning.asking import asked


def shelf_over(bottom_in: float) -> object:
    """A shelf before the middle of the window at that height, 40 mm thick."""
    return obstacle("shelf", 1600, bottom_in * INCH, 400, 40, 250)


def near_corner(left: float, beyond: float, **layer_fields: object) -> Room:
    """The window ``left`` in from the corner, rod ends ``beyond`` the opening."""
    room = at(at(good_room(), OPENING, left=inch(left)), LAYER, **layer_fields)
    return reach(room, inch(beyond))


def low_ceiling_beside_the_window() -> Room:
    # Over the window 6 3/4 in and more; over the rod's left end only 4 in, of which the rod leaves 1 in.
    line = (Station(inch(44), inch(84.25)), Station(inch(51.75), inch(87)))
    return rod(at(good_room(), ("w1",), ceiling=line), height=held("above-casing", inch(3)))


def lowering_hits_a_picture() -> Room:
    # Rod 14 in above the casing, centre at 94 1/4 in; 12 in above it would run into the picture.
    picture = obstacle("picture", 1500, 91.5 * INCH, 500, 1.5 * INCH, 200)
    return with_obstacle(limits.rod_above_casing(14 * INCH), picture)


def outlet_where_the_bracket_would_stand() -> Room:
    # 14 in beyond the opening is too far; at 12 in, x = 42 in, an outlet sits under the plate.
    return with_obstacle(limits.bracket_beyond(14 * INCH), obstacle("outlet", 42 * INCH, 82 * INCH, 20, 70))


def bracket_in_a_corner_beside_an_outlet() -> Room:
    # Bracket at 5 in; outward the finial meets the corner, inward the reach falls short.
    room = reach(at(good_room(), OPENING, left=inch(12)), inch(9))
    return with_obstacle(room, obstacle("outlet", 4.5 * INCH, 82 * INCH, 30, 70))


def joint_over_a_casing() -> Room:
    # 100 in wide: rod of 124 in from 10 ft pieces; at the joint the plate would stand on the casing.
    room = at(at(good_room(), OPENING, width=inch(100)), ("w1",), width=inch(240))
    return rod(reach(room, inch(12)), height=held("above-casing", inch(2)))


def bracket_to_hang_again_over_an_outlet() -> Room:
    room = at(good_room(), LEFT_BRACKET, height=inch(90))
    return with_obstacle(room, obstacle("outlet", 46 * INCH, 82 * INCH, 20, 70))


def more_cloth_would_cover_glass() -> Room:
    # Interlined: 9 in a 54 in width. From 5 in beyond the opening 30 in of cloth stack to the jamb, 34 1/2 in over it.
    fabric = replace(layer().fabric, body="interlined")
    room = at(panels(reach(good_room(), inch(6.5)), flat_width=inch(30)), LAYER, fabric=fabric)
    return at(room, ("w1", "s1"), clear_glass_to=inch(0))


def hem_between_two_floors() -> Room:
    # Wished 1/2 in; the least gap is 3/8 in, the greatest 1 7/8 in.
    floor = (Station(inch(45.5), mm(0)), Station(inch(72), inch(1.5)))
    return panels(at(good_room(), ("w1",), floor=floor), label_length=inch(82.5 - 1.875))


def raising_hits_a_shelf(room: Room, bottom_in: float) -> Room:
    return with_obstacle(room, shelf_over(bottom_in))  # type: ignore[arg-type]


def two_rods_and_a_shelf() -> Room:
    # Window 2's rod is 1 in lower than the others; a shelf runs right over it.
    return with_obstacle(limits.second_rod(-INCH), obstacle("shelf", 150 * INCH, 84 * INCH, 1200, 40, 250))


def plate_between_corner_and_casing() -> Room:
    # Casing edge at 1 1/4 in: the plate of 1 1/2 in has no place beside it, and a shelf keeps the rod down.
    room = rod(at(good_room(), OPENING, left=inch(3.5)), height=held("above-casing", inch(0)))
    room = rod(room, left=held("from-corner", inch(0.25)), ends="cap")
    room = at(room, LEFT_BRACKET, place=held("from-wall-left", inch(0.75)))
    return with_obstacle(room, obstacle("shelf", 500, 81.5 * INCH, 400, 40, 250))


def stack_against_the_corner(**opening: object) -> Room:
    """The finial touches the corner, and the panels' stacks are a measured 8 in: no more room, no less cloth."""
    room = panels(at(good_room(), OPENING, left=inch(6), **opening), stack=inch(8))
    return rod(room, left=held("from-corner", inch(2.75)))


def way_out_against_the_corner() -> Room:
    room = stack_against_the_corner(sash=Sash("casement-out"), escape=True, height=inch(24.5))
    return at(room, (), sleeping=True)


def beside_a_tall_heater() -> Room:
    # Its top and 12 in more is above the cloth's top; inward, the cloth would begin at 59 in, inside the opening.
    heater = obstacle("electric-heater", 30 * INCH, 0, 17 * INCH, 1900, 80)
    return with_obstacle(good_room(), heater)


def before_a_tall_heater() -> Room:
    # 36 in over 51 in is above the cloth's top.
    heater = obstacle("portable-heater", 60 * INCH, 0, 300, 1300, 200)
    return with_obstacle(good_room(), heater)


def tied(room: Room) -> Room:
    """The right panel parks at its end bracket, so nothing draws one way; the corner is not square: no socket."""
    room = at(room, ("w1",), left=WallEnd(angle=89.99))
    return at(room, (*LAYER, "p2"), parks="left-of:b2")


def back_rod_behind_a_near_front_one() -> Room:
    """A back rod 2 in off the wall that cannot come out: the front one's folds hang there."""
    room, back = layers.double()
    room = edit_at(room, LAYER, lambda one: replace(one, rod=replace(one.rod, projection=inch(5))))
    return edit_at(room, back, lambda one: replace(one, rod=replace(one.rod, projection=inch(2.25))))


NONE = [
    # Between the kings nothing stands behind its shelf.
    ("pelmet-framing", pelmet_framing.shelf(), None),
    ("folds-rub", back_rod_behind_a_near_front_one(), "meets"),
    # A rod as thick as a tree.
    ("rings-tight", rod(at(good_room(), LAYER, ring=mm(3)), diameter=mm(300)), None),
    # No rod makes a panel longer than it is.
    ("panel-length", panels(at(good_room(), LAYER, hem=Hem("length", inch(70))), measured_length=inch(60)), None),
    ("double-bracket", layers.on_plain_brackets(), None),
    ("rod-low", raising_hits_a_shelf(rod(good_room(), height=held("above-casing", inch(2))), 83), "meets"),
    ("rod-high", lowering_hits_a_picture(), "meets"),
    ("rod-under-ceiling", low_ceiling_beside_the_window(), "rod-low"),
    ("cloth-below-head", raising_hits_a_shelf(limits.cloth_below_top(INCH), 82), "meets"),
    ("reach-short", tied(near_corner(6, 3.25)), "meets"),
    ("reach-long", outlet_where_the_bracket_would_stand(), "over-box"),
    ("stack-on-glass", tied(stack_against_the_corner()), "meets"),
    ("on-casing", plate_between_corner_and_casing(), "meets"),
    ("meets", tied(near_corner(8, 10)), "reach-short"),
    ("over-box", bracket_in_a_corner_beside_an_outlet(), "reach-short"),
    ("heat", beside_a_tall_heater(), "reach-short"),
    # On one of the leaves alone the cloth would not cover the other; over the opening there is no room for a rod.
    ("on-leaf", ceiling(on_leaf.cafe(hinge="both"), inch(86)), "no-room"),
    ("swing", stack_against_the_corner(sash=Sash("casement-in", "left")), "meets"),
    ("escape", way_out_against_the_corner(), "meets"),
    ("splice", joint_over_a_casing(), "on-casing"),
    (
        "no-bracket",
        at(rod(reach(good_room(), inch(2.5)), height=held("above-casing", inch(2))), LAYER, brackets=()),
        "on-casing",
    ),
    ("bracket-level", bracket_to_hang_again_over_an_outlet(), "over-box"),
    ("fullness", more_cloth_would_cover_glass(), "stack-on-glass"),
    ("hem-high", hem_between_two_floors(), "hem-low"),
    ("uneven-rods", two_rods_and_a_shelf(), "meets"),
    ("sag", test_sag.tabs_on_the_thickest_pole(), "uplift"),
    ("fixing", test_fixing.too_heavy_for_board(), None),
    ("uplift", test_sag.lifting_under_the_ceiling(), None),
]


@pytest.mark.parametrize(("rule", "room", "other"), NONE, ids=[rule for rule, _, _ in NONE])
def test_where_none_exists_the_two_rules_are_named(rule, room, other) -> None:
    answer = asked(room, rule)
    assert [said(remedy.label) for remedy in answer.offered] == []
    assert answer.none_because is not None
    text = said(answer.none_because)
    if other is None:
        assert text.startswith("No single change")
        return
    assert text.startswith("Two rules leave no room: ")
    assert f"({rule})" in text
    assert f"({other})" in text


@pytest.mark.parametrize(
    ("rule", "room"),
    [
        # Panels in hand hang level: nothing on rod, brackets or cloth makes a floor even.
        ("hem-varies", limits.floor_varies(INCH)),
        # Eyelets pass no middle bracket whatever its kind.
        ("cannot-pass", carrying.three_brackets("shop-strap", "eyelets")),
        ("no-meet", carrying.three_brackets("shop-strap", "eyelets")),
        # It would have to end above its own top.
        ("heat", before_a_tall_heater()),
        # The window's own sill.
        ("escape", way_out.bedroom(sill=inch(45))),
    ],
)
def test_where_no_change_could_help_that_is_said(rule, room) -> None:
    answer = asked(room, rule)
    assert answer.offered == ()
    assert answer.none_because is not None
    assert said(answer.none_because) == "No single change to rod, brackets or cloth puts this right."
