"""The section: what it cuts, how it is drawn, and that its figures are those of the set-out.

Figures by hand from ``tests/findings/rooms.py``: rod 84 1/4 in high and 3 1/2 in before the wall, casing top 80 1/4 in,
ceiling 96 in, hem 1/2 in over the floor.
"""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from itertools import pairwise

import pytest
from msgspec.structs import replace

from elevation import places
from elevation.commands.sections import section_pictures
from elevation.errors import BadInput
from elevation.output.svg import to_svg
from elevation.room.edits import replace_at
from elevation.room.file import load_room
from elevation.room.model import Blind, Board, Held, Hem, Pelmet, Station, Stool
from elevation.room.style import style_for
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.records import Dimension, Fill, Path
from elevation.sheet.section import draw_section, lay_section, treatment_of
from elevation.sheet.section_chains import chains_of
from elevation.sheet.section_cut import cut_at, station_of, treatment_at, treatment_shown
from elevation.sheet.section_wall import solids
from elevation.trade import load_trade
from elevation.words import Style
from tests.cross.vectors import SVG, svg_strokes
from tests.findings.rooms import INCH, LAYER, good_room, inch, layer, obstacle, rod, treatment, window, with_obstacle
from tests.sheet.draw_checks import check_grammar
from tests.strategies import random_room

TRADE = load_trade()
STYLE = Style()
DEMOS = sorted(places.demo_rooms().glob("*.room.json"))
EVERY = [
    pytest.param(demo, wall, scheme, id=f"{demo.name[:-10]}-{wall.id}-{scheme.id}")
    for demo in DEMOS
    for wall in load_room(demo).walls
    for scheme in wall.schemes
]


def cut_of(room, at=None, index=0):
    wall = room.walls[index]
    laid = set_out_afresh(room, wall.id, wall.schemes[0].id if wall.schemes else None, TRADE)
    return cut_at(wall, laid, TRADE, laid.treatments[0] if laid.treatments else None, at)


def segments(room, side, **wanted):
    cut = cut_of(room)
    chains = chains_of(cut, treatment_of(room, cut), STYLE, **wanted)
    return [segment for chain in getattr(chains, side) for segment in chain.segments]


def lengths(room, side, field=None):
    return [
        (segment.high - segment.low) / INCH for segment in segments(room, side) if field is None or segment.field == field
    ]


def distances(data, scale):
    """Wall mm between neighbouring strokes on one dimension line, read back from the sheet."""
    ends = [stroke.middle for stroke in svg_strokes(data, "dimension") if stroke.is_oblique]
    found = []
    for along, across in ((0, 1), (1, 0)):
        lines = {}
        for end in ends:
            lines.setdefault(round(end[across], 2), set()).add(round(end[along], 4))
        for line in lines.values():
            found += [(b - a) * scale for a, b in pairwise(sorted(line))]
    return found


@pytest.mark.parametrize(("demo", "wall", "scheme"), EVERY)
def test_figures_read_back_from_the_sheet_are_those_of_the_set_out(demo, wall, scheme):
    room = load_room(demo)
    laid = set_out_afresh(room, wall.id, scheme.id, TRADE)
    pictures = section_pictures(room, wall, scheme, TRADE)
    assert len(pictures) == max(1, len(laid.treatments))
    for picture, hung in zip(pictures, laid.treatments, strict=False):
        found = distances(to_svg(picture), picture.scale)
        front = hung.layers[0]
        support = front.support
        depth = support.projection_mm if support.from_sash_mm is None else support.from_sash_mm
        board = front.board.thick_mm if front.board is not None and support.from_sash_mm is None else 0.0
        wanted = [depth - board]
        panel = front.panels[0] if front.panels else None
        if panel is not None and panel.fold_depth_mm > 0.5:
            wanted.append(panel.fold_depth_mm)
        opening = hung.openings[0]
        if hung.mount not in ("reveal", "sash") and opening.casing_mm and opening.head == "flat":
            above = support.height_mm - opening.casing_top_mm
            held = next(one for one in scheme.treatments if one.id == hung.ref[-1]).layers[0].rod.height.hold
            if above > 0.5 and held != "above-head":
                wanted.append(above)
        for value in wanted:
            # 0.01 mm of paper
            assert any(abs(value - one) < 0.02 * picture.scale for one in found), (value, sorted(found))


