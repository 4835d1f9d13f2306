"""What is said: what is wrong, by how much, where. Every branch of every sentence; figures by hand from ``rooms.py``."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.model import Weight
from elevation.room.model import Room, Sash
from elevation.words import Style, say
from tests.findings import test_carrying as carrying
from tests.findings import test_limits as limits
from tests.findings import test_meeting as meeting
from tests.findings import test_meeting_others as others
from tests.findings import test_plates as plates
from tests.findings.rooms import (
    INCH,
    LAYER,
    OPENING,
    at,
    found,
    good_room,
    held,
    inch,
    mm,
    obstacle,
    panels,
    reach,
    rod,
    said,
    with_obstacle,
)

ROOM = good_room()


def own(room: Room, rule: str, limit_in: float) -> Room:
    return at(room, (), limits={rule: inch(limit_in)})


CASES = [
    (
        rod(ROOM, height=held("above-casing", inch(-1))),
        "rod-low",
        "Window 1: the rod's centre line is 1 in below the top of the casing; it needs to be 3 in above it.",
    ),
    (
        rod(at(ROOM, OPENING, casing=inch(0)), height=held("above-head", inch(2))),
        "rod-low",
        "Window 1: the rod's centre line is 2 in above the opening, 1 in less than the 3 in it needs.",
    ),
    (
        limits.rod_above_casing(14 * INCH),
        "rod-high",
        "Window 1: the rod's centre line is 14 in above the casing, 2 in more than the 12 in that is usual.",
    ),
    (
        rod(ROOM, height=held("above-floor", inch(97))),
        "rod-under-ceiling",
        "Window 1: the rod's centre line runs 1 in into the ceiling; it needs to be 3 in below it.",
    ),
    (
        at(limits.rod_below_ceiling(2 * INCH), ("w1",), crown=inch(4)),
        "rod-under-ceiling",
        "Window 1: the rod's centre line is 2 in below the crown at its closest, 1 in less than the 3 in it needs.",
    ),
    (
        limits.gap(5 * INCH),
        "no-room",
        "Window 1: the gap between head and ceiling is 5 in, too small to keep a rod 3 in above the head and 3 in below "
        "the ceiling; split the gap, fix the rod to the ceiling, or hang it in the reveal.",
    ),
    (
        limits.cloth_below_top(3 * INCH),
        "cloth-below-head",
        "Window 1: the closed cloth begins 3 in below the top of the casing; light will show above it.",
    ),
    (
        own(limits.cloth_below_top(3 * INCH), "cloth-below-head", 1),
        "cloth-below-head",
        "Window 1: the closed cloth begins 3 in below the top of the casing, where 1 in (this room's own limit) is the "
        "most; light will show above it.",
    ),
    (
        limits.bracket_beyond(4 * INCH),
        "reach-short",
        "Window 1: the left end bracket is 4 in beyond the opening, 2 in less than the 6 in it needs to draw the cloth "
        "clear.",
    ),
    (
        limits.bracket_beyond(-INCH),
        "reach-short",
        "Window 1: the left end bracket stands 1 in inside the opening; to draw the cloth clear it needs to be 6 in "
        "beyond it.",
    ),
    (
        limits.bracket_beyond(14 * INCH),
        "reach-long",
        "Window 1: the left end bracket is 14 in beyond the opening, 2 in more than the 12 in that is usual, and the open "
        "cloth would clear the glass with less.",
    ),
    (
        limits.stack_over_glass(3 * INCH),
        "stack-on-glass",
        "Window 1: the open left panel covers 3 in of the glass, 1 in more than the 2 in usually accepted.",
    ),
    (
        limits.stack_over_goal(3 * INCH),
        "stack-on-glass",
        "Window 1: the open left panel covers 3 in of the glass, 2 in more than this scheme's own goal of 1 in.",
    ),
    (
        limits.panels_apart(2 * INCH),
        "no-meet",
        "Window 1: the closed panels stay 2 in apart.",
    ),
    (
        own(limits.panels_apart(2 * INCH), "no-meet", 1),
        "no-meet",
        "Window 1: the closed panels stay 2 in apart. Limit: 1 in (this room's own limit).",
    ),
    (panels(ROOM, flat_width=inch(8)), "no-meet", "Window 1: the closed cloth covers none of it; 36 in stay bare."),
    (
        panels(ROOM, parks="left", flat_width=inch(10)),
        "no-meet",
        "Window 1: the closed cloth leaves 24½ in bare on the right.",
    ),
    (
        panels(ROOM, parks="right", flat_width=inch(10)),
        "no-meet",
        "Window 1: the closed cloth leaves 24½ in bare on the left.",
    ),
    (
        limits.bracket_off(-INCH),
        "bracket-level",
        "Window 1: the left end bracket hangs 1 in lower than the rod's other brackets.",
    ),
    (
        own(limits.bracket_off(INCH), "bracket-level", 0.5),
        "bracket-level",
        "Window 1: the left end bracket hangs 1 in higher than the rod's other brackets. Limit: ½ in (this room's own "
        "limit).",
    ),
    (limits.second_rod(-INCH), "uneven-rods", "Window 2: the rod stands 1 in lower than the other rods of this wall."),
    (
        own(limits.second_rod(INCH), "uneven-rods", 0.5),
        "uneven-rods",
        "Window 2: the rod stands 1 in higher than the other rods of this wall. Limit: ½ in (this room's own limit).",
    ),
    (
        limits.over_radiator(-INCH),
        "heat",
        "Window 1: the left panel covers the hot-water radiator by 1 in and traps its heat; end the cloth 1 in above its "
        "top, or keep it clear to the sides.",
    ),
    (
        limits.over_radiator(INCH / 2),
        "heat",
        "Window 1: the left panel ends ½ in above the hot-water radiator; 1 in lets the heat out, or keep it clear to the "
        "sides.",
    ),
    (
        limits.beside_heater("fan-heater")(34 * INCH),
        "heat",
        "Window 1: the left panel comes within 34 in of the fan heater, 2 in less than the 36 in to keep.",
    ),
    (
        with_obstacle(ROOM, obstacle("electric-heater", 1200, 60, 300, 200, 20, name="East")),
        "heat",
        "Window 1: the left panel hangs before the electric heater “East” and can touch it; it has to keep 12 in away.",
    ),
    (
        with_obstacle(ROOM, obstacle("floor-register", 97.5 * INCH, 0, 300, 5, 100)),
        "heat",
        "Window 1: the right panel reaches 1 in across the floor register, whose air would go into the cloth.",
    ),
    (
        limits.hem_lower(INCH),
        "hem-low",
        "Window 1: the hem of the left panel hangs 1 in lower than wished over the real floor; ¼ in is the most.",
    ),
    (
        limits.gap(2 * INCH),
        "no-room",
        "Window 1: the gap between head and ceiling is 2 in, too small to keep a rod 3 in above the head and 3 in below "
        "the ceiling; split the gap, fix the rod to the ceiling, or hang it in the reveal.",
    ),
    (
        limits.gap(-2 * INCH),
        "no-room",
        "Window 1: the ceiling comes down 2 in below the head; fix the rod to the ceiling, or hang it in the reveal.",
    ),
    (
        # The sash turns up to 78 in; the rod's underside is half of 0.922 in under its centre.
        rod(
            at(ROOM, OPENING, sash=Sash("casement-in", "left"), casing=inch(0)), height=held("above-head", mm(0.211 * INCH))
        ),
        "swing",
        "Window 1: when Window 1 opens it hits the rod, ¼ in deep.",
    ),
    (
        # Cloth begins half an inch beyond the bracket and hangs 4 1/2 in wide: it ends an inch inside the jamb.
        reach(at(ROOM, OPENING, sash=Sash("casement-in", "left")), inch(5)),
        "swing",
        "Window 1: when Window 1 opens it hits the left panel, 1 in of it.",
    ),
    (
        limits.hem_higher(INCH),
        "hem-high",
        "Window 1: the hem of the left panel hangs 1 in higher than wished over the real floor; ½ in is the most.",
    ),
    (
        limits.floor_varies(INCH),
        "hem-varies",
        "Window 1: the floor under the left panel varies by 1 in where its hem is level, ½ in more than ½ in.",
    ),
    (
        panels(ROOM, flat_width=inch(26.5 * 1.25)),
        "fullness",
        "Window 1: the left panel has only 1.25 times its closed width in cloth; 1.50 to 2.50 is usual for its heading.",
    ),
    (
        panels(ROOM, flat_width=inch(26.5 * 3)),
        "fullness",
        "Window 1: the left panel has 3.00 times its closed width in cloth; 1.50 to 2.50 is usual for its heading.",
    ),
    (
        carrying.three_brackets("shop-strap"),
        "cannot-pass",
        "Window 1: the left panel would have to pass bracket 2 from the left to close, and cannot.",
    ),
    (
        rod(ROOM, stock=inch(30)),
        "splice",
        "Window 1: the rod is joined 28 in from its left end, where no bracket carries the joint.",
    ),
    (
        others.two_windows(-INCH),
        "meets",
        "Window 2: rod, brackets or cloth run 1 in into those of Window 1.",
    ),
    (
        meeting.finial_from_corner(-INCH),
        "meets",
        "Window 1: the left end of the rod, with what ends it, reaches 1 in into the neighbouring wall.",
    ),
    (
        with_obstacle(ROOM, obstacle("furniture", 97.5 * INCH, 0, 400, 700, 6 * INCH)),
        "meets",
        "Window 1: the right panel hangs 3½ in out from the wall and meets the furniture, which stands 6 in out.",
    ),
    (
        with_obstacle(ROOM, obstacle("outlet", 46 * INCH, 82 * INCH, 70, 70)),
        "over-box",
        "Window 1: the wall plate of the left end bracket lies ¾ in over the outlet.",
    ),
    (
        with_obstacle(ROOM, obstacle("switch", 46 * INCH, 48 * INCH, 70, 70)),
        "over-box",
        "Window 1: a cable of the switch likely runs where the left end bracket is to be drilled.",
    ),
]


@pytest.mark.parametrize(
    ("room", "rule", "text"), CASES, ids=[f"{rule}-{index}" for index, (_, rule, _) in enumerate(CASES)]
)
def test_a_sentence(room, rule, text) -> None:
    texts = [said(one.text).replace("¹⁄₂", "½").replace("³⁄₄", "¾").replace("¹⁄₄", "¼") for one in found(room, rule)]
    assert text in texts


def test_openings_are_named_by_kind_and_number() -> None:
    low = limits.rod_above_casing(2 * INCH)
    door = at(low, OPENING, kind="door")
    assert said(found(door, "rod-low")[0].text).startswith("Door 1: ")
    assert said(found(at(low, OPENING, kind="sliding-door"), "rod-low")[0].text).startswith("Sliding door 1: ")
    openings = limits.second_rod(0.0).walls[0].openings
    two = at(limits.second_rod(0.0), ("w1", "s1"), treatments=())
    base = low.walls[0].schemes[0].treatments[0]
    for covered, head in ((("o1", "o2"), "Openings 1 and 2: "), (("o1", "o2", "o3"), "Openings 1 to 3: ")):
        room = at(two, ("w1", "s1"), treatments=(replace(base, openings=covered),))
        room = rod(at(room, ("w1",), openings=openings), height=held("above-casing", inch(2)))
        assert said(found(room, "rod-low")[0].text).startswith(head)


def test_findings_point_at_the_place() -> None:
    # The middle of the rod; the bare part's middle; the joint; the bracket.
    assert found(limits.rod_above_casing(2 * INCH), "rod-low")[0].at == pytest.approx((72 * INCH, 82.25 * INCH))
    assert found(panels(ROOM, parks="left", flat_width=inch(10)), "no-meet")[0].at == pytest.approx(
        (77.75 * INCH, 54 * INCH)
    )
    assert found(rod(ROOM, stock=inch(30)), "splice")[0].at == pytest.approx((72 * INCH, 84.25 * INCH))
    assert found(limits.bracket_beyond(4 * INCH), "reach-short")[0].at == pytest.approx((50 * INCH, 84.25 * INCH))
    middle = carrying.three_brackets("shop-strap")
    assert found(middle, "cannot-pass")[0].at == pytest.approx((72 * INCH, 84.25 * INCH))


def test_cautions_stand_where_the_act_is() -> None:
    def caution(room: Room, rule: str) -> str:
        one = found(room, rule)[0]
        return "" if one.caution is None else said(one.caution)

    assert "ladder" in caution(limits.bracket_off(INCH), "bracket-level")
    assert "detector" in caution(rod(ROOM, stock=inch(30)), "splice")
    assert "detector" in caution(at(ROOM, LAYER, brackets=()), "no-bracket")
    assert "lead" in caution(plates.plate_above(-5.0), "on-casing")
    assert "own sheet" in caution(limits.beside_heater("fan-heater")(34 * INCH), "heat")
    assert caution(limits.over_radiator(0.0), "heat") == ""


def test_a_rule_of_thumb_is_said_round_in_millimetres_and_what_was_measured_is_not() -> None:
    # 3 in are 76.2 mm: nobody's rule says "a little more than 76".
    metric = Style("mm", 1.0, ".", "en")
    low = found(at(limits.rod_above_casing(50.4), (), unit="mm"), "rod-low")[0]
    assert say(low.text, metric) == (
        "Window 1: the rod's centre line is 50+ mm above the casing, 26− mm less than the 76 mm it needs."
    )
    mine = found(at(limits.rod_above_casing(50.4), (), unit="mm", limits={"rod-low": inch(3.5)}), "rod-low")[0]
    assert "less than the 89− mm (this room's own limit) it needs" in say(mine.text, metric)
    assert say(mine.authority, metric) == "this room's own limit, instead of 76 mm (common practice)"
    gap = found(at(limits.gap(2 * INCH), (), unit="mm"), "no-room")[0]
    assert "is 51− mm, too small to keep a rod 76 mm above the head and 76 mm below the ceiling" in say(gap.text, metric)


def test_each_weight_comes_in_order() -> None:
    room = rod(
        panels(ROOM, flat_width=inch(30)), height=held("above-casing", mm(2 * INCH)), left=held("from-corner", inch(1))
    )
    weights = [one.weight for one in found(room)]
    assert weights == sorted(weights, key=[Weight.STOP, Weight.BROKEN, Weight.CONSIDER].index)
    assert len(set(weights)) == 3
