"""The sewing data: bolts that are used up to the millimetre, patterns that meet, marks that add up, alterations by hand.

The published examples are set out as rooms and laid on the bolt: sources beside them.
"""

from __future__ import annotations

import itertools
from typing import Any

import pytest
from msgspec.structs import replace

from elevation.planning.buying.whole import buying_list
from elevation.planning.dressed import Dressed, dress
from elevation.planning.made import runners_of
from elevation.planning.piece_names import hung_layers, panel_names
from elevation.planning.sewing.chains import running
from elevation.planning.sewing.linings import lining_strips
from elevation.planning.sewing.model import BoltPlan
from elevation.planning.sewing.panels import edge_lengths
from elevation.planning.sewing.positions import spread
from elevation.planning.sewing.whole import Sewing, sewing_of
from elevation.room.find import layer_of
from elevation.room.model import Fabric, Hem, Making, Room, Station
from elevation.setting_out.cloth import Bolt, cloth_of_layer
from elevation.trade.model import Trade
from elevation.words import say
from tests.findings.rooms import INCH, INCHES, LAYER, at, good_room, inch, mm, panels, rod, trade, window
from tests.strategies import random_room

YARD = 36 * INCH
SEEDS = range(40)


def sewn(room: Room, table: Trade | None = None) -> Sewing:
    table = table or trade()
    return sewing_of(dress(room, table), table)


def dressed(seed: int) -> Dressed:
    return dress(random_room(seed), trade())


@pytest.fixture(scope="module")
def random_sewings() -> list[tuple[Dressed, Sewing]]:
    rooms = [dressed(seed) for seed in SEEDS]
    return [(one, sewing_of(one, trade())) for one in rooms]


def check_full(bolt: BoltPlan) -> None:
    """Strips and areas fill the bolt: pieces and waste together are what was bought, to far less than 1 mm."""
    at_mm, area = 0.0, 0.0
    for strip in bolt.strips:
        assert strip.from_mm == pytest.approx(at_mm, abs=1e-6)
        assert strip.to_mm > strip.from_mm
        at_mm = strip.to_mm
        across = 0.0
        for part in strip.areas:
            assert part.from_mm == pytest.approx(across, abs=1e-6)
            across = part.to_mm
            area += (part.to_mm - part.from_mm) * (strip.to_mm - strip.from_mm)
        assert across == pytest.approx(bolt.width_mm, abs=1e-6)
    assert at_mm == pytest.approx(bolt.bought_mm * (1 - bolt.washed), abs=1e-3)
    assert area == pytest.approx(bolt.width_mm * at_mm, rel=1e-9)


def starts(bolt: BoltPlan) -> dict[tuple[tuple[str, ...], int], float]:
    """Where on the bolt each piece's top is, once it is trimmed: by panel and number."""
    return {
        (area.piece.panel.ref, area.piece.number): strip.from_mm + area.piece.trim_top_mm
        for strip in bolt.strips
        for area in strip.areas
        if area.piece is not None
    }


def test_pieces_and_waste_of_random_rooms_are_the_bolt(random_sewings: Any) -> None:
    uses = set()
    for _, sewing in random_sewings:
        for bolt in sewing.bolts:
            check_full(bolt)
            uses.add(bolt.use)
    assert uses == {"face", "lining", "interlining"}


def test_the_pattern_meets_at_every_seam_and_across_panels(random_sewings: Any) -> None:
    # Two pieces meet when their tops lie at the same place of the pattern: a whole number of repeats apart along the bolt,
    # and half a repeat more for neighbours of a half drop.
    patterned = dropped = 0
    for _, sewing in random_sewings:
        for bolt in sewing.bolts:
            if bolt.repeat_mm <= 0 or bolt.turned:
                continue
            patterned += 1
            dropped += bolt.half_drop
            places = starts(bolt)
            first = min(places.values())
            for (_, number), place in places.items():
                drop = bolt.repeat_mm / 2 if bolt.half_drop and number % 2 == 0 else 0.0
                off = (place - first - drop) % bolt.repeat_mm
                assert min(off, bolt.repeat_mm - off) < 1e-3
    assert patterned >= 5
    assert dropped >= 1