@pytest.mark.parametrize(("demo", "wall", "scheme"), EVERY)
def test_every_section_can_be_replayed_and_nothing_overlaps(demo, wall, scheme):
    room = load_room(demo)
    laid = set_out_afresh(room, wall.id, scheme.id, TRADE)
    for hung in laid.treatments:
        cut = cut_at(wall, laid, TRADE, hung)
        check_grammar(draw_section(cut, TRADE))
        for scale in (6.0, 12.0, 24.0, 48.0):
            annotation = lay_section(cut, treatment_of(room, cut), style_for(room), scale)
            boxes = [box for box, _, _ in annotation.labels]
            for index, one in enumerate(boxes):
                for other in boxes[:index]:
                    assert not (
                        one[0] < other[2] - 1e-6
                        and other[0] < one[2] - 1e-6
                        and one[1] < other[3] - 1e-6
                        and other[1] < one[3] - 1e-6
                    ), (one, other)
            low, bottom, high, top = annotation.extent
            for box in boxes:
                assert low <= box[0]
                assert bottom <= box[1]
                assert box[2] <= high
                assert box[3] <= top


def test_the_good_room_by_hand():
    room = good_room()
    cut = cut_of(room)
    assert cut.station_mm == 72 * INCH  # the middle of a 36 in window whose left side is at 54 in
    assert (cut.head_mm, cut.casing_top_mm) == pytest.approx((78 * INCH, 80.25 * INCH))
    assert lengths(room, "top") == pytest.approx([3.5])
    # floor to hem, hem to rod, rod to ceiling; then rod over casing
    assert lengths(room, "right") == pytest.approx([0.5, 83.75, 11.75, 4.0])
    assert [segment.held for segment in segments(room, "right")] == [True, False, False, True]
    assert lengths(room, "left") == pytest.approx([30.0, 48.0, 18.0])
    depth = cut.hangings[0].panel.fold_depth_mm / INCH
    # casing 3/4 in thick to the cloth's back; wall to its back, and its folds
    assert lengths(room, "bottom") == pytest.approx([3.5 - depth / 2 - 0.75, 3.5 - depth / 2, depth])


@pytest.mark.parametrize(
    ("hold", "at", "wanted"),
    [("above-head", 6.25, 6.25), ("above-casing", 4, 4.0), ("above-floor", 84.25, 84.25), ("below-ceiling", 11.75, 11.75)],
)
def test_what_is_held_of_the_height_is_marked_where_it_is_measured(hold, at, wanted):
    room = rod(good_room(), height=Held(hold, inch(at)))
    held = [
        (segment.high - segment.low) / INCH
        for segment in segments(room, "right")
        if segment.held and segment.field == "rod.height"
    ]
    assert held == pytest.approx([wanted])


def test_a_mounting_board_stands_between_wall_and_bracket_with_its_own_figure():
    room = replace_at(good_room(), LAYER, board=Board(inch(2), inch(2)))
    assert lengths(room, "top") == pytest.approx([0.75, 3.5])  # nominal 1x6 is 3/4 in thick: PS 20
    groups = draw_section(cut_of(room), TRADE)
    assert [group.layer for group in groups if group.layer == "board"] == ["board"]


def test_cloth_that_a_stool_stands_out_past_is_said_to_be_too_deep():
    deep = replace(window(), stool=Stool(inch(1), inch(1), inch(5)))
    short = replace(window(), stool=Stool(inch(1), inch(1), inch(2)))
    for opening, ink in ((deep, "accent"), (short, "thin")):
        first = segments(good_room(openings=(opening,)), "bottom")[0]
        assert first.ref == ("w1", "o1")
        assert first.ink == ink
    assert "too deep" in segments(good_room(openings=(deep,)), "bottom")[0].texts[0]


