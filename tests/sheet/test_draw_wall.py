import itertools

import pytest
from msgspec.structs import replace

from elevation.places import demo_rooms
from elevation.room.file import load_room
from elevation.setting_out.model import Profile
from elevation.setting_out.whole import set_out
from elevation.sheet import inks
from elevation.sheet.draw_face import baseboard_runs
from elevation.sheet.draw_heading import heading_kind
from elevation.sheet.draw_rod import between
from elevation.sheet.drawing import View, draw_obstacle, draw_opening, draw_treatment, draw_wall
from elevation.sheet.records import LAYERS, Fill, Group, Path, Polyline
from elevation.trade import load_trade
from tests.sheet.draw_cases import (
    HEADING_CASES,
    HEADINGS,
    IN,
    OBSTACLES,
    make_obstacle,
    make_opening,
    make_trade,
    make_treatment,
    make_wall,
)
from tests.sheet.draw_checks import check_grammar, extent, is_dashed

TRADE = make_trade()


@pytest.mark.parametrize("position", ["open", "closed", "drawn", "none"])
def test_every_demo_wall_draws_in_every_position(position):
    trade = load_trade()
    for path in sorted(demo_rooms().glob("*.room.json")):
        room = load_room(path)
        for wall in room.walls:
            for scheme in (None, *(scheme.id for scheme in wall.schemes)):
                out = set_out(room, wall.id, scheme, trade)
                groups = draw_wall(out, trade, View(position))
                check_grammar(groups)
                ranks = [LAYERS.index(group.layer) for group in groups]
                assert ranks == sorted(ranks)
                assert {g.ref for g in groups if g.layer == "opening"} == {o.ref for o in out.openings}
                panels = {p.ref for t in out.treatments for layer in t.layers for p in layer.panels}
                shown = {g.ref for g in groups if g.layer == f"panel-{position}"}
                assert shown == (panels if position != "none" else set())


def test_what_was_not_measured_is_dashed():
    assert any(map(is_dashed, draw_opening(make_opening(known_casing=False), "w").records))
    assert any(map(is_dashed, draw_opening(make_opening(placed=False), "w").records))
    assert not any(map(is_dashed, draw_opening(make_opening(), "w").records))
    known, unknown = make_wall(), make_wall(ceiling=Profile(((0.0, 2400.0),), known=False), known_width=False)
    assert not any(map(is_dashed, draw_wall(known, TRADE)[0].records))
    assert sum(map(is_dashed, draw_wall(unknown, TRADE)[0].records)) == 2


@pytest.mark.parametrize("kind", OBSTACLES)
@pytest.mark.parametrize(("width", "height"), [(70.0, 115.0), (1200.0, 180.0), (900.0, 900.0), (40.0, 2400.0), (6.0, 6.0)])
def test_every_obstacle_draws_within_its_outline(kind, width, height):
    group = draw_obstacle(make_obstacle(kind, 1000.0, 300.0, width, height, out=100.0))
    check_grammar([group])
    left, bottom, right, top = extent([group])
    slack = 0.13 * min(width, height) if kind == "pipe" else 0.5
    assert left >= 1000.0 - slack
    assert right <= 1000.0 + width + max(slack, 40.0)
    assert bottom >= 300.0 - max(slack, 70.0 if kind == "shelf" else 0.0) - 18.0 * (kind == "pipe")
    assert top <= 300.0 + height + slack + 18.0 * (kind == "pipe")
    assert len(group.records) <= 40


def test_no_two_kinds_of_obstacle_look_alike():
    assert len(OBSTACLES) == 16
    drawn = {kind: draw_obstacle(make_obstacle(kind, 0.0, 0.0, 600.0, 400.0)).records for kind in OBSTACLES}
    same = {a for a in drawn for b in drawn if a < b and drawn[a] == drawn[b]}
    # A register is a register, in the floor or in the wall.
    assert same == {"floor-register"}


@pytest.mark.parametrize("heading", HEADINGS)
@pytest.mark.parametrize("position", ["open", "closed", "drawn"])
@pytest.mark.parametrize("ends", ["bare", "cap", "ball-finial", "spear-finial"])
def test_every_heading_and_end_draws_within_its_budget(heading, position, ends):
    treatment = make_treatment(make_opening(), heading=heading, ends=ends, drawn="half")
    groups = draw_treatment(treatment, Profile(((0.0, 0.0),)), TRADE, View(position))
    check_grammar(groups)
    layer = treatment.layers[0]
    for group in groups:
        if group.layer.startswith("panel"):
            assert len(group.records) <= 60
        if group.layer == "rod":
            left, _, right, _ = extent([group])
            assert left == pytest.approx(layer.support.metal_left_mm)
            assert right == pytest.approx(layer.support.metal_right_mm)
    assert {g.ref for g in groups if g.layer == "bracket"} == {b.ref for b in layer.brackets}