def test_a_half_keeps_the_selvedge_that_it_is_joined_by(random_sewings: Any) -> None:
    halves = 0
    for _, sewing in random_sewings:
        for bolt in sewing.bolts:
            for strip in bolt.strips:
                own = [area for area in strip.areas if area.piece is not None and area.piece.share == 0.5]
                if len({area.piece.cut_edge for area in own}) < 2:
                    continue
                halves += 1
                # Across the bolt counts from the piece's left: the right panel's half comes first, cut on its right.
                assert [area.piece.cut_edge for area in own] == ["right", "left"]
    assert halves >= 3


def test_every_panel_has_its_widths(random_sewings: Any) -> None:
    seen = 0
    for one, sewing in random_sewings:
        for layer in sewing.layers:
            if layer.made is None:
                continue
            for panel, cloth in zip(layer.panels, layer.made.cloth.panels, strict=False):
                if layer.made.cloth.railroaded:
                    assert [piece.share for piece in panel.pieces] == [0.0]
                    continue
                seen += 1
                assert sum(piece.share for piece in panel.pieces) == pytest.approx(cloth.widths)
                assert [piece.number for piece in panel.pieces] == list(range(1, len(panel.pieces) + 1))
                assert panel.pieces[0].share == 1.0 or cloth.widths < 1
        assert len(panel_names(one)) == sum(len(hung.layer.panels) for hung in hung_layers(one))
    assert seen >= 20


def test_lengths_up_a_panel_add_up_to_its_cut(random_sewings: Any) -> None:
    for one, sewing in random_sewings:
        for layer in sewing.layers:
            wall = layer.hung.wall
            for panel in layer.panels:
                for edge in (panel.left, panel.right):
                    assert panel.heading_mm + edge.finished_mm + edge.hem_mm == pytest.approx(panel.cut_mm, abs=1e-6)
                out = next(other for other in layer.hung.layer.panels if other.ref == panel.ref)
                true = edge_lengths(out, layer_of(one.room, layer.hung.layer.ref), wall)
                half = one.room.graduation_mm / 2
                assert abs(panel.left.finished_mm - true[0]) <= half + 1e-6
                assert abs(panel.right.finished_mm - true[1]) <= half + 1e-6


def test_marks_along_a_heading_add_up_to_the_finished_width(random_sewings: Any) -> None:
    kinds = set()
    for _, sewing in random_sewings:
        for layer in sewing.layers:
            for panel in layer.panels:
                marks = panel.marks
                kinds.add(marks.kind)
                if marks.pleats is not None:
                    pleats = marks.pleats
                    # Flat ends, spaces and pleats together are the flat panel; without the pleats the finished one.
                    begun, ended = pleats.marks_mm[0][0], panel.hemmed_mm - pleats.marks_mm[-1][1]
                    spaces = (pleats.count - 1) * pleats.space_mm
                    assert begun + spaces + ended == pytest.approx(panel.finished_mm)
                    assert begun + spaces + ended + pleats.count * pleats.take_up_mm == pytest.approx(panel.hemmed_mm)
                    assert begun == pytest.approx(2 * INCH)
                    # The return, or as much as at the leading edge where nothing turns back.
                    assert ended > INCH
                    assert (marks.hooks[0], marks.hooks[-1]) == (0.0, pytest.approx(panel.finished_mm))
                    assert len(marks.hooks) == pleats.count + 2
                    assert list(marks.hooks) == sorted(marks.hooks)
                elif len(marks.flat) > 1:
                    gaps = {round(b - a, 6) for a, b in itertools.pairwise(marks.flat)}
                    assert len(gaps) == 1
                    assert marks.flat[0] == pytest.approx(panel.hemmed_mm - marks.flat[-1])
                    assert marks.flat[0] >= 0
    assert {"pleats", "rings", "eyelets", "hooks"} <= kinds


