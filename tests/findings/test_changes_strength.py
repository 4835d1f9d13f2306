"""Brackets that are proposed: the fewest, where panels meet or park, and of a kind that rings pass where they have to."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.findings.changing_strength import bracket_between, meeting_places, more_brackets, must_pass
from elevation.room.edits import edit_at
from elevation.room.find import layer_of
from elevation.room.model import Room
from elevation.setting_out.model import LayerOut
from tests.findings.rooms import INCH, LAYER, good_room, said, scene

# The good room's rod reaches from 44 to 100 in, its brackets stand at 46 and 98 in, its panels meet at 72 in.


def landed(room: Room) -> LayerOut:
    return scene(room).set_out.treatments[0].layers[0]


def one_way() -> Room:
    """One panel that draws across the whole rod from the left."""
    return edit_at(good_room(), LAYER, lambda layer: replace(layer, panels=layer.panels[:1]))


def test_a_pair_meets_in_the_middle_of_its_rod() -> None:
    assert any(abs(place - 72 * INCH) < 1.0 for place in meeting_places(landed(good_room())))


def test_the_fewest_come_first_and_one_more_each_time() -> None:
    room = good_room()
    counts = [len(layer_of(change.edit(room), LAYER).brackets) for change in more_brackets(scene(room), LAYER)]
    assert counts == list(range(3, 3 + len(counts)))
    assert said(next(iter(more_brackets(scene(room), LAYER))).label).startswith("Hang it on 1 bracket")


def test_where_panels_meet_rings_pass_no_bracket_and_the_kit_stays() -> None:
    room = good_room()
    layer = landed(room)
    assert not must_pass(layer, 72 * INCH)
    made = next(iter(more_brackets(scene(room), LAYER))).edit(room)
    middle = next(b for b in landed(made).brackets if abs(b.x_mm - 72 * INCH) < 2)
    assert middle.kit == layer.brackets[0].kit


@pytest.mark.parametrize("propose", [
    lambda here: more_brackets(here, LAYER), lambda here: bracket_between(here, LAYER, 46 * INCH, 98 * INCH),
])  # fmt: skip
def test_inside_a_panels_travel_rings_have_to_pass(propose) -> None:
    room = one_way()
    assert must_pass(landed(room), 72 * INCH)
    made = next(iter(propose(scene(room)))).edit(room)
    middle = next(b for b in landed(made).brackets if abs(b.x_mm - 72 * INCH) < 2)
    assert middle.rings_pass
    assert landed(room).brackets[0].kit != middle.kit


def test_a_bracket_goes_where_panels_meet_though_that_is_not_quite_the_middle() -> None:
    # A wider left panel meets the right one some inches right of the middle: within a tenth of a bay of 26 in it is taken.
    room = edit_at(
        good_room(),
        LAYER,
        lambda layer: replace(
            layer,
            panels=(
                replace(layer.panels[0], flat_width=replace(layer.panels[0].flat_width, mm=57 * INCH)),
                layer.panels[1],
            ),
        ),
    )
    place = min(meeting_places(landed(room)), key=lambda x: abs(x - 72 * INCH))
    assert 0.5 * INCH < abs(place - 72 * INCH) < 2.6 * INCH
    made = next(iter(more_brackets(scene(room), LAYER))).edit(room)
    xs = sorted(bracket.x_mm for bracket in landed(made).brackets)
    # To the nearest sixteenth.
    assert xs[1] == pytest.approx(place, abs=INCH / 32 + 1e-6)
