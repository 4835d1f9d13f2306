"""The steps of hanging: in an order that works, with their cautions, different for each kind of wall and mount."""

from __future__ import annotations

import re

import pytest
from msgspec.structs import replace

from elevation.places import demo_rooms
from elevation.planning.dressed import dress
from elevation.planning.drilling import drill_places
from elevation.planning.end_places import end_places
from elevation.planning.hanging import hanging_steps
from elevation.room.edits import replace_at, replace_rod
from elevation.room.file import load_room
from elevation.room.style import style_for
from elevation.sheet.records import Text
from elevation.sheet.work.drilling_figures import sides_figures
from elevation.sheet.work.hanging import hanging_sheet
from elevation.sheet.work.page import Sheet
from elevation.trade.tables import load_trade
from elevation.units import length_of
from elevation.words import Style, say
from tests.sheet.pages import texts
from tests.strategies import SUBSTRATES, random_room

TRADE = load_trade()
ENGLISH = Style()


def all_steps(room):
    for wall in dress(room, TRADE).walls:
        for laid in wall.treatments:
            yield wall, laid, hanging_steps(room, wall, laid, TRADE)


def said(steps):
    return [say(text, ENGLISH) for step in steps for text in (step.text, *step.details, *step.cautions)]


def at(texts, word):
    return next(number for number, text in enumerate(texts) if word in text)


def bedroom(substrate):
    room = load_room(demo_rooms() / "1-bedroom.room.json")
    return replace(room, walls=(replace(room.walls[0], substrate=substrate), *room.walls[1:]))


@pytest.mark.parametrize("substrate", SUBSTRATES)
def test_cables_are_looked_for_before_a_hole_and_eyes_covered_in_it(substrate):
    for _, _, steps in all_steps(bedroom(substrate)):
        texts = said(steps)
        assert at(texts, "look for cables") < at(texts, "Drill ")
        drilling = next(step for step in steps if say(step.text, ENGLISH).startswith("Drill "))
        assert any("lasses" in say(caution, ENGLISH) for caution in drilling.cautions)


@pytest.mark.parametrize(
    ("substrate", "word"),
    [
        ("board-timber-studs", "into the studs"),
        ("plaster-lath", "into the studs"),
        ("solid-brick", "depth stop"),
        ("concrete", "depth stop"),
        ("board-dabs", "masonry behind"),
        ("board-battens", "battens"),
        ("not-known", "look at its dust"),
        ("tile", "look at its dust"),
    ],
)
def test_walls_differ_in_their_steps(substrate, word):
    for _, _, steps in all_steps(bedroom(substrate)):
        assert any(word in text for text in said(steps))


@pytest.fixture(scope="module")
def random_steps():
    return [one for seed in range(80) for one in all_steps(random_room(seed))]


def test_a_ceiling_is_never_trusted_to_a_plug(random_steps):
    seen = 0
    for wall, laid, steps in random_steps:
        if laid.mount == "ceiling" and drill_places(wall, laid, TRADE):
            texts = said(steps)
            assert at(texts, "joists") >= 0
            assert at(texts, "Never a plug") >= 0
            seen += 1
    assert seen > 5


def test_a_tension_rod_needs_no_hole(random_steps):
    seen = 0
    for _, laid, steps in random_steps:
        if all(layer.support.kind == "tension-rod" for layer in laid.layers):
            texts = said(steps)
            assert not any("Drill " in text for text in texts)
            assert any("packet's load" in text for text in texts)
            seen += 1
    assert seen > 3


def test_rings_go_on_before_the_rod_and_the_cloth_after_it():
    for _, _, steps in all_steps(load_room(demo_rooms() / "1-bedroom.room.json")):
        texts = said(steps)
        assert at(texts, "Thread the rings") < at(texts, "end pieces") < at(texts, "Hang the panels")


@pytest.mark.parametrize(("length", "is_asked"), [(1829.0, False), (1830.0, False), (1831.0, True)])
def test_a_rod_longer_than_six_feet_asks_for_two(length, is_asked):
    room = load_room(demo_rooms() / "1-bedroom.room.json")
    wall = dress(room, TRADE).walls[0]
    laid = wall.treatments[0]
    layer = replace(laid.layers[0], support=replace(laid.layers[0].support, length_mm=length))
    steps = hanging_steps(room, wall, replace(laid, layers=(layer,)), TRADE)
    assert any("Two people" in text for text in said(steps)) is is_asked


def test_a_planted_inch_is_found_from_the_sheet_alone():
    """The line on the sheet adds up as printed; with one inch planted in any of its figures it no longer does."""
    room = load_room(demo_rooms() / "1-bedroom.room.json")
    wall = dress(room, TRADE).walls[0]
    for place in drill_places(wall, wall.treatments[0], TRADE):
        line = sides_figures(place.along, replace(style_for(room), plain=True))
        first, second, whole = (int(figure) for figure in re.findall(r"\d+", line))
        assert first + second == whole == 144
        for planted in (-1, 1):
            assert first + planted + second != whole


@pytest.mark.parametrize("seed", range(25))
def test_pages_hold_every_step_and_number_them(seed):
    room = random_room(seed)
    for _, _, steps in all_steps(room):
        pages = hanging_sheet(steps, Sheet(room.name, style_for(room), date="2026-03-01"))
        texts = [
            record.text for page in pages for group in page.groups for record in group.records if isinstance(record, Text)
        ]
        assert [str(number) in texts for number in range(1, len(steps) + 1)] == [True] * len(steps)