def test_headings_are_told_apart():
    def top(heading):
        treatment = make_treatment(make_opening(), heading=heading)
        groups = draw_treatment(treatment, Profile(((0.0, 0.0),)), TRADE, View("closed"))
        return next(group for group in groups if group.layer == "panel-closed").records

    drawn = [top(heading) for heading in HEADINGS]
    assert all(a != b for a, b in itertools.combinations(drawn, 2))


def test_a_heading_without_a_drawing_of_its_own_is_drawn_as_it_is_carried():
    row = TRADE.headings["clip-rings"]
    assert heading_kind(replace(row, drawing="some-new-one")) == "rings"
    assert heading_kind(replace(row, drawing="", carries="sleeve")) == "pocket"
    assert heading_kind(None) == "rings"


def test_every_heading_of_the_trade_has_a_drawing_that_suits_how_it_is_carried():
    rows = load_trade().headings.values()
    for row in rows:
        kind = heading_kind(row)
        assert (kind in ("tabs", "back-tabs", "eyelets", "pocket")) is (row.carries == "sleeve"), row.id
        assert kind == row.drawing
    assert {row.drawing for row in rows} == {drawing for _, _, drawing in HEADING_CASES}


def test_a_pocket_hides_its_rod_and_rings_do_not():
    def tube(heading):
        groups = draw_treatment(
            make_treatment(make_opening(), heading=heading), Profile(((0.0, 0.0),)), TRADE, View("closed")
        )
        rod = next(g for g in groups if g.layer == "rod")
        steps = rod.records[0].steps
        return sum(abs(steps[i + 1][1] - steps[i][1]) for i in range(0, len(steps), 5))

    assert tube("rod-pocket") < 0.15 * tube("clip-rings")


def test_what_is_hidden_leaves_the_rest():
    assert between(0.0, 100.0, []) == [(0.0, 100.0)]
    assert between(0.0, 100.0, [(60.0, 70.0), (10.0, 20.0)]) == [(0.0, 10.0), (20.0, 60.0), (70.0, 100.0)]
    assert between(0.0, 100.0, [(-5.0, 30.0), (20.0, 40.0), (90.0, 400.0)]) == [(40.0, 90.0)]
    assert between(0.0, 100.0, [(0.0, 100.0)]) == []


def test_there_is_a_ring_for_each_ring_of_the_set_out():
    treatment = make_treatment(make_opening())
    groups = draw_treatment(treatment, Profile(((0.0, 0.0),)), TRADE, View("closed", stack=False))
    panels = [g for g in groups if g.layer == "panel-closed"]
    for panel, group in zip(treatment.layers[0].panels, panels, strict=True):
        rings = group.records[-1]
        assert sum(step[0] == "M" for step in rings.steps) == panel.rings


def test_the_stack_shows_the_other_position_where_it_differs():
    treatment = make_treatment(make_opening(), drawn="half")
    floor = Profile(((0.0, 0.0),))
    groups = draw_treatment(treatment, floor, TRADE, View("drawn"))
    # The right panel stands open already.
    assert [g.ref for g in groups if g.layer == "stack"] == [treatment.layers[0].panels[0].ref]
    assert not [g for g in draw_treatment(treatment, floor, TRADE, View("drawn", False)) if g.layer == "stack"]
    ghosts = [g for g in draw_treatment(treatment, floor, TRADE, View("open")) if g.layer == "stack"]
    left, _, right, _ = extent(ghosts)
    assert (left, right) == (treatment.layers[0].panels[0].closed[0], treatment.layers[0].panels[1].closed[1])
    assert all(is_dashed(g.records[-1]) for g in ghosts)


def test_four_dressed_windows_are_a_modest_picture():
    openings = tuple(make_opening(f"o{i + 1}", 20 * IN + i * 96 * IN, columns=3, rows=2) for i in range(4))
    treatments = tuple(make_treatment(o, ident=f"t{i + 1}") for i, o in enumerate(openings))
    wall = make_wall(openings, treatments, width_mm=400 * IN)
    for position in ("open", "closed"):
        assert sum(len(g.records) for g in draw_wall(wall, TRADE, View(position))) <= 1200


def test_drawing_again_gives_the_same_records():
    treatment = make_treatment(make_opening(), drawn="half")
    floor = Profile(((0.0, 0.0),))
    assert draw_treatment(treatment, floor, TRADE, View()) == draw_treatment(treatment, floor, TRADE, View())


def test_shifting_a_treatment_shifts_its_drawing():
    floor = Profile(((0.0, 0.0),))
    here = draw_treatment(make_treatment(make_opening(left=1000.0)), floor, TRADE, View("closed"))
    there = draw_treatment(make_treatment(make_opening(left=1500.0)), floor, TRADE, View("closed"))
    for a, b in zip(here, there, strict=True):
        left, bottom, right, top = extent([a])
        assert extent([b]) == pytest.approx((left + 500, bottom, right + 500, top))