def test_a_radiator_before_the_wall_is_drawn_and_cleared():
    room = with_obstacle(good_room(), obstacle("hot-water-radiator", 54 * INCH, 4 * INCH, 36 * INCH, 20 * INCH, 2 * INCH))
    first = segments(room, "bottom")[0]
    cut = cut_of(room)
    assert first.ref == cut.obstacles[0][0].ref
    assert first.high - first.low == pytest.approx(cut.hangings[0].back_mm - 2 * INCH)
    assert cut.obstacles[0][1]
    groups = draw_section(cut, TRADE)
    assert any(group.layer == "obstacle" and len(group.records) > 4 for group in groups)


def test_a_hem_at_the_sill_says_how_far_it_is_over_the_radiator():
    room = with_obstacle(good_room(), obstacle("hot-water-radiator", 54 * INCH, 4 * INCH, 36 * INCH, 20 * INCH, 4 * INCH))
    room = replace_at(room, LAYER, hem=Hem("sill"))
    # The hem is 1/2 in over the sill at 30 in, the radiator's top at 24 in.
    assert 6.5 in [round(length, 6) for length in lengths(room, "right")]


@pytest.mark.parametrize("mount", ["reveal", "sash"])
def test_what_hangs_in_the_opening_is_measured_from_the_sash(mount):
    decided = layer()
    decided = replace(
        decided,
        rod=replace(
            decided.rod,
            height=Held("below-head", inch(2)),
            left=Held("inside-opening", inch(0)),
            right=Held("inside-opening", inch(0)),
            projection=inch(2),
        ),
        hem=Hem("sill"),
    )
    room = good_room(
        openings=(window(reveal=inch(6)),),
        schemes=(replace(good_room().walls[0].schemes[0], treatments=(treatment(layers=(decided,), mount=mount),)),),
    )
    first = segments(room, "top")[0]
    assert (first.low / INCH, first.high / INCH) == pytest.approx((-6.0, -4.0))
    assert 2.0 in [round(one, 6) for one in lengths(room, "right", "rod.height")]
    cut = cut_of(room)
    assert cut.hangings[0].centre_mm == pytest.approx(-4 * INCH)
    assert cut.thick_mm > 6 * INCH


def test_substrates_are_hatched_each_in_its_own_way():
    looks = {}
    for name in TRADE.cuts:
        group = next(one for one in draw_section(cut_of(good_room(substrate=name)), TRADE) if one.layer == "wall")
        looks[name] = tuple(record.steps for record in group.records if isinstance(record, Path | Fill))
    assert set(looks) == set(TRADE.substrates)
    for kind in ("board-timber-studs", "solid-brick", "hollow-block", "aerated-block", "concrete", "timber", "not-known"):
        assert [
            name for name in looks if looks[name] == looks[kind] and TRADE.cuts[name].hatch != TRADE.cuts[kind].hatch
        ] == []


def test_hatching_stays_inside_the_wall():
    cut = cut_of(good_room(substrate="solid-brick"))
    left, bottom, right, top = cut.bounds
    group = next(one for one in draw_section(cut, TRADE) if one.layer == "wall")
    for record in group.records:
        if isinstance(record, Path) and not record.pen.dash and record.pen.width == 0.13:
            for step in (one for one in record.steps if len(one) > 1):
                assert left - 1e-6 <= step[1] <= right + 1e-6
                assert bottom - 90 - 1e-6 <= step[2] <= top + 90 + 1e-6


def test_a_cut_beside_the_opening_goes_through_the_whole_wall():
    cut = cut_of(good_room(), at=20 * INCH)
    assert cut.opening is None
    assert solids(cut) == ((-cut.thick_mm, 0.0, 0.0, 96 * INCH),)
    inside = cut_of(good_room(), at=54 * INCH)
    assert len(solids(inside)) == 2


