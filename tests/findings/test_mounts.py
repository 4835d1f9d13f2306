"""Rods on the ceiling, in the reveal and on the sash: which rules hold, their limits, and what puts them right.

Figures are worked by hand from the room in ``rooms.py``: opening 54 to 90 in along the wall, sill 30 in, head 78 in.
"""

from __future__ import annotations

from typing import Any

import pytest

from elevation.errors import BadInput
from elevation.findings.model import Weight
from elevation.planning.remedies import remedies
from elevation.room.find import layer_of
from elevation.room.model import Bracket, Hem, Room, Sash
from elevation.room.mounting import mounted
from elevation.setting_out.model import TreatmentOut
from tests.findings.rooms import (
    HALF,
    INCH,
    LAYER,
    OPENING,
    at,
    ceiling,
    found,
    good_room,
    held,
    inch,
    mm,
    obstacle,
    rod,
    scene,
    the,
    trade,
    treatment,
    window,
    with_obstacle,
)

TREATMENT = LAYER[:3]
HAIR = 0.01


def on(mount: Any, room: Room | None = None) -> Room:
    return mounted(good_room() if room is None else room, TREATMENT, mount, trade())


def deep(reveal: float = 4, **fields: Any) -> Room:
    """The good room with a reveal, ``inch``; ``fields`` are of the sash."""
    return at(good_room(), OPENING, reveal=inch(reveal), sash=Sash(**{"kind": "fixed", **fields}))


def landed(room: Room) -> TreatmentOut:
    return scene(room).set_out.treatments[0]


def rules(room: Room) -> set[str]:
    return {finding.rule for finding in found(room)}


# --- the ceiling --------------------------------------------------------------------------------------------


def test_brackets_hold_the_rod_by_their_own_drop() -> None:
    # Cup brackets hold the axis 2 in below the ceiling: 94 in under 96 in.
    layer = landed(on("ceiling")).layers[0]
    assert layer.support.height_mm == pytest.approx(94 * INCH)
    for bracket in layer.brackets:
        assert bracket.on == "ceiling"
        assert bracket.plate[3] == pytest.approx(96 * INCH)
    lower = rod(on("ceiling"), height=held("bracket-drop", inch(1)))
    assert landed(lower).layers[0].support.height_mm == pytest.approx(93 * INCH)


def test_a_crown_moves_no_rod_that_hangs_from_the_ceiling() -> None:
    crowned = at(on("ceiling"), ("w1",), crown=inch(4))
    assert landed(crowned).layers[0].support.height_mm == pytest.approx(94 * INCH)
    below = rod(crowned, height=held("below-ceiling", inch(3)))
    assert landed(below).layers[0].support.height_mm == pytest.approx(93 * INCH)


@pytest.mark.parametrize("rule", ["rod-under-ceiling", "rod-high", "rod-low", "no-room", "on-casing"])
def test_rules_of_the_wall_do_not_hold_under_the_ceiling(rule: str) -> None:
    # 2 in below the ceiling, 13 3/4 in above the casing; and with the ceiling 2 in above the casing, no room at all.
    assert rule not in rules(on("ceiling"))
    assert rule not in rules(on("ceiling", ceiling(good_room(), inch(82.5))))
    assert "rod-high" in rules(rod(good_room(), height=held("above-casing", inch(13.75))))


def test_rules_of_cloth_and_reach_hold_under_the_ceiling() -> None:
    short = rod(on("ceiling"), left=held("beyond-opening", inch(3.5)), right=held("beyond-opening", inch(3.5)))
    # Brackets 1 1/2 in beyond, cloth from 2 in beyond: 2 1/2 in of its stack stand over the opening.
    assert {"reach-short", "stack-on-glass"} <= rules(short)


def test_no_room_is_put_right_by_the_ceiling_or_the_reveal() -> None:
    room = ceiling(good_room(), inch(84))
    offered = remedies(room, "w1", "s1", the(room, "no-room"), trade()).offered
    mounts = {remedy.room.walls[0].schemes[0].treatments[0].mount for remedy in offered}
    assert mounts == {"ceiling", "reveal"}


