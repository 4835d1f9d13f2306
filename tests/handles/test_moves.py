"""What a drag changes and what stays: relations, the other end, the neighbours."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.model import Scene
from elevation.handles.all_handles import handles
from elevation.handles.model import Handle
from elevation.handles.sticking import candidates
from elevation.room.edits import replace_at
from elevation.room.find import layer_of, opening_of, wall_of
from elevation.room.model import Built, Hem, Opening, Room, WallEnd
from elevation.setting_out.model import SetOut
from elevation.setting_out.whole import set_out_afresh
from elevation.trade.tables import load_trade
from elevation.units import parse_length
from tests.handles.rooms import INCH, LAYER, SECOND, WINDOW, held, inch, room, with_layer, with_rod

TRADE = load_trade()


def landed(now: Room) -> SetOut:
    return set_out_afresh(now, "a", now.walls[0].schemes[0].id, TRADE)


def handle(now: Room, axis: str, ref: tuple[str, ...] = LAYER) -> Handle:
    return next(found for found in handles(now, landed(now), TRADE) if found.key == (axis, ref))


def drag(now: Room, axis: str, to_in: float, ref: tuple[str, ...] = LAYER, alone: bool = False) -> Room:
    return handle(now, axis, ref).move(now, to_in * INCH, alone)


def ends(now: Room) -> tuple[float, float]:
    support = landed(now).treatments[0].layers[0].support
    return support.left_mm / INCH, support.right_mm / INCH


# --- ends of the rod -----------------------------------------------------------------------------------------


def test_both_ends_move_mirrored_and_share_one_text() -> None:
    now = drag(room(), "rod-left", 38)
    assert ends(now) == pytest.approx((38, 102))
    rod = layer_of(now, LAYER).rod
    assert rod.left.at == rod.right.at
    assert rod.left.at.text == "12 in"


def test_alone_leaves_the_other_end_as_it_was() -> None:
    before = room()
    now = drag(before, "rod-left", 38, alone=True)
    assert ends(now) == pytest.approx((38, 100))
    assert layer_of(now, LAYER).rod.right is layer_of(before, LAYER).rod.right


@pytest.mark.parametrize("hold", ["from-corner", "beyond-casing"])
def test_an_end_held_otherwise_mirrors_in_its_own_figure(hold: str) -> None:
    start = room(layer=with_rod(right=held(hold, {"from-corner": 50, "beyond-casing": 6}[hold])))
    now = drag(start, "rod-left", 38)
    assert ends(now) == pytest.approx((38, 102))
    assert layer_of(now, LAYER).rod.right == held(hold, {"from-corner": 48, "beyond-casing": 8}[hold])


def test_an_unequal_reach_keeps_its_difference() -> None:
    now = drag(room(layer=with_rod(right=held("beyond-opening", "13 1/32"))), "rod-left", 38)
    assert layer_of(now, LAYER).rod.right.at.text == "15 1/32 in"


def test_a_rod_held_by_its_length_moves_whole() -> None:
    start = room(layer=with_rod(right=held("rod-length", 60)))
    now = drag(start, "rod-left", 38)
    assert ends(now) == pytest.approx((38, 98))
    assert layer_of(now, LAYER).rod.right == held("rod-length", 60)
    now = drag(start, "rod-right", 104)
    assert ends(now) == pytest.approx((40, 104))
    assert layer_of(now, LAYER).rod.right.at.text == "64 in"


def test_the_mirrored_range_ends_where_the_other_end_can_go_no_farther() -> None:
    left = handle(room(width=inch(120)), "rod-left")
    assert left.bound(alone=False).low_mm == pytest.approx(20 * INCH)
    assert left.bound(alone=True).low_mm == 0.0


def mirrored(now: Room) -> Room:
    """The room of ``rooms.room()`` seen in a mirror."""
    wall = now.walls[0]
    assert wall.width is not None
    width_mm = wall.width.mm
    opening = wall.openings[0]
    assert opening.left is not None
    left = inch((width_mm - opening.left.mm - opening.width.mm) / INCH)
    layer = layer_of(now, LAYER)
    turn = {"from-left-end": "from-right-end", "from-right-end": "from-left-end"}
    brackets = tuple(
        replace(bracket, place=held(turn[bracket.place.hold], bracket.place.at.text.removesuffix(" in")))
        for bracket in layer.brackets
    )
    panels = tuple(replace(panel, parks="right" if panel.parks == "left" else "left") for panel in layer.panels)
    now = replace_at(now, ("a", "w1"), left=left)
    rod = replace(layer.rod, left=layer.rod.right, right=layer.rod.left)
    return replace_at(now, LAYER, brackets=brackets, panels=panels, rod=rod)


@pytest.mark.parametrize("alone", [False, True])
@pytest.mark.parametrize("to_in", [38.0, 41.3, 3.0, 46.5])
def test_dragging_the_left_end_in_the_mirror_is_the_mirrored_drag(to_in: float, alone: bool) -> None:
    start = room(layer=with_rod(right=held("beyond-casing", 7)))
    direct = mirrored(drag(start, "rod-left", to_in, alone=alone))
    through = drag(mirrored(start), "rod-right", 150 - to_in, alone=alone)
    assert layer_of(direct, LAYER).rod == layer_of(through, LAYER).rod
    assert ends(direct) == pytest.approx(ends(through))


@pytest.mark.parametrize("alone", [False, True])
@pytest.mark.parametrize("axis", ["rod-left", "rod-right"])
def test_the_mirror_offers_the_mirrored_places(axis: str, alone: bool) -> None:
    start = room(layer=with_rod(right=held("beyond-casing", 7)))
    other = {"rod-left": "rod-right", "rod-right": "rod-left"}[axis]

    def offered(now: Room, of: str) -> list[tuple[float, str]]:
        bound = handle(now, of).bound(alone)
        places = candidates(bound, Scene(now, landed(now), TRADE), alone=alone)
        return sorted((round(place.value_mm / INCH, 4), place.reason.template) for place in places)

    mirror = sorted((round(150 - value, 4), reason) for value, reason in offered(start, axis))
    assert offered(mirrored(start), other) == mirror


# --- what is held stays held ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("hold", "at", "text"),
    [("above-head", 8, "10 in"), ("above-casing", 4, "6 in"), ("below-ceiling", 20, "18 in"), ("above-floor", 88, "90 in")],
)
def test_a_rod_raised_two_inches_keeps_what_holds_it(hold: str, at: float, text: str) -> None:
    start = room(layer=with_rod(height=held(hold, at)))
    assert handle(start, "rod-height").value_mm == pytest.approx(88 * INCH)
    now = drag(start, "rod-height", 90)
    assert layer_of(now, LAYER).rod.height == held(hold, text.removesuffix(" in"))
    assert landed(now).treatments[0].layers[0].support.height_mm == pytest.approx(90 * INCH)


@pytest.mark.parametrize("read", [55, 56])
def test_an_end_bracket_lands_where_it_is_dragged_whatever_was_read_before(read: int) -> None:
    """Planned 55 in apart and read so, or an inch more: kept, the reading would share each move between both brackets."""
    before = room(layer=with_layer(built=Built(bracket_to_bracket=inch(read))))
    now = drag(before, "bracket", 45, (*LAYER, "b1"))
    assert landed(now).treatments[0].layers[0].brackets[0].x_mm == pytest.approx(45 * INCH)
    assert layer_of(now, LAYER).built.bracket_to_bracket is None


@pytest.mark.parametrize(
    ("hold", "at", "text"),
    [
        ("from-left-end", 2, "5 in"),
        ("from-right-end", 58, "55 in"),
        ("from-centre", -28, "-25 in"),
        ("from-wall-left", 42, "45 in"),
    ],
)
def test_a_bracket_keeps_what_holds_it(hold: str, at: float, text: str) -> None:
    layer = with_layer(brackets=(replace(with_layer().brackets[0], place=held(hold, at)),))
    now = drag(room(layer=layer), "bracket", 45, (*LAYER, "b1"))
    assert layer_of(now, LAYER).brackets[0].place == held(hold, text.removesuffix(" in"))


def test_a_drag_back_to_the_start_writes_nothing_anew() -> None:
    start = room(layer=with_rod(height=replace(held("above-casing", 4), at=parse_length("4.0 in"))))
    assert drag(drag(start, "rod-height", 90), "rod-height", 88) == room()
    assert drag(start, "rod-height", 88) is start


@pytest.mark.parametrize(
    ("to_in", "hem"),
    [
        (2.0, Hem("clear", inch(2))),
        (0.0, Hem("kiss")),
        (-3.0, Hem("break", inch(3))),
        (-4.0, Hem("break", inch(4))),
        (-4.0625, Hem("puddle", inch("4 1/16"))),
    ],
)
def test_a_hem_across_the_floor_clears_kisses_breaks_or_puddles(to_in: float, hem: Hem) -> None:
    assert layer_of(drag(room(), "hem", to_in), LAYER).hem == hem
    lying = room(layer=with_layer(hem=Hem("break", inch(1))))
    assert layer_of(drag(lying, "hem", to_in), LAYER).hem == hem


def test_a_hem_in_hand_pulls_the_rod() -> None:
    layer = with_layer(panels=tuple(replace(panel, label_length=inch(84)) for panel in with_layer().panels))
    start = room(layer=layer)
    now = drag(start, "hem", handle(start, "hem").value_mm / INCH - 1)
    assert layer_of(now, LAYER).rod.height == held("above-casing", 3)
    assert layer_of(now, LAYER).hem == layer.hem


def test_a_panel_squeezed_to_its_stack_is_open_again() -> None:
    start = room(layer=with_layer(panels=(replace(with_layer().panels[0], drawn=inch(20)),)))
    lead = handle(start, "lead", (*LAYER, "p1"))
    assert layer_of(lead.move(start, lead.low_mm, False), LAYER).panels[0].drawn is None
    assert layer_of(lead.move(start, lead.low_mm + 2 * INCH, False), LAYER).panels[0].drawn == inch(12)


# --- sides of openings: neighbours stay ----------------------------------------------------------------------


def edges(now: Room) -> list[tuple[float, float]]:
    return [(round(o.left_mm / INCH, 6), round(o.right_mm / INCH, 6)) for o in landed(now).openings]


def chain(first: dict[str, object], second: dict[str, object], **wall: object) -> Room:
    """Openings from 50 to 90 and 110 to 130 in a wall of 150, measured in different ways."""
    blank = {"left": None, "gap": None}
    openings = (replace(WINDOW, **(blank | first)), replace(SECOND, **(blank | second)))
    return room(openings=openings, **wall)


FIRST_LEFT, FIRST_GAP = {"left": inch(50)}, {"gap": inch(46)}
SECOND_LEFT, SECOND_GAP = {"left": inch(110)}, {"gap": inch(16)}
CHAINS = {
    "lefts": chain(FIRST_LEFT, SECOND_LEFT),
    "gaps": chain(FIRST_GAP, SECOND_GAP),
    "gaps-to-the-end": chain(FIRST_GAP, SECOND_GAP, gap_right=inch(20)),
    "both": chain(FIRST_LEFT | FIRST_GAP, SECOND_LEFT | SECOND_GAP, gap_right=inch(20)),
    "first-blank": chain({}, SECOND_GAP, gap_right=inch(20)),
    "second-blank": chain(FIRST_GAP, {}, gap_right=inch(20)),
    "no-width": chain(FIRST_GAP, SECOND_GAP, gap_right=inch(20), width=None),
}


@pytest.mark.parametrize("name", CHAINS)
@pytest.mark.parametrize(
    ("axis", "opening", "to_in", "expected"),
    [
        ("opening-left", "w1", 47, [(47, 90), (110, 130)]),
        ("opening-right", "w1", 93, [(50, 93), (110, 130)]),
        ("opening-left", "w2", 107, [(50, 90), (107, 130)]),
        ("opening-right", "w2", 133, [(50, 90), (110, 133)]),
    ],
)
def test_moving_one_side_leaves_every_other_side(
    name: str, axis: str, opening: str, to_in: float, expected: list[tuple[float, float]]
) -> None:
    start = CHAINS[name]
    assert edges(start) == [(50, 90), (110, 130)]
    now = drag(start, axis, to_in, ("a", opening))
    assert edges(now) == expected
    assert landed(now).width_mm == pytest.approx(150 * INCH)
    assert (landed(now).chain.closing_error_mm or 0.0) == pytest.approx(0.0, abs=1e-6)


def test_the_measure_that_was_typed_is_the_one_that_changes() -> None:
    by_left = opening_of(drag(CHAINS["lefts"], "opening-left", 47, ("a", "w1")), ("a", "w1"))
    assert (by_left.left, by_left.gap) == (inch(47), None)
    by_gap = opening_of(drag(CHAINS["gaps"], "opening-left", 47, ("a", "w1")), ("a", "w1"))
    assert (by_gap.left, by_gap.gap) == (None, inch(43))
    blank = opening_of(drag(CHAINS["first-blank"], "opening-left", 47, ("a", "w1")), ("a", "w1"))
    assert (blank.left, blank.gap, blank.width) == (None, None, inch(43))


def test_lengths_typed_in_the_other_unit_do_not_make_the_far_side_creep() -> None:
    mixed = replace(WINDOW, width=parse_length("1000 mm"))
    start = room(openings=(mixed,))
    right_mm = landed(start).openings[0].right_mm
    now = drag(start, "opening-left", 47, ("a", "w1"))
    assert opening_of(now, ("a", "w1")).width == parse_length("1076.2 mm")
    assert landed(now).openings[0].right_mm == pytest.approx(right_mm, abs=1e-6)
    metric = replace(start, unit="mm")
    handle_left = handle(metric, "opening-left", ("a", "w1"))
    now = handle_left.move(metric, 1200.0, False)
    assert opening_of(now, ("a", "w1")).left == parse_length("1200 mm")
    assert landed(now).openings[0].right_mm == pytest.approx(right_mm, abs=1e-6)


def test_an_opening_that_nothing_places_is_placed_by_the_drag() -> None:
    start = chain({}, {})
    assert not landed(start).openings[0].placed
    now = drag(start, "opening-left", 40, ("a", "w1"))
    assert opening_of(now, ("a", "w1")).left == inch(40)
    assert landed(now).openings[0].placed


def test_head_and_sill_leave_each_other() -> None:
    now = drag(room(), "opening-head", 82, ("a", "w1"))
    assert (opening_of(now, ("a", "w1")).sill, opening_of(now, ("a", "w1")).height) == (inch(24), inch(58))
    now = drag(room(), "opening-sill", 20, ("a", "w1"))
    assert (opening_of(now, ("a", "w1")).sill, opening_of(now, ("a", "w1")).height) == (inch(20), inch(60))


def test_a_raked_head_keeps_its_slope() -> None:
    raked = replace(WINDOW, head=replace(WINDOW.head, kind="raked", right_height=inch(50)))
    now = drag(room(openings=(raked,)), "opening-head", 78, ("a", "w1"))
    assert opening_of(now, ("a", "w1")).height == inch(54)
    assert opening_of(now, ("a", "w1")).head.right_height == inch(48)
    now = drag(room(openings=(raked,)), "opening-sill", 26, ("a", "w1"))
    assert opening_of(now, ("a", "w1")).head.right_height == inch(48)


def test_the_walls_end_leaves_openings_and_takes_its_last_gap_along() -> None:
    now = drag(CHAINS["gaps-to-the-end"], "wall-end", 160, ("a",))
    assert edges(now) == [(50, 90), (110, 130)]
    assert wall_of(now, "a").gap_right == inch(30)


def test_a_door_has_no_sill_to_drag() -> None:
    door = Opening(id="w1", kind="door", left=inch(50), width=inch(36), height=inch(80))
    now = room(openings=(door,))
    assert ("opening-sill", ("a", "w1")) not in [found.key for found in handles(now, landed(now), TRADE)]


def test_every_handle_stands_in_its_range_and_shows_what_the_file_says() -> None:
    now = room(openings=(WINDOW, SECOND), right=WallEnd("open"))
    for found in handles(now, landed(now), TRADE):
        assert found.low_mm <= found.value_mm <= found.high_mm
        assert found.from_shown(found.shown_mm(found.value_mm)) == pytest.approx(found.value_mm)
        assert found.move(now, found.value_mm, False) == now
