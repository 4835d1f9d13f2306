"""Tracks and tension rods: their limits, what they cannot do, and what puts it right.

Figures are worked by hand from the room in ``rooms.py``: opening 54 to 90 in along the wall, sill 30 in, head 78 in.
"""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.errors import BadInput
from elevation.findings.model import Finding, Weight
from elevation.planning.remedies import remedies
from elevation.room.find import layer_of
from elevation.room.model import Fabric, Packet, Room, Sash
from elevation.room.mounting import mounted
from elevation.room.supports import hung_on
from elevation.setting_out.model import LayerOut
from elevation.units.mass import read_kg, say_kg
from tests.findings.rooms import HALF, INCH, LAYER, OPENING, at, found, good_room, held, inch, mm, rod, scene, the, trade

HAIR = 0.01


def track(**fields: object) -> Room:
    """The good room's rod, 56 in long, as a track."""
    return rod(hung_on(good_room(), LAYER, "track", 56 * INCH, trade()), **fields)


def tension(**fields: object) -> Room:
    """A tension rod between jambs 36 in apart."""
    deep = at(good_room(), OPENING, reveal=inch(4), sash=Sash("fixed"))
    inside = mounted(deep, LAYER[:3], "reveal", trade())
    return rod(hung_on(inside, LAYER, "tension-rod", 36 * INCH, trade()), **fields)


def landed(room: Room) -> LayerOut:
    return scene(room).set_out.treatments[0].layers[0]


def rules(room: Room) -> set[str]:
    return {finding.rule for finding in found(room)}


def offered(room: Room, finding: Finding) -> list[Room]:
    return [remedy.room for remedy in remedies(room, "w1", "s1", finding, trade()).offered]


# --- tracks -----------------------------------------------------------------------------------------------------


def test_fixings_are_spread_as_close_as_their_spacing_asks() -> None:
    # 56 in less 2 in at each end: 52 in, 24 in at most: three bays of 17 1/3 in. From memory; no source.
    layer = landed(track())
    assert [bracket.x_mm for bracket in layer.brackets] == pytest.approx(
        [46 * INCH, (46 + 52 / 3) * INCH, (46 + 104 / 3) * INCH, 98 * INCH], abs=HALF
    )
    assert layer.support.kind == "track"
    assert "track-fixings" not in rules(track())


def test_two_fixings_just_near_enough_and_just_too_far_apart() -> None:
    bare = at(track(), LAYER, brackets=layer_of(track(), LAYER).brackets[::3])

    def room(spacing: float) -> Room:
        return rod(bare, packet=Packet(spacing=mm(spacing)))

    # The two end fixings are 52 in apart.
    assert "track-fixings" not in rules(room(52 * INCH))
    assert "track-fixings" not in rules(room(52 * INCH - HALF + HAIR))
    broken = the(room(52 * INCH - HALF - HAIR), "track-fixings")
    assert broken.weight is Weight.BROKEN
    assert broken.measured_mm == pytest.approx(52 * INCH)
    ways = offered(room(40 * INCH), the(room(40 * INCH), "track-fixings"))
    assert ways
    assert all("track-fixings" not in rules(one) for one in ways)


def test_the_free_end_of_a_track() -> None:
    def room(inset: float) -> Room:
        first, *rest = layer_of(track(), LAYER).brackets
        return at(track(), LAYER, brackets=(replace(first, place=held("from-left-end", mm(inset))), *rest))

    # 4 in at most, from memory.
    assert "track-fixings" not in rules(room(4 * INCH + HALF - HAIR))
    assert "track-fixings" in rules(room(4 * INCH + HALF + HAIR))


def test_glides_run_past_every_fixing_and_cloth_begins_at_the_track_s_end() -> None:
    layer = landed(track())
    left, right = layer.panels
    assert (left.open[0], right.open[1]) == pytest.approx((layer.support.left_mm, layer.support.right_mm))
    assert not left.cannot_pass
    # 15 mm thick, and glides of 1/4 in under it (from memory).
    assert left.heading_mm == pytest.approx(7.5 + 0.25 * INCH)


def test_only_an_overlap_arm_lets_leading_edges_pass() -> None:
    # A track maker's arm overlaps about 100 mm; common practice, no source.
    over = landed(track(overlap=mm(100)))
    left, right = over.panels
    assert left.closed[1] - right.closed[0] == pytest.approx(100)
    met = landed(track())
    assert met.panels[0].closed[1] == pytest.approx(met.panels[1].closed[0])
    assert "no-cross" not in rules(track(overlap=mm(100)))


def test_rings_on_a_straight_rod_cannot_cross() -> None:
    room = rod(good_room(), overlap=mm(100))
    stop = the(room, "no-cross")
    assert stop.weight is Weight.STOP
    left, right = landed(room).panels
    assert left.closed[1] == pytest.approx(right.closed[0])
    ways = offered(room, stop)
    assert {layer_of(one, LAYER).rod.overlap for one in ways} == {None, mm(100)}
    assert {layer_of(one, LAYER).rod.kind for one in ways} == {"rod", "track"}
    assert "no-cross" not in rules(rod(good_room(), overlap=mm(0)))