def test_a_bracket_under_the_ceiling_passes_before_what_is_flat_on_the_wall() -> None:
    # Brackets stand 3 1/2 in out, 3/8 in to either side: what stands out 3 1/8 in is passed.
    def hits(out: float) -> bool:
        board = obstacle("picture", 44 * INCH, 90 * INCH, 5 * INCH, 5.9 * INCH, out)
        return any(one.rule == "meets" and len(one.subject) == 5 for one in found(with_obstacle(on("ceiling"), board)))

    assert not hits(3.125 * INCH - HAIR)
    assert hits(3.125 * INCH + HAIR)


# --- in the reveal ------------------------------------------------------------------------------------------


def test_a_rod_in_the_reveal_fits_between_the_jambs() -> None:
    out = landed(on("reveal", deep()))
    support = out.layers[0].support
    # Sockets of 7/16 in, both together the 7/8 in that a rod and bracket maker's guide takes off the width.
    assert (support.metal_left_mm, support.metal_right_mm) == pytest.approx((54 * INCH, 90 * INCH))
    assert support.length_mm == pytest.approx(36 * INCH - 0.875 * INCH)
    assert support.height_mm == pytest.approx(76.5 * INCH)
    # 2 in off a sash that hangs 4 in back: 2 in behind the wall's face.
    assert (support.from_sash_mm, support.projection_mm) == pytest.approx((2 * INCH, -2 * INCH))
    assert support.carried == (True, True)
    # Cloth ends 1/2 in above the sill.
    assert [panel.hem_low_mm for panel in out.layers[0].panels] == pytest.approx([30.5 * INCH] * 2)
    assert not {"no-bracket", "past-jamb", "below-sill", "no-meet"} & rules(on("reveal", deep()))


def test_a_reveal_has_one_opening() -> None:
    room = good_room(openings=(window(), window("o2", left=100)))
    both = at(room, TREATMENT, openings=("o1", "o2"))
    with pytest.raises(BadInput, match="covers 2 openings"):
        on("reveal", both)
    tight = ceiling(both, inch(84))
    offered = remedies(tight, "w1", "s1", the(tight, "no-room"), trade()).offered
    assert {remedy.room.walls[0].schemes[0].treatments[0].mount for remedy in offered} == {"ceiling"}


@pytest.mark.parametrize("side", ["left", "right"])
def test_a_rod_that_runs_into_a_jamb_stops(side: str) -> None:
    def room(inside: float) -> Room:
        return rod(on("reveal", deep()), **{side: held("inside-opening", mm(inside))})

    socket = 7 / 16 * INCH
    assert "past-jamb" not in rules(room(socket))
    stop = the(room(socket - HAIR), "past-jamb")
    assert stop.weight is Weight.STOP
    assert stop.measured_mm == pytest.approx(-HAIR)
    offered = remedies(room(socket - 3), "w1", "s1", the(room(socket - 3), "past-jamb"), trade()).offered
    assert all("past-jamb" not in rules(remedy.room) for remedy in offered)
    assert offered


def test_a_rod_that_runs_into_the_head_stops() -> None:
    # 0.922 in conduit: its top is at the head where its axis is 0.461 in below it.
    half = 0.461 * INCH
    assert "past-jamb" not in rules(rod(on("reveal", deep()), height=held("below-head", mm(half))))
    assert "past-jamb" in rules(rod(on("reveal", deep()), height=held("below-head", mm(half - HAIR))))


def test_cloth_longer_than_the_opening_lies_on_the_sill() -> None:
    def room(long: float) -> Room:
        return at(on("reveal", deep()), LAYER, hem=Hem("length", mm(long)))

    # Rod's axis 76 1/2 in, cloth from 1 3/4 in below it: 44 3/4 in to the sill.
    most = 44.75 * INCH
    assert "below-sill" not in rules(room(most))
    assert "below-sill" not in rules(room(most + HALF - HAIR))
    long = room(most + HALF + HAIR)
    assert the(long, "below-sill").weight is Weight.BROKEN
    offered = remedies(long, "w1", "s1", the(long, "below-sill"), trade()).offered
    assert layer_of(offered[0].room, LAYER).hem == Hem("sill")