def test_running_marks_add_up_and_are_never_off_by_more_than_half_a_graduation() -> None:
    places = [index * (4 + 1 / 3) * INCH for index in range(40)]
    tape = running(places, INCH / 16)
    assert sum(tape.between_mm) == pytest.approx(tape.marks_mm[-1] - tape.marks_mm[0])
    assert max(abs(a - b) for a, b in zip(places, tape.marks_mm, strict=True)) <= INCH / 32 + 1e-9
    assert all(abs(mark / (INCH / 16) - round(mark / (INCH / 16))) < 1e-9 for mark in tape.marks_mm)


def test_spreading_eyelets() -> None:
    assert spread(1000, 5, 0) == (0, 250, 500, 750, 1000)
    assert spread(1000, 4, 50) == (50, 350, 650, 950)
    assert spread(1000, 1, 50) == (500,)
    assert spread(1000, 0, 50) == ()


# -- published examples ------------------------------------------------------------------------------------------------


def workroom(span: float, making: Making, long: float, fabric: Fabric, **track: Any) -> Room:
    """A pair on a track of ``span`` inches with a finished length: the window is 20 in narrower than the track."""
    room = good_room(width=inch(span + 100), openings=(window(width=inch(span - 20)),))
    room = rod(room, kind="track", section="track-slim", **track)
    return at(room, LAYER, making=making, hem=Hem("length", inch(long)), fabric=fabric)


def t21() -> Room:
    """contractdecor.com/contentmgr/showdetails.php/id/8713: rod 56 + 12, 2 times, 54 in cloth, cut 79, repeat 8: cut 80."""
    making = Making(fullness=2.0, returns=True, heading=inch(7), hem=inch(8))
    fabric = Fabric(width=inch(54), repeat=inch(8), lining="lining-light")
    return workroom(56, making, 64, fabric, overlap=inch(4), projection=inch(3.5))


def t16() -> Room:
    """livingstonetextiles.com/2011/07: 3 widths, repeat 65 cm, 1.95 m each, half drop: 6.5 m."""
    making = Making(fullness=2.0, heading=mm(100), hem=mm(200))
    fabric = Fabric(width=mm(1370), repeat=mm(650), half_drop=True)
    room = workroom(60, making, 1, fabric, overlap=inch(0), projection=inch(3))
    return at(room, LAYER, hem=Hem("length", mm(1650)))


def two_inch_side_hems() -> Trade:
    """Side hems of 2 in an edge, as the how-to articles have them: 8 in for a pair."""
    rows = trade().allowances
    return replace(trade(), allowances={**rows, "side-hem": replace(rows["side-hem"], length_mm=2 * INCH)})


def t02() -> Room:
    """ehow.co.uk/how_6326063: rod 84, 2.5 times, returns 7, side hems 8: 225, 5 widths of 54, cut 88, 440 in."""
    making = Making(fullness=2.5, returns=True, heading=inch(2), hem=inch(8))
    room = workroom(84, making, 78, Fabric(width=inch(54)), overlap=inch(0), projection=inch(3))
    return replace(room, fullness_rule="rod")


def t22() -> Room:
    """mycurtainstyles.com/Yardage_for%20rodpocket_curtain.html: 2 times 100, returns 7, side hems 8: 215, 4 of 95.5 in."""
    making = Making(fullness=2.0, returns=True, heading=inch(2.5), hem=inch(8))
    room = workroom(100, making, 85, Fabric(width=inch(54)), overlap=inch(0), projection=inch(3))
    return at(replace(room, fullness_rule="rod"), LAYER, heading="rod-pocket")


def cuts(bolt: BoltPlan) -> list[float]:
    return [(strip.to_mm - strip.from_mm) / INCH for strip in bolt.strips if strip.kind == "cut"]