def test_eyelets_do_not_hang_on_a_track() -> None:
    room = at(track(), LAYER, heading="eyelets")
    assert the(room, "no-cross").weight is Weight.STOP
    assert all("no-cross" not in rules(one) for one in offered(room, the(room, "no-cross")))
    # Hanging eyelets on a track gives them a heading that runs on glides.
    eyelets = at(good_room(), LAYER, heading="eyelets")
    assert "no-cross" not in rules(hung_on(eyelets, LAYER, "track", 56 * INCH, trade()))


# --- tension rods -----------------------------------------------------------------------------------------------


def test_a_tension_rod_has_no_brackets_and_needs_none() -> None:
    layer = landed(tension())
    assert layer.brackets == ()
    assert (layer.support.metal_left_mm, layer.support.metal_right_mm) == pytest.approx((54 * INCH, 90 * INCH))
    assert layer.support.cut_length_mm == pytest.approx(36 * INCH)
    assert not {"no-bracket", "splice", "past-jamb"} & rules(tension())


def test_before_the_wall_it_presses_against_nothing() -> None:
    with pytest.raises(BadInput, match="presses between two jambs"):
        hung_on(good_room(), LAYER, "tension-rod", 56 * INCH, trade())
    room = rod(good_room(), kind="tension-rod")
    assert the(room, "tension-rod").weight is Weight.STOP


def test_an_end_off_the_jamb() -> None:
    def room(off: float) -> Room:
        return tension(left=held("inside-opening", mm(off)))

    assert "tension-rod" not in rules(room(HALF - HAIR))
    assert "tension-rod" in rules(room(HALF + HAIR))
    assert any("tension-rod" not in rules(one) for one in offered(room(20), the(room(20), "tension-rod")))


@pytest.mark.parametrize(("least", "most", "fits"), [
    (36 * INCH, 60 * INCH, True),
    (36 * INCH + HALF - HAIR, 60 * INCH, True),
    (36 * INCH + HALF + HAIR, 60 * INCH, False),
    (20 * INCH, 36 * INCH, True),
    (20 * INCH, 36 * INCH - HALF + HAIR, True),
    (20 * INCH, 36 * INCH - HALF - HAIR, False),
])  # fmt: skip
def test_the_opening_inside_its_range_and_outside(least: float, most: float, fits: bool) -> None:
    room = tension(packet=Packet(mm(least), mm(most)))
    assert ("tension-rod" not in rules(room)) is fits
    if not fits:
        assert the(room, "tension-rod").weight is Weight.STOP
        assert any(layer_of(one, LAYER).rod.kind == "rod" for one in offered(room, the(room, "tension-rod")))


def test_what_the_packet_does_not_say_is_missing_and_not_guessed() -> None:
    assert "tension-rod" not in rules(tension())
    fields = {fact.field for fact in scene(tension()).set_out.missing}
    assert {"rod.packet.least", "rod.packet.holds_kg"} <= fields
    typed = tension(packet=Packet(inch(28), inch(48), 4.0))
    assert not [fact for fact in scene(typed).set_out.missing if fact.field.startswith("rod.packet")]


def test_cloth_heavier_than_the_packet_allows() -> None:
    lined = at(tension(), LAYER, fabric=Fabric(body="lined"))
    panels = landed(lined).panels
    # Two panels of 54 in, as long as they hang and 12 in for hem and heading (a 4 in and a 2 in hem, doubled), at 350 g a
    # square metre (from memory).
    area = sum(54 * INCH * ((panel.finished_length_mm or 0.0) + 12 * INCH) for panel in panels) / 1e6
    weight = area * 0.350

    def room(holds: float) -> Room:
        return rod(lined, packet=Packet(inch(28), inch(48), holds))

    assert "tension-rod" not in rules(room(weight + 1e-6))
    assert the(room(weight - 1e-6), "tension-rod").weight is Weight.BROKEN


def test_masses_are_read_as_they_are_typed() -> None:
    # A pound is 0.45359237 kg by definition.
    assert read_kg("4", "mm") == 4.0
    assert read_kg("4", "in") == pytest.approx(4 * 0.45359237)
    assert read_kg("4,5 kg", "in") == 4.5
    assert read_kg("10 lbs", "mm") == pytest.approx(4.5359237)
    assert read_kg(say_kg(4.0, "in"), "mm") == pytest.approx(4.0, rel=1e-3)
    with pytest.raises(BadInput, match="no mass"):
        read_kg("heavy", "in")


def test_there_and_back_is_a_rod_on_brackets_for_rods() -> None:
    back = hung_on(track(overlap=mm(50)), LAYER, "rod", 56 * INCH, trade())
    layer = layer_of(back, LAYER)
    assert layer.rod.overlap is None
    assert not any(bracket.kit.startswith("track") for bracket in layer.brackets)
    assert "no-cross" not in rules(back)