def test_the_handle_of_a_sash_meets_the_rod_before_it() -> None:
    # The handle stands at the closing side, where the socket is 1 3/4 in thick: its back is 2 - 0.875 in off the sash.
    def room(stands: float) -> Room:
        return on("reveal", deep(kind="casement-out", handle_stands=mm(stands)))

    assert "swing" not in rules(room(1.125 * INCH - HAIR))
    swing = [one for one in found(room(1.125 * INCH + HAIR)) if one.rule == "swing"]
    assert [one.subject for one in swing] == [LAYER]
    offered = remedies(room(1.75 * INCH), "w1", "s1", the(room(1.75 * INCH), "swing"), trade()).offered
    assert any(layer_of(one.room, LAYER).rod.projection.mm > 2 * INCH for one in offered)


def test_a_sash_that_opens_in_meets_what_hangs_in_the_reveal() -> None:
    assert "swing" in rules(on("reveal", deep(kind="casement-in")))
    # A leaf that opens in and hangs deeper in the reveal than it is wide still sweeps it.
    assert "swing" in rules(on("reveal", deep(reveal=40, kind="casement-in")))
    assert "swing" not in rules(on("reveal", deep(kind="double-hung")))


def test_a_shallow_reveal_lets_the_rod_stand_out() -> None:
    # 2 in off the sash and 0.461 in thick: 2.461 in of depth hold it.
    assert "reveal-depth" not in rules(on("reveal", deep(2.461)))
    shallow = on("reveal", deep(2.3))
    told = the(shallow, "reveal-depth")
    assert told.weight is Weight.CONSIDER
    assert told.measured_mm == pytest.approx(0.161 * INCH)


def test_what_a_reveal_does_not_say_is_missing() -> None:
    room = on("reveal", at(good_room(), OPENING, reveal=None, sash=Sash("double-hung")))
    fields = {fact.field for fact in scene(room).set_out.missing}
    assert {"reveal", "sash.handle_stands"} <= fields
    known = on("reveal", deep(kind="double-hung", handle_stands=mm(20)))
    assert not {"reveal", "sash.handle_stands"} & {fact.field for fact in scene(known).set_out.missing}


# --- IRC R310 with mounts ---------------------------------------------------------------------------------------


def sleeper(mount: Any, sash: str = "casement-out") -> Room:
    """A way out of 36 x 48 in, sill 30 in: 12 ft2."""
    room = at(at(good_room(), OPENING, escape=True, reveal=inch(4), sash=Sash(sash)), (), sleeping=True)
    return on(mount, room)


def test_a_rod_low_in_the_reveal_takes_the_height_that_r310_asks_for() -> None:
    # IRC R310.2.1: 24 in high. Underside of the rod at 24 in over the sill: its axis 24.461 in over it.
    just = rod(sleeper("reveal"), height=held("above-sill", inch(24.461)))
    low = rod(sleeper("reveal"), height=held("above-sill", mm(24.461 * INCH - HALF - 0.1)))
    bare_just, bare_low = (at(one, LAYER, panels=()) for one in (just, low))
    # 36 x 24 in is 6 ft2, more than the 5.7 that are asked for.
    assert "escape" not in {one.rule for one in found(bare_just) if one.weight is Weight.STOP}
    assert [one.weight for one in found(bare_low, "escape")] == [Weight.STOP]


def test_open_cloth_in_the_reveal_takes_width() -> None:
    # A double-hung window opens over half its height: 36 x 24 in, 6 ft2. Two stacks of 4 1/2 in leave 27 in or so: 4.5 ft2.
    stops = [one for one in found(sleeper("reveal", "double-hung"), "escape") if one.weight is Weight.STOP]
    assert len(stops) == 1


def test_what_hangs_on_the_sash_opens_with_it() -> None:
    assert "escape" not in {one.rule for one in found(sleeper("sash")) if one.weight is Weight.STOP}


# --- on the sash ------------------------------------------------------------------------------------------------