def test_the_baseboard_stops_at_doors_and_runs_on_under_windows():
    window = make_opening("o1", 500.0, width=900.0)
    door = make_opening("o2", 2000.0, kind="door", sash="swing-in", width=800.0, height=2030.0, sill=0.0)
    wall = make_wall((window, door))
    assert baseboard_runs(wall) == [(0.0, 2000.0 - 88.9), (2800.0 + 88.9, wall.width_mm)]
    # Just inside, at and just outside: a sill lower than the baseboard's top interrupts it.
    for sill, runs in ((133.0, 2), (133.35, 1), (134.0, 1)):
        low = make_opening("o1", 500.0, width=900.0, sill=sill)
        assert len(baseboard_runs(make_wall((low,), baseboard_mm=133.35))) == runs


def test_a_wall_end_that_is_open_has_a_break_line():
    closed, open_ = make_wall(), make_wall(ends=("corner", "open"))
    longest = [
        max(len(r.points) for r in draw_wall(w, TRADE)[0].records if isinstance(r, Polyline)) for w in (closed, open_)
    ]
    assert longest == [2, 6]


def test_the_ceiling_and_floor_drawn_are_those_measured():
    ceiling = Profile(((0.0, 1300.0), (1800.0, 2900.0), (3600.0, 1300.0)))
    floor = Profile(((0.0, 0.0), (3600.0, 22.0)))
    wall = make_wall(ceiling=ceiling, floor=floor, crown_mm=0.0, width_mm=3600.0)
    lines = [r.points for r in draw_wall(wall, TRADE)[0].records if isinstance(r, Polyline)]
    assert ceiling.points in lines
    assert floor.points in lines


def test_a_pair_is_drawn_as_its_mirror_image_within_a_shadow():
    opening = make_opening()
    treatment = make_treatment(opening, drawn="closed")
    middle = (opening.left_mm + opening.right_mm) / 2
    for position in ("open", "closed"):
        groups = draw_treatment(treatment, Profile(((0.0, 0.0),)), TRADE, View(position, stack=False))
        for layer in (f"panel-{position}", "rod"):
            lines = [
                Group(g.ref, g.layer, g.title, tuple(r for r in g.records if isinstance(r, Path)))
                for g in groups
                if g.layer == layer
            ]
            left, _, right, _ = extent(lines)
            assert middle - left == pytest.approx(right - middle)


def test_a_rod_looks_like_what_it_is_made_of():
    treatment = make_treatment(make_opening())
    layer = treatment.layers[0]
    drawn = set()
    trade = load_trade()
    materials = {trade.materials[row.material].looks for row in trade.sections.values()}
    assert len(materials) > 2
    for material in materials:
        assert material in inks.ROD_TONES
        of_it = replace(treatment, layers=(replace(layer, support=replace(layer.support, material=material)),))
        groups = draw_treatment(of_it, Profile(((0.0, 0.0),)), TRADE, View("open"))
        drawn.add(next(g.records for g in groups if g.layer == "rod"))
        # Its edge is seen against the wall (WCAG 2.2, 1.4.11).
        assert inks.contrast(inks.ROD_TONES[material][3], inks.WALL_LOW) >= 3.0
    assert len(drawn) == len(materials)


def test_a_far_rod_is_hidden_where_solid_cloth_hangs_before_it():
    treatment = make_treatment(make_opening())
    near = treatment.layers[0]
    far = replace(
        near,
        ref=("w1", "s1", "t1", "l2"),
        support=replace(near.support, height_mm=near.support.height_mm - 120.0),
        brackets=tuple(
            replace(b, height_mm=b.height_mm - 120.0, plate=(b.x_mm - 12, b.height_mm - 150, b.x_mm + 12, b.height_mm - 90))
            for b in near.brackets
        ),
        panels=tuple(replace(p, ref=(*p.ref[:3], "l2", p.ref[-1]), top_mm=p.top_mm - 120.0) for p in near.panels),
    )
    floor = Profile(((0.0, 0.0),))

    def seen(front, position):
        groups = draw_treatment(replace(treatment, layers=(front, far)), floor, TRADE, View(position, stack=False))
        check_grammar(groups)
        return {g.ref[-1] for g in groups if g.layer == "rod"}, [g for g in groups if g.layer.startswith("panel")]

    rods, panels = seen(near, "closed")
    assert rods == {"l1", "l2"}  # the far rod's ends are seen beyond the cloth
    assert [g.ref[3] for g in panels] == ["l2", "l2", "l1", "l1"]
    for position, body, is_whole in (("closed", "light", False), ("closed", "sheer", True), ("none", "light", True)):
        groups = draw_treatment(
            replace(treatment, layers=(replace(near, body=body), far)), floor, TRADE, View(position, stack=False)
        )
        rod = next(g for g in groups if g.layer == "rod" and g.ref[-1] == "l2")
        tube = next(record for record in rod.records if isinstance(record, Fill))
        left, right = min(p[1] for p in tube.steps if len(p) == 3), max(p[1] for p in tube.steps if len(p) == 3)
        drawn = sum(tube.steps[i + 1][1] - tube.steps[i][1] for i in range(0, len(tube.steps), 5))
        assert (drawn > 0.9 * (right - left)) is is_whole
        assert len([g for g in groups if g.layer == "bracket"]) == (6 if is_whole else 3)