def test_t21_on_the_bolt() -> None:
    face, lining = sewn(t21()).bolts
    check_full(face)
    check_full(lining)
    assert cuts(face) == pytest.approx([80, 80, 80])
    # The published 240 in are the cuts; the first motif is found in one repeat more, once for the room.
    assert [strip.kind for strip in face.strips] == ["place", "cut", "cut", "cut", "left"]
    assert face.strips[0].to_mm == pytest.approx(8 * INCH)
    assert face.bought_mm == pytest.approx(7 * YARD)
    # 1.5 widths each side; 1 in of each cut is for the repeat.
    assert sorted(piece.share for piece in face.pieces) == [0.5, 0.5, 1.0, 1.0]
    assert {round(piece.trim_bottom_mm / INCH, 6) for piece in face.pieces} == {1.0}
    assert sum(cuts(lining)) == pytest.approx(3 * 66.5)


def test_t16_on_the_bolt() -> None:
    (face,) = sewn(t16()).bolts
    check_full(face)
    assert [round(cut * INCH) for cut in cuts(face)] == [1950, 1950, 1950]
    kinds = [(strip.kind, round(strip.to_mm - strip.from_mm)) for strip in face.strips]
    assert kinds[0] == ("place", 650)
    # Two halves of the repeat that the half drop adds: one before the pieces that start lower, one after them.
    assert sum(long for kind, long in kinds if kind in ("cut", "match")) == 6500
    assert [long for kind, long in kinds if kind == "match"] == [325, 325]


def test_t02_on_the_bolt() -> None:
    (face,) = sewn(t02(), two_inch_side_hems()).bolts
    check_full(face)
    assert cuts(face) == pytest.approx([88] * 5)
    assert sum(cuts(face)) == pytest.approx(440)
    assert face.bought_mm == pytest.approx(12.5 * YARD)
    assert round(sum(cuts(face)) / 36, 2) == 12.22


def test_t22_on_the_bolt() -> None:
    (face,) = sewn(t22(), two_inch_side_hems()).bolts
    check_full(face)
    assert cuts(face) == pytest.approx([95.5] * 4)
    assert sum(cuts(face)) == pytest.approx(382)
    assert face.bought_mm == pytest.approx(11 * YARD)


def test_p01_a_books_pleats_have_a_hook_each_and_one_at_either_edge() -> None:
    # How to Make Draperies (Singer Sewing Library 102, 1960): the first pleat is 2 in from the leading edge, the last at
    # the return; a retailer's guide counts two hooks more than pleats (bedbathstore.com/pinch.html).
    room = at(t21(), LAYER, heading="pinch-pleat")
    made = sewn(room).layers[0]
    for panel in made.panels:
        assert len(panel.marks.hooks) == panel.marks.pleats.count + 2
        assert panel.marks.pleats.marks_mm[0][0] == pytest.approx(2 * INCH)
    assert set(runners_of(room, layer_of(room, LAYER), made.hung.layer, trade()).values()) == {
        len(panel.marks.hooks) for panel in made.panels
    }


# -- other cloth -------------------------------------------------------------------------------------------------------


def test_slack_of_half_a_repeat_takes_nothing_more() -> None:
    # A cut of 79 in repeats of 11 is 88: the 9 in to spare hold the half repeat of 5.5.
    room = at(t21(), LAYER, fabric=Fabric(width=inch(54), repeat=inch(11), half_drop=True))
    (face,) = sewn(room).bolts
    check_full(face)
    assert [strip.kind for strip in face.strips] == ["place", "cut", "cut", "cut", "left"]
    trims = {
        (piece.number, round(piece.trim_top_mm / INCH, 6), round(piece.trim_bottom_mm / INCH, 6)) for piece in face.pieces
    }
    assert trims == {(1, 0.0, 9.0), (2, 5.5, 3.5)}


