"""Remedies: for each rule one that works, worked by hand, and one case where none exists and the two rules are named.

The room is that of ``tests/findings/rooms.py``; figures by hand from its first lines.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.all_rules import RULES
from elevation.findings.model import Weight
from elevation.planning.remedies import Remedies, grave, helps, key_of, remedies
from elevation.room.find import layer_of
from elevation.room.model import Hem, Readings, Room, Sash, Station, WallEnd
from tests.findings import test_board as board
from tests.findings import test_crooked as crooked
from tests.findings import test_escape as way_out
from tests.findings import test_inside_wall as inside_wall
from tests.findings import test_layers as layers
from tests.findings import test_limits as limits
from tests.findings import test_meeting as meeting
from tests.findings import test_mounts as mounts
from tests.findings import test_people as people
from tests.findings import test_supports as supports
from tests.findings.rooms import (
    INCH,
    LAYER,
    LEFT_BRACKET,
    OPENING,
    at,
    found,
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
    trade,
    with_obstacle,
)


def asked(room: Room, rule: str) -> Remedies:
    """The remedies of the first finding of ``rule``."""
    return remedies(room, "w1", "s1", found(room, rule)[0], trade())


def labels(room: Room, rule: str) -> list[str]:
    return [said(remedy.label) for remedy in asked(room, rule).offered]


SLOPED = (Station(inch(45.5), mm(0)), Station(inch(72), inch(1)))
BOTH = (*layer().brackets,)
OFF_THE_ROD = replace(BOTH[0], place=held("from-wall-left", inch(40)))


def one_panel(kit: str, flat: float) -> Room:
    return panels(meeting.three_brackets(kit), flat_width=inch(flat))


WORKS = [
    ("no-room", limits.gap(5 * INCH), "Fix the rod to the ceiling"),
    ("no-room", limits.gap(5 * INCH), "Hang it in the reveal, in sockets"),
    (
        "past-jamb",
        rod(
            mounts.on("reveal", mounts.deep()), left=held("inside-opening", inch(0)), right=held("inside-opening", inch(0))
        ),
        "Set both rod ends ⁷⁄₁₆ in inside the jamb",
    ),
    (
        "below-sill",
        at(mounts.on("reveal", mounts.deep()), LAYER, hem=Hem("length", inch(50))),
        "End the cloth just above the sill",
    ),
    # 0.461 in from the axis to the front of the rod: 1 13/16 in off the sash it stays within 2.3 in.
    ("reveal-depth", mounts.on("reveal", mounts.deep(2.3)), "Hold the rod 1¹³⁄₁₆ in off the sash"),
    ("double-bracket", layers.beside_its_bracket(), "Move the left end bracket 1 in to the left"),
    ("tension-rod", supports.tension(left=held("inside-opening", inch(1))), "Let the tension rod reach from jamb to jamb"),
    ("no-cross", rod(good_room(), overlap=inch(4)), "Let the leading edges meet without overlapping"),
    (
        "track-fixings",
        at(supports.track(), LAYER, brackets=layer_of(supports.track(), LAYER).brackets[::3]),
        "Spread the fixings of the track evenly",
    ),
    ("rod-low", limits.rod_above_casing(2 * INCH), "Set the rod 3 in above the casing"),
    ("rod-high", limits.rod_above_casing(14 * INCH), "Set the rod 12 in above the casing"),
    ("rod-under-ceiling", limits.rod_below_ceiling(2 * INCH), "Set the rod 3 in below the ceiling"),
    # Clips let the cloth begin 1 3/4 in under the axis.
    ("cloth-below-head", limits.cloth_below_top(1 * INCH), "Set the rod 1¾ in above the casing"),
    # Brackets stand 2 in in from the ends.
    ("reach-short", limits.bracket_beyond(4 * INCH), "Set both rod ends 8 in beyond the opening"),
    ("reach-long", limits.bracket_beyond(14 * INCH), "Set both rod ends 14 in beyond the opening"),
    ("stack-on-glass", limits.stack_over_glass(3 * INCH), "Set both rod ends 4 in beyond the opening"),
    ("stack-on-glass", limits.stack_over_goal(3 * INCH), "Set both rod ends 5 in beyond the opening"),
    # The plate reaches 2 1/2 in under the axis.
    ("on-casing", meeting.plate_above(-5.0), "Set the rod 2½ in above the casing"),
    # Finial of 2 3/4 in.
    ("meets", meeting.finial_from_corner(-INCH), "Set the left rod end 2¾ in from the corner"),
    ("meets", meeting.two_windows(-INCH), "Set both rod ends 9 in beyond the opening"),
    # A thing 120 mm out: 4 3/4 in = 120.65 mm is the first graduation beyond.
    (
        "meets",
        with_obstacle(good_room(), obstacle("furniture", 1900, 0, 400, 700, 120)),
        "Hold the rod 4¾ in out from the wall",
    ),
    (
        "meets",
        with_obstacle(good_room(), obstacle("picture", 46.5 * INCH, 82 * INCH, 30, 30)),
        "Move the left end bracket ¼ in to the left",
    ),
    # Plate's right edge at 46 3/4 in; band 2 in beside the outlet at 46 in: 2 3/4 in further out.
    (
        "over-box",
        with_obstacle(good_room(), obstacle("outlet", 46 * INCH, 82 * INCH, 70, 70)),
        "Set both rod ends 12¾ in beyond the opening",
    ),
    # Top at 260 mm, 304.8 to keep: hem at 564.8 mm; from 82 1/2 in = 2095.5 mm that is 1530.7 mm: 60 1/4 in down.
    (
        "heat",
        with_obstacle(good_room(), obstacle("electric-heater", 1200, 60, 300, 200, 20)),
        "Make the cloth 60¼ in long",
    ),
    ("heat", limits.over_radiator(0.0), "Make the cloth 39 in long"),
    (
        "swing",
        reach(at(good_room(), OPENING, sash=Sash("casement-in", "left")), inch(5)),
        "Set both rod ends 6 in beyond the opening",
    ),
    ("escape", way_out.taking(way_out.bedroom(), 9 * INCH), "Set both rod ends 1½ in beyond the opening"),
    ("hem-low", limits.hem_lower(1 * INCH), "Set the rod 5 in above the casing"),
    ("hem-high", limits.hem_higher(1 * INCH), "Set the rod 3 in above the casing"),
    (
        "hem-varies",
        at(at(good_room(), ("w1",), floor=SLOPED), LAYER, hem=Hem("length", inch(80.5))),
        "Let the hem hang 1 in clear of the floor",
    ),
    # Closed width 26 1/2 in each: 1.5 times that is 39 3/4 in, 2.5 times 66 1/4 in.
    ("fullness", panels(good_room(), flat_width=inch(30)), "Make every panel 39¾ in wide laid flat"),
    ("fullness", panels(good_room(), flat_width=inch(80)), "Make every panel 66¼ in wide laid flat"),
    # One panel closes from 45 1/2 in to the near side of the right strap, 97 5/8 in: 52 1/8 in, 1.5 times that is 78 3/16.
    ("fullness", one_panel("open-arm", 40), "Make the panel 78³⁄₁₆ in wide laid flat"),
    ("fullness", one_panel("open-arm", 60), "Make the panel 78³⁄₁₆ in wide laid flat"),
    # A pair that meets at a strap in the middle: 26 1/2 in each.
    (
        "fullness",
        panels(meeting.three_brackets("shop-strap", parks=("left", "right")), flat_width=inch(20)),
        "Make every panel 39¾ in wide laid flat",
    ),
    (
        "fullness",
        panels(meeting.three_brackets("open-arm", "eyelets", parks=("left", "right")), flat_width=inch(20)),
        "Make every panel 39¾ in wide laid flat",
    ),
    # Two heaters under the cloth: the higher one counts, 300 + 304.8 mm; from 2095.5 that leaves 58 11/16 in.
    (
        "heat",
        with_obstacle(
            good_room(),
            obstacle("electric-heater", 1200, 60, 200, 200, 20),
            obstacle("electric-heater", 1300, 60, 200, 240, 20),
        ),
        "Make the cloth 58¹¹⁄₁₆ in long",
    ),
    # A radiator under the left panel's stack: 1 in inward of it.
    (
        "heat",
        with_obstacle(
            good_room(),
            obstacle("hot-water-radiator", 1000, 0, 46 * INCH - 1000, 600, 80),
            obstacle("hot-water-radiator", 900, 0, 46.5 * INCH - 900, 500, 80),
        ),
        "Set the left rod end 9 in beyond the opening",
    ),
    (
        "heat",
        with_obstacle(
            good_room(),
            obstacle("hot-water-radiator", 98 * INCH, 0, 300, 600, 80),
            obstacle("hot-water-radiator", 97.5 * INCH, 0, 300, 500, 80),
        ),
        "Set the right rod end 9 in beyond the opening",
    ),
    ("no-meet", limits.panels_apart(2 * INCH), "Make every panel 26½ in wide laid flat"),
    (
        "cannot-pass",
        meeting.three_brackets("shop-strap"),
        "Make bracket 2 from the left one that lets rings pass: slim open arm that open rings pass",
    ),
    # Brackets at 46 and 98 in, studs found 1 in further out.
    (
        "off-framing",
        good_room(substrate="board-timber-studs", studs=(inch(45), inch(99))),
        "Move the 2 brackets onto framing, 1 in at most",
    ),
    (
        "no-holes",
        at(at(good_room(), (), no_holes=True), OPENING, reveal=inch(6)),
        "Clamp a tension rod in the reveal: it needs no holes",
    ),
    (
        "child-puddle",
        at(at(good_room(), (), children=True), LAYER, hem=Hem("puddle", inch(6))),
        "Let the hem hang ½ in clear of the floor",
    ),
    # From 50 to 60 in under a window that begins at 54 in.
    ("child-climb", people.climbing(50), "Move the furniture 6 in to the left"),
    # The king beside the window is too near to it for a bracket: a board crosses kings and header.
    ("off-framing", good_room(substrate="board-timber-studs"), "Put a mounting board across the framing, ¾ in thick"),
    # 5 1/2 in high behind plates whose middle is 1/2 in under the rod: 3 1/4 in of it hang below.
    (
        "board-place",
        rod(board.boarded(), height=held("above-casing", inch(3))),
        "Set the rod 3¼ in above the casing",
    ),
    # 12 1/16 in under the low end of a ceiling that hung 11 3/4 in over it.
    ("crooked", crooked.sloping(INCH, 11.75 * INCH), "Set the rod 3¹¹⁄₁₆ in above the casing"),
    # 1 1/2 in beside the reveal's edge; 2 3/8 in are asked for (from memory).
    ("near-edge", inside_wall.beside_masonry(1.5 * INCH), "Move the left end bracket ⅞ in to the left"),
    ("uneven-rods", limits.second_rod(INCH), "Set the rod 4 in above the casing"),
    ("reading-used", at(good_room(), OPENING, taken=Readings(width_top=inch(37))), "Take the width that was read, 37 in"),
    (
        "bracket-level",
        limits.bracket_off(INCH),
        "Hang the left end bracket again, with the rod's centre at 84¼ in",
    ),
    ("splice", rod(good_room(), stock=inch(30)), "Add a bracket 28 in from the left end of the rod"),
    ("splice", rod(good_room(), stock=inch(30)), "Buy the rod in one piece of 56 in"),
    ("no-bracket", at(good_room(), LAYER, brackets=()), "Put a bracket 2 in in from each end"),
    ("no-bracket", at(good_room(), LAYER, brackets=BOTH[:1]), "Add the bracket at the other end, 2 in in"),
    (
        "no-bracket",
        at(good_room(), LAYER, brackets=(OFF_THE_ROD, BOTH[1])),
        "Move the left end bracket 6 in to the right",
    ),
]


def plain(label: str) -> str:
    """Set fractions as the label above writes them."""
    for built, one in (("¹⁄₂", "½"), ("³⁄₄", "¾"), ("¹⁄₄", "¼"), ("⁷⁄₈", "⅞")):
        label = label.replace(built, one)
    return label


@pytest.mark.parametrize(("rule", "room", "label"), WORKS, ids=[f"{rule}-{label[:40]}" for rule, _, label in WORKS])
def test_a_remedy_that_works(rule, room, label) -> None:
    answer = asked(room, rule)
    assert label in [plain(said(remedy.label)) for remedy in answer.offered]
    assert answer.none_because is None
    finding = found(room, rule)[0]
    remedy = next(one for one in answer.offered if plain(said(one.label)) == label)
    after = found(remedy.room)
    assert key_of(finding) not in {key_of(one) for one in after}
    assert grave(after) <= grave(found(room))


# --- where none exists --------------------------------------------------------------------------------------


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


NONE = [
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
        ("cannot-pass", meeting.three_brackets("shop-strap", "eyelets")),
        ("no-meet", meeting.three_brackets("shop-strap", "eyelets")),
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


# What the tape says of the opening itself: no change to what hangs puts it right.
AS_MEASURED = {"out-of-square", "readings-differ"}

# Who lives there: what is asked for can be done, or (two openings on one rod) no change is offered at all. Where brackets
# are not at framing a board can be put across it, and a board can always be taken away.
PEOPLE = {"no-holes", "child-puddle", "child-climb", "off-framing", "board-place", "crooked"}

# Another mount or support is always at hand.
HUNG = {"no-room", "past-jamb", "below-sill", "reveal-depth", "tension-rod", "no-cross", "track-fixings"}


def test_every_rule_has_a_remedy_and_a_case_without_one() -> None:
    rules = {rule.id for rule in RULES}
    works, never = {rule for rule, _, _ in WORKS}, {rule for rule, _, _ in NONE}
    # Cloth that is too long can always be taken up.
    assert rules - works == AS_MEASURED
    assert (
        rules - never
        == {"hem-low", "hem-varies", "cannot-pass", "no-meet", "reading-used", "near-edge"} | AS_MEASURED | PEOPLE | HUNG
    )


# --- what a remedy is ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("on_floor", "wish"),
    [
        # A break is 1 to 3 in of cloth, a puddle up to 18 in; more than that is only too long. Common practice, no source.
        (3, "Let the cloth break on the floor with 3 in"),
        (3 + 1 / 16, "Let the cloth puddle on the floor with 3 1/16 in"),
        (18, "Let the cloth puddle on the floor with 18 in"),
        (18 + 1 / 16, None),
    ],
)
def test_cloth_on_the_floor_may_be_wished_as_long_as_that_is_a_way_of_hanging(on_floor, wish) -> None:
    # Wished is half an inch clear of the floor.
    offered = labels(limits.hem_lower((on_floor + 0.5) * INCH), "hem-low")
    wished = [label for label in offered if label.startswith("Let the cloth")]
    assert wished == ([] if wish is None else [wish.replace("3 1/16", "3¹⁄₁₆")])


def test_a_remedy_may_not_put_another_thing_wrong() -> None:
    low = found(limits.rod_above_casing(2 * INCH))
    clean = found(good_room())
    both = found(rod(limits.rod_above_casing(2 * INCH), left=held("beyond-opening", inch(5))))
    finding = low[0]
    assert helps(finding, low, clean)
    assert not helps(finding, low, low)
    other = tuple(one for one in both if one.rule == "reach-short")
    assert other
    assert not helps(finding, low, other)
    assert helps(finding, both, other)
    advice = replace(other[0], weight=Weight.CONSIDER)
    assert helps(advice, (advice,), ())
    assert helps(advice, (advice, *low), low)
    assert not helps(advice, (advice,), low)


def test_remedies_do_not_touch_the_room_they_are_asked_about() -> None:
    room = limits.rod_above_casing(2 * INCH)
    before = layer_of(room, LAYER).rod
    answer = asked(room, "rod-low")
    assert layer_of(room, LAYER).rod is before
    assert layer_of(answer.offered[0].room, LAYER).rod.height.at.text == "3 in"


def test_a_remedy_lands_on_the_graduation_in_the_rooms_unit() -> None:
    metric = at(limits.rod_above_casing(50.3), (), unit="mm")
    held_at = layer_of(asked(metric, "rod-low").offered[0].room, LAYER).rod.height.at
    # 76.2 mm are asked for; 76 mm reads as no less than that.
    assert held_at.text == "76 mm"