def test_a_cafe_rod_stands_at_a_share_of_the_opening() -> None:
    room = on("sash", deep())
    # Half of 48 in over a sill at 30 in.
    assert landed(room).layers[0].support.height_mm == pytest.approx(54 * INCH)
    two_thirds = rod(room, height=held("share-of-opening", inch(0)).__class__("share-of-opening", inch(1), 2 / 3))
    assert landed(two_thirds).layers[0].support.height_mm == pytest.approx(63 * INCH)
    over = rod(room, height=held("above-sill", inch(20)))
    assert landed(over).layers[0].support.height_mm == pytest.approx(50 * INCH)


def test_a_corrected_window_keeps_the_share() -> None:
    taller = at(on("sash", deep()), OPENING, height=inch(60))
    assert landed(taller).layers[0].support.height_mm == pytest.approx(60 * INCH)


def test_the_rod_on_a_sash_clears_its_handle() -> None:
    def room(stands: float) -> Room:
        return on("sash", deep(kind="double-hung", handle_stands=mm(stands)))

    # 3/4 in off the sash, 0.461 in thick: its back is 0.289 in off.
    back = 0.289 * INCH
    within = [one for one in found(room(back + HALF - HAIR), "reveal-depth") if one.weight is Weight.BROKEN]
    assert not within
    broken = the(room(back + HALF + HAIR), "reveal-depth")
    assert broken.weight is Weight.BROKEN
    offered = remedies(room(back + 5), "w1", "s1", the(room(back + 5), "reveal-depth"), trade()).offered
    assert offered
    assert all("reveal-depth" not in rules(one.room) for one in offered)


# --- there and back ---------------------------------------------------------------------------------------------


@pytest.mark.parametrize("mount", ["ceiling", "reveal", "sash"])
def test_there_and_back_leaves_a_rod_on_wall_brackets(mount: Any) -> None:
    back = mounted(on(mount, deep()), TREATMENT, "wall", trade())
    layer = layer_of(back, LAYER)
    assert len(layer.brackets) == 2
    assert {trade().brackets[bracket.kit].mount for bracket in layer.brackets} == {"wall"}
    assert not {one.rule for one in found(back) if one.weight is Weight.STOP}


def test_a_kit_that_lets_rings_pass_is_changed_for_one_that_does() -> None:
    room = at(good_room(), LAYER, brackets=(Bracket("b1", held("from-centre", inch(0)), "open-arm"),))
    assert layer_of(on("ceiling", room), LAYER).brackets[0].kit == "ceiling-hook"


def test_two_rods_of_unlike_mounts_are_not_compared() -> None:
    openings = (window(), window("o2", left=120))
    both = (treatment(), treatment("t2", ("o2",)))
    room = good_room(
        width=inch(240), openings=openings, schemes=(good_room().walls[0].schemes[0].__class__("s1", treatments=both),)
    )
    assert "uneven-rods" in rules(mounted(room, TREATMENT, "ceiling", trade()))
    assert "uneven-rods" not in rules(mounted(room, TREATMENT, "reveal", trade()))


def test_a_rod_inside_its_opening_parts_that_opening_and_no_gap_over_it() -> None:
    # Half of 48 in over the sill: one proportion of the treatment, a half, of 24 and 24 in.
    proportions = scene(on("sash", deep())).set_out.proportions
    parts = [[mm_ for _, mm_ in one.parts] for one in proportions]
    assert [24 * INCH, 24 * INCH] in [pytest.approx(part) for part in parts]
    assert all(length >= 0 for part in parts for length in part)


@pytest.mark.parametrize("mount", ["reveal", "sash"])
def test_what_stands_before_the_wall_does_not_meet_cloth_behind_its_face(mount: Any) -> None:
    # Geometry: a chest 20 in deep before the window begins at the wall's face; the cloth hangs behind that face.
    chest = obstacle("furniture", 50 * INCH, 0, 44 * INCH, 60 * INCH, 20 * INCH)
    room = with_obstacle(on(mount, deep(6)), chest)
    assert landed(room).layers[0].support.projection_mm < 0
    assert "meets" not in rules(room)
    assert "meets" in rules(with_obstacle(good_room(), chest)), "the same chest meets cloth before the wall"