def test_an_uneven_floor_counts_under_the_cloth():
    room = good_room(floor=(Station(inch(0), inch(0)), Station(inch(144), inch(2))))
    # Every panel is cut to its own floor: the gap under the front one reads as decided wherever it hangs.
    cut = cut_of(room)
    front = cut.hangings[0]
    assert front.hem_mm - cut.floor_mm == pytest.approx(0.5 * INCH, abs=0.3 * INCH)
    assert cut.floor_mm == pytest.approx(front.place_mm / (144 * INCH) * 2 * INCH)


def test_which_treatment_is_shown_follows_the_selection():
    room = load_room(next(demo for demo in DEMOS if "living" in demo.name))
    laid = set_out_afresh(room, "south", room.walls[0].schemes[1].id, TRADE)
    first, second = laid.treatments[:2] if len(laid.treatments) > 1 else (laid.treatments[0], laid.treatments[0])
    assert treatment_shown(laid, None) is first
    assert treatment_shown(laid, second.layers[0].ref) is second
    assert treatment_shown(laid, second.openings[0].ref) in (first, second)
    assert treatment_at(laid, station_of(laid, second)) in (first, second)
    assert treatment_at(laid, -1e6) is None


def test_a_bare_wall_has_a_section_too():
    room = good_room(schemes=())
    pictures = section_pictures(room, room.walls[0], None, TRADE)
    assert len(pictures) == 1
    assert not [
        record
        for group in pictures[0].groups
        for record in group.records
        if isinstance(record, Dimension) and record.along == "x"
    ]


def test_a_place_beyond_the_wall_is_refused_and_one_on_it_is_cut():
    room = good_room()
    wall, scheme = room.walls[0], room.walls[0].schemes[0]
    with pytest.raises(BadInput, match="beyond the wall"):
        section_pictures(room, wall, scheme, TRADE, at="150 in")
    with pytest.raises(BadInput):
        section_pictures(room, wall, scheme, TRADE, at="somewhere")
    picture = section_pictures(room, wall, scheme, TRADE, at="144 in")[0]
    text = " ".join("".join(one.itertext()) for one in ET.fromstring(to_svg(picture)).iter(f"{SVG}text"))
    assert re.search(r"Section at 144 in from the left end", text)


def test_the_sheet_is_the_same_each_time():
    room = good_room()
    wall, scheme = room.walls[0], room.walls[0].schemes[0]
    one, other = (to_svg(section_pictures(room, wall, scheme, TRADE)[0]) for _ in range(2))
    assert one == other


def test_a_pelmet_and_a_blind_are_cut_and_the_pelmet_s_depth_is_given():
    dressed = treatment(
        pelmet=Pelmet(depth=inch(10), above=inch(3), left=inch(4), right=inch(4), projection=inch(8)),
        blind=Blind(height=inch(3), projection=inch(3), drop=inch(20)),
    )
    room = good_room(schemes=(replace(good_room().walls[0].schemes[0], treatments=(dressed,)),))
    cut = cut_of(room)
    titles = {group.title for group in draw_section(cut, TRADE)}
    assert {title.partition(" in section")[0] for title in titles} >= {"Pelmet", "Blind", "Rod", "Cloth", "Bracket"}
    assert 8.0 in [round(one, 6) for one in lengths(room, "top", "pelmet.projection")]
    # Beside the pelmet there is none to cut.
    beside = draw_section(cut_of(room, at=10 * INCH), TRADE)
    assert not [group for group in beside if group.title.startswith("Pelmet")]


@pytest.mark.parametrize("seed", range(24))
def test_random_walls_can_be_cut_and_laid(seed):
    room = random_room(seed)
    for wall in room.walls:
        for scheme in wall.schemes:
            laid = set_out_afresh(room, wall.id, scheme.id, TRADE)
            for hung in laid.treatments or (None,):
                cut = cut_at(wall, laid, TRADE, hung)
                check_grammar(draw_section(cut, TRADE))
                lay_section(cut, treatment_of(room, cut), style_for(room), 20.0)