def test_washed_cloth_is_laid_out_as_it_is_after_the_wash() -> None:
    making = Making(2.0, returns=True, heading=inch(7), hem=inch(8), washed_first=True)
    room = at(t21(), LAYER, making=making, fabric=Fabric(width=inch(54), shrinks=0.04))
    (face,) = sewn(room).bolts
    check_full(face)
    assert cuts(face) == pytest.approx([79, 79, 79])
    assert face.washed == 0.04


def test_cloth_on_its_side_is_a_stretch_for_each_panel() -> None:
    room = at(t21(), LAYER, fabric=Fabric(width=inch(90), railroaded=True))
    (face,) = sewn(room).bolts
    check_full(face)
    # 68 in of flat cloth and two side hems of 3 in.
    assert cuts(face) == pytest.approx([74, 74])
    assert [area.kind for area in face.strips[0].areas] == ["piece", "strip"]
    # Washed first it is bought longer by what the wash takes of that stretch, and not of the drop across it.
    making = Making(2.0, returns=True, heading=inch(7), hem=inch(8), washed_first=True)
    room = at(t21(), LAYER, making=making, fabric=Fabric(width=inch(90), railroaded=True, shrinks=0.04))
    (washed,) = sewn(room).bolts
    check_full(washed)
    assert cuts(washed) == pytest.approx([74, 74])
    assert [piece.length_mm for piece in washed.pieces] == pytest.approx([79 * INCH] * 2)
    assert [piece.width_mm for piece in washed.pieces] == pytest.approx([74 * INCH] * 2)


def test_a_pattern_parts_no_width_between_panels_of_one_side() -> None:
    # Two panels that park on the left cannot share a width: its left half would show its cut edge inside the panel.
    room = at(t21(), LAYER, fabric=Fabric(width=inch(54), repeat=inch(8)))
    assert sum(piece.share for piece in sewn(room).bolts[0].pieces) == 3
    one_side = panels(room, parks="left")
    out = dress(one_side, trade()).walls[0].treatments[0].layers[0]
    made = cloth_of_layer(one_side, layer_of(one_side, LAYER), out, trade())
    assert all(panel.widths == int(panel.widths) for panel in made.panels)


def test_linings_take_no_more_widths_than_were_bought() -> None:
    names = tuple(panel_names(dress(t21(), trade())).values())[:1] * 3
    # Three panels of 0.6 of a width: 1.8 widths were bought as 2, so one panel is pieced.
    bolt = Bolt(1000, 2, 900, 1800, 2000, plain_mm=900, each_mm=(600, 600, 600))
    strips = lining_strips(bolt, names, ("left", "left", "right"), 10)
    assert len(strips) == 2
    assert sum(area.to_mm - area.from_mm for strip in strips for area in strip if area.kind == "piece") >= 1800
    whole = Bolt(1000, 3, 900, 2700, 3000, plain_mm=900, each_mm=(1300, 1300))
    rows = lining_strips(whole, names[:2], ("left", "right"), 10)
    assert [[round(area.to_mm - area.from_mm) for area in row] for row in rows] == [[1000], [1000], [320, 320, 360]]


# -- ready-made panels -------------------------------------------------------------------------------------------------

# The cloth of the good room begins 82 1/2 in over the floor: clear by 1/2 in it is 82 in long.


def altered(length: float, **room: Any) -> Any:
    base = good_room(**room)
    return sewn(panels(base, measured_length=inch(length))).layers[0].alterations[0]


@pytest.mark.parametrize(
    ("length", "what"),
    [
        (81.5 - 1 / 32 - 0.001, "short"),
        (81.5 - 1 / 32, "fine"),
        (82.25 + 1 / 32, "fine"),
        (82.25 + 1 / 32 + 0.001, "lift"),
        (83 - 1 / 32 - 0.001, "lift"),
        (83 - 1 / 32, "turn-up"),
        (90 - 1 / 32 - 0.001, "turn-up"),
        (90 - 1 / 32, "shorten"),
        (95, "shorten"),
    ],
)
def test_what_a_measured_panel_needs(length: float, what: str) -> None:
    # Off by up to 1/2 in short and 1/4 in long is as wished; a fold of 1 in lies flat; a hem takes 8 in.
    assert altered(length).what == what


