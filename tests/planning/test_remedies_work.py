"""Remedies that work: at least one for each rule, worked by hand.

The room is that of ``tests/findings/rooms.py``; figures by hand from its first lines.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.planning.remedies import grave, key_of
from elevation.room.find import layer_of
from elevation.room.model import Hem, Packet, Readings, Room, Sash, Station, TieBack
from tests.findings import test_blind as blind
from tests.findings import test_board as board
from tests.findings import test_carrying as carrying
from tests.findings import test_cloth_rules as cloth
from tests.findings import test_corner as corner
from tests.findings import test_crooked as crooked
from tests.findings import test_escape as way_out
from tests.findings import test_fixing, test_sag
from tests.findings import test_inside_wall as inside_wall
from tests.findings import test_layers as layers
from tests.findings import test_limits as limits
from tests.findings import test_meeting as meeting
from tests.findings import test_meeting_others as others
from tests.findings import test_mounts as mounts
from tests.findings import test_on_leaf as on_leaf
from tests.findings import test_pelmet as pelmet
from tests.findings import test_pelmet_framing as pelmet_framing
from tests.findings import test_pelmet_heat as pelmet_heat
from tests.findings import test_people as people
from tests.findings import test_plates as plates
from tests.findings import test_shutter_box as shutter
from tests.findings import test_supports as supports
from tests.findings import test_tie as tie
from tests.findings import test_tracks as tracks
from tests.findings.rooms import (
    INCH,
    LAYER,
    OPENING,
    at,
    ceiling,
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
    with_obstacle,
)
from tests.planning.asking import asked

SLOPED = (Station(inch(45.5), mm(0)), Station(inch(72), inch(1)))
BOTH = (*layer().brackets,)
OFF_THE_ROD = replace(BOTH[0], place=held("from-wall-left", inch(40)))


def one_panel(kit: str, flat: float) -> Room:
    return panels(carrying.three_brackets(kit), flat_width=inch(flat))


WORKS = [
    ("fixing", test_fixing.in_board(test_fixing.kg_held(0.95)), "Fix it with spring toggle 1/4 in"),
    ("sag", test_sag.weighing(14.0), "Add a bracket 28 in from the left end of the rod"),
    (
        "uplift",
        test_sag.lifting(8.0),
        "Make the right end bracket one that holds the rod down: shop-made bracket with closed strap",
    ),
    ("corner-bracket", corner.round_corner(away_in=9.0), "Move the right end bracket 3 in to the right"),
    ("meets", corner.chest(1, 46), "Set the rod 10⅞ in above the casing"),
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
    ("on-casing", plates.plate_above(-5.0), "Set the rod 2½ in above the casing"),
    # Finial of 2 3/4 in.
    ("meets", meeting.finial_from_corner(-INCH), "Set the left rod end 2¾ in from the corner"),
    ("meets", others.two_windows(-INCH), "Set both rod ends 9 in beyond the opening"),
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
    # Half of rings 6 in apart, and 1/4 in.
    ("folds-rub", cloth.out(2 * INCH), "Hold the rod 3¼ in out from the wall"),
    # 0.922 and 1/4 in: the next sixteenth.
    ("rings-tight", at(good_room(), LAYER, ring=inch(1)), "Take rings 1³⁄₁₆ in wide inside"),
    ("rings-tight", at(good_room(), LAYER, ring=inch(1)), "Take a thinner rod: 19 mm steel tube"),
    ("cloth-narrow", cloth.wishing(2.0), "Make every panel 56 in wide laid flat"),
    ("cloth-narrow", cloth.wishing(2.0), "Be content with a fullness of 1.92"),
    ("panel-length", cloth.in_hand(60), "Take the panels up to 58½ in long"),
    ("panel-length", cloth.in_hand(57.5), "Set the rod 3 in above the casing"),
    ("wash", cloth.shrinking(0.03), "Wash the cloth before it is cut, or the panels before they are measured"),
    ("fullness", panels(good_room(), flat_width=inch(30)), "Make every panel 39¾ in wide laid flat"),
    ("fullness", panels(good_room(), flat_width=inch(80)), "Make every panel 66¼ in wide laid flat"),
    # One panel closes from 45 1/2 in to the near side of the right strap, 97 5/8 in: 52 1/8 in, 1.5 times that is 78 3/16.
    ("fullness", one_panel("open-arm", 40), "Make the panel 78³⁄₁₆ in wide laid flat"),
    ("fullness", one_panel("open-arm", 60), "Make the panel 78³⁄₁₆ in wide laid flat"),
    # A pair that meets at a strap in the middle: 26 1/2 in each.
    (
        "fullness",
        panels(carrying.three_brackets("shop-strap", parks=("left", "right")), flat_width=inch(20)),
        "Make every panel 39¾ in wide laid flat",
    ),
    (
        "fullness",
        panels(carrying.three_brackets("open-arm", "eyelets", parks=("left", "right")), flat_width=inch(20)),
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
        carrying.three_brackets("shop-strap"),
        "Make bracket 2 from the left one that lets rings pass: slim open arm that open rings pass",
    ),
    # Brackets at 46 and 98 in, studs found 1 in further out.
    (
        "off-framing",
        good_room(substrate="board-timber-studs", studs=(inch(45), inch(99))),
        "Move the 2 brackets onto framing, 1 in at most: the cloth covers 2 in more, its fullness is 1.96 instead of 2.04",
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
    ("shutter-box", shutter.boxed(10), "Set the rod 10¼ in above the casing"),
    ("pelmet-clear", pelmet.dressed(projection=inch(3)), "Stand the pelmet 4¹³⁄₁₆ in out from the wall"),
    ("pelmet-cover", pelmet.dressed(depth=inch(5)), "Make the pelmet 5¾ in deep"),
    ("pelmet-depth", pelmet.dressed(depth=inch(12)), "Make the pelmet 13¹¹⁄₁₆ in deep"),
    ("pelmet-meets", ceiling(pelmet.dressed(), inch(88)), "Set the pelmet's top 3¾ in over the rod"),
    ("blind-behind", blind.blinded(projection=inch(4), height=inch(4)), "Hang the blind in the reveal"),
    ("child-cord", at(blind.blinded(cord="loop"), (), children=True), "Choose a blind without cord or chain"),
    (
        "tie-place",
        tie.tied(TieBack(out=inch(20)), at(good_room(), OPENING, left=inch(26))),
        "Set the hooks 16¾ in beyond the edges of the panels",
    ),
    ("child-loop", at(tie.tied(), (), children=True), "Hold the panels back by fixed arms instead of loops"),
    # 12 1/16 in under the low end of a ceiling that hung 11 3/4 in over it.
    ("crooked", crooked.sloping(INCH, 11.75 * INCH), "Set the rod 3¹¹⁄₁₆ in above the casing"),
    ("crooked", crooked.sloping(INCH, 11.75 * INCH), "Hang the rod half way between head and ceiling"),
    ("overlap-arm", tracks.track(overlap=inch(3), packet=Packet(arm=inch(2))), "Let the leading edges overlap by 2 in"),
    ("bent-round", tracks.bent(4, least_bend=inch(5)), "Bend it to a radius of 5 in"),
    (
        "pelmet-framing",
        pelmet_framing.shelf(left=inch(1), right=inch(1)),
        "Set the pelmet's top ½ in over the rod",
    ),
    ("pelmet-heat", pelmet_heat.heater(pelmet_heat.bottom() - 11), "Make the pelmet 13 in deep"),
    ("on-leaf", on_leaf.flush(3.0, 4.0), "Set the left rod end 5 in inside the jamb"),
    ("runs-down", crooked.leaning(0.3), "Hang the rod level"),
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


def _plain(label: str) -> str:
    """Set fractions as the label above writes them."""
    for built, one in (("¹⁄₂", "½"), ("³⁄₄", "¾"), ("¹⁄₄", "¼"), ("⁷⁄₈", "⅞")):
        label = label.replace(built, one)
    return label


@pytest.mark.parametrize(("rule", "room", "label"), WORKS, ids=[f"{rule}-{label[:40]}" for rule, _, label in WORKS])
def test_a_remedy_that_works(rule, room, label) -> None:
    answer = asked(room, rule)
    assert label in [_plain(said(remedy.label)) for remedy in answer.offered]
    assert answer.none_because is None
    finding = found(room, rule)[0]
    remedy = next(one for one in answer.offered if _plain(said(one.label)) == label)
    after = found(remedy.room)
    assert key_of(finding) not in {key_of(one) for one in after}
    assert grave(after) <= grave(found(room))