@pytest.mark.parametrize(("kit", "told"), [("shop-strap", True), ("shop-cradle", False), ("flange", False)])
def test_a_closed_strap_is_loaded_from_above(kit, told):
    """A strap that closes over the rod comes off first; a cradle is open (brackets.csv, holds down)."""
    room = load_room(demo_rooms() / "1-bedroom.room.json")
    layer = dress(room, TRADE).walls[0].treatments[0].layers[0]
    for bracket in layer.brackets:
        room = replace_at(room, bracket.ref, kit=kit)
    for _, _, steps in all_steps(room):
        assert any("needs room to load" in text for text in said(steps)) is told


def street_in_sockets():
    room = load_room(demo_rooms() / "7-guest-room.room.json")
    return next((wall, laid, steps) for wall, laid, steps in all_steps(room) if laid.mount == "reveal")


def test_sockets_are_marked_from_two_sides_and_screwed_on_before_the_rod():
    wall, laid, steps = street_in_sockets()
    assert not drill_places(wall, laid, TRADE)
    texts = said(steps)
    assert at(texts, "middle of each socket") < at(texts, "look for cables") < at(texts, "screw it on")
    assert at(texts, "screw it on") < at(texts, "set one end into its socket") < at(texts, "Hang the panels")
    assert not any("bracket" in text for text in texts)
    for end in end_places(wall, laid, TRADE):
        up = end.upright
        # From the room file: head 48 in over the sill, the axis 1 1/2 in under the head, 2 in out from the sash.
        assert (up.first_mm, up.second_mm, up.whole_mm) == pytest.approx((46.5 * 25.4, 1.5 * 25.4, 48 * 25.4))
        assert end.out is not None
        assert end.out[1] == pytest.approx(2 * 25.4)
        assert end.along is None


@pytest.mark.parametrize(("room", "is_drilled"), [("8-rented-room", False), ("1-bedroom", True)])
def test_what_goes_wrong_tells_of_holes_only_where_some_are_drilled(room, is_drilled):
    """A tension rod has no bit, no anchor and no bracket; it slips."""
    room = load_room(demo_rooms() / f"{room}.room.json")
    _, _, steps = next(all_steps(room))
    lines = " ".join(record.text for record in texts(hanging_sheet(steps, Sheet("", ENGLISH, date=""))))
    assert ("The bit" in lines, "anchor" in lines, "slips" in lines) == (is_drilled, is_drilled, not is_drilled)


def test_the_sheet_says_where_the_sockets_go():
    _, _, steps = street_in_sockets()
    pages = hanging_sheet(steps, Sheet("", Style("in", 25.4 / 16), date=""))
    lines = [record.text for record in texts(pages)]
    assert "left socket: 46¹⁄₂ over the sill + 1¹⁄₂ under the head = 48 in; 2 in out from the sash" in lines
    assert "right socket: 46¹⁄₂ over the sill + 1¹⁄₂ under the head = 48 in; 2 in out from the sash" in lines


@pytest.mark.parametrize(("moved_mm", "is_told"), [(0.0, False), (0.4, True)])
def test_a_sign_behind_a_figure_is_told_where_one_stands(moved_mm, is_told):
    """The bedroom's figures are whole marks of the tape; 0.4 mm higher its rod's height is not."""
    room = load_room(demo_rooms() / "1-bedroom.room.json")
    layer = dress(room, TRADE).walls[0].treatments[0].layers[0]
    held = room.walls[0].schemes[0].treatments[0].layers[0].rod.height
    higher = replace(held, at=length_of(held.at.mm + moved_mm, "mm", 0.05))
    ((_, _, steps),) = all_steps(replace_rod(room, layer.ref, height=higher))
    pages = hanging_sheet(steps, Sheet("", style_for(room), date=""))
    assert any("a little more" in record.text for record in texts(pages)) is is_told


@pytest.mark.parametrize("ends", ["return", "elbow"])
def test_bent_ends_are_screwed_on_only_with_the_rings_on_the_rod(ends):
    room = load_room(demo_rooms() / "1-bedroom.room.json")
    ref = dress(room, TRADE).walls[0].treatments[0].layers[0].ref
    ((wall, laid, steps),) = all_steps(replace_rod(room, ref, ends=ends))
    spoken = said(steps)
    assert at(spoken, "once the rings are on the rod") < at(spoken, "Thread the rings on the rod, then hold it up")
    assert not any("end pieces" in text for text in spoken)
    width = wall.width_mm
    for end in end_places(wall, laid, TRADE):
        assert not end.is_socket
        assert end.out is None
        assert end.along.first_mm + end.along.second_mm == pytest.approx(width)


@pytest.mark.parametrize(
    ("mount", "from_sash", "projection", "told"),
    [
        ("reveal", 50.0, -60.0, ("out from the sash", 50.0)),
        ("reveal", None, -60.0, ("in from the wall's face", 60.0)),
        ("wall", None, 0.0, ("out from the wall's face", 0.0)),
        ("wall", 50.0, 80.0, ("out from the wall's face", 80.0)),
    ],
)
def test_a_socket_stands_out_from_what_can_be_measured_there(mount, from_sash, projection, told):
    wall, laid, _ = street_in_sockets()
    support = replace(laid.layers[0].support, from_sash_mm=from_sash, projection_mm=projection)
    layer = replace(laid.layers[0], support=support)
    ends = end_places(wall, replace(laid, mount=mount, layers=(layer,)), TRADE)
    assert [(say(end.out[0], ENGLISH), end.out[1]) for end in ends] == [told, told]
    assert [say(end.name, ENGLISH) for end in ends] == ["left socket", "right socket"]
    second = end_places(wall, replace(laid, mount=mount, layers=(replace(layer, ref=(*layer.ref[:-1], "x")), layer)), TRADE)
    assert [say(end.name, ENGLISH) for end in second][2:] == [
        "left socket, rod 2 from the front",
        "right socket, rod 2 from the front",
    ]