def test_fold_cut_and_hem_by_hand() -> None:
    one = altered(95)
    assert one.left.finished_mm == pytest.approx(82 * INCH)
    assert one.cut_mm == pytest.approx(90 * INCH)
    assert one.left.hem_mm == pytest.approx(8 * INCH)
    turned = altered(84)
    assert turned.cut_mm is None
    assert turned.right.hem_mm == pytest.approx(2 * INCH)
    assert altered(80).by_mm == pytest.approx(2 * INCH)


def test_a_floor_that_falls_deepens_the_hem_on_one_side() -> None:
    # 1 in over the wall's 144: the left panel hangs closed from 53.5-8.5... so its edges are measured off the set-out.
    floor = (Station(inch(0), inch(0)), Station(inch(144), inch(-1)))
    one = altered(95, floor=floor)
    out = (
        dress(panels(good_room(floor=floor), measured_length=inch(95)), trade()).walls[0].treatments[0].layers[0].panels[0]
    )
    fall = (out.closed[1] - out.closed[0]) / 144
    assert one.right.finished_mm - one.left.finished_mm == pytest.approx(fall, abs=INCH / 16)
    assert one.left.hem_mm - one.right.hem_mm == pytest.approx(one.right.finished_mm - one.left.finished_mm)
    assert one.cut_mm == pytest.approx(one.left.finished_mm + one.left.hem_mm)
    assert one.right.hem_mm == pytest.approx(8 * INCH)


def test_nothing_is_marked_from_a_label() -> None:
    one = sewn(panels(good_room(), label_length=inch(95))).layers[0].alterations[0]
    assert (one.what, one.left, one.right, one.cut_mm) == ("measure", None, None, None)
    assert one.off_mm == pytest.approx(INCH)


def test_a_panel_that_is_to_hang_as_it_is() -> None:
    room = at(good_room(), LAYER, hem=Hem("panel"))
    assert sewn(panels(room, measured_length=inch(80))).layers[0].alterations[0].what == "as-it-is"
    # One that would lie on the floor is brought clear of it.
    dragging = sewn(panels(room, measured_length=inch(95))).layers[0].alterations[0]
    assert dragging.what == "shorten"
    assert dragging.left.finished_mm == pytest.approx(82 * INCH)


def test_names_are_told_apart_by_side_and_layer() -> None:
    names = [say(name.mark, INCHES) for name in panel_names(dress(good_room(), trade())).values()]
    assert names == ["1L", "1R"]


def test_what_is_bought_is_what_is_laid_out() -> None:
    # The buying list and the bolts are reckoned apart; both must come to the same lengths, the first motif's repeat counted
    # once for two windows of one cloth.
    first = t21()
    wall = first.walls[0]
    laid = wall.schemes[0].treatments[0]
    second = replace(laid, id="t2", openings=("o2",))
    other = window("o2", left=400, width=inch(36))
    room = replace(
        first,
        walls=(
            replace(
                wall,
                width=inch(600),
                openings=(*wall.openings, other),
                schemes=(replace(wall.schemes[0], treatments=(laid, second)),),
            ),
        ),
    )
    one = dress(room, trade())
    face = next(bolt for bolt in sewing_of(one, trade()).bolts if bolt.use == "face")
    check_full(face)
    assert [strip.kind for strip in face.strips].count("place") == 1
    assert cuts(face) == pytest.approx([80] * 6)
    lines = {line.part: line for line in buying_list((one,), (), trade()).lines}
    cloth = next(line for line in lines.values() if line.measure == "length" and line.needed == pytest.approx(488 * INCH))
    assert cloth.bought == pytest.approx(face.bought_mm)
    assert len([line for line in lines.values() if line.part.startswith("cloth:")]) == 2
