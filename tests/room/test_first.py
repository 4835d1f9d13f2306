"""A first room from a few typed facts stands at once and is sensible: worked cases by hand, and any facts at all."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from elevation.errors import BadInput
from elevation.room.file import dump_room, load_bytes
from elevation.room.first import FirstFacts, first_room
from elevation.room.model import Layer, Room
from elevation.room.validate import check_room, check_rows
from elevation.setting_out.whole import set_out
from elevation.trade import load_trade
from elevation.units import Length, parse_length

TRADE = load_trade()


def facts(**changes: Any) -> FirstFacts:
    usual = {
        "width": "144",
        "ceiling": "96",
        "opening_width": "36",
        "opening_height": "54",
        "sill": "26",
        "casing": "3 1/2",
    }
    lengths = {
        key: None if text is None else parse_length(text) for key, text in (usual | changes).items() if key != "unit"
    }
    return FirstFacts(**lengths, unit=changes.get("unit", "in"))


def layer_of(room: Room) -> Layer:
    return room.walls[0].schemes[0].treatments[0].layers[0]


def test_a_usual_window_in_a_usual_wall() -> None:
    room = first_room(facts(), TRADE)
    layer = layer_of(room)
    assert room.walls[0].openings[0].left == Length(54 * 25.4, "54 in")  # (144 - 36) / 2
    assert (layer.rod.height.hold, layer.rod.height.at.text) == ("above-casing", "4 in")
    assert [end.at.text for end in (layer.rod.left, layer.rod.right)] == ["11 in", "11 in"]
    assert [bracket.place.at.text for bracket in layer.brackets] == ["2 in", "2 in"]
    out = set_out(room, "wall-1", "s1", TRADE).treatments[0]
    # Common practice, no source: the rod 3 in or more over the casing, brackets 6 to 12 in beyond the opening.
    assert out.clearances.above_casing_mm == pytest.approx(4 * 25.4)
    assert out.clearances.bracket_left_mm == pytest.approx(9 * 25.4)
    assert out.glass.clear_open == 1.0
    assert out.glass.clear_closed == 0.0
    assert out.clearances.hem_to_floor_low_mm == pytest.approx(12.7)
    assert out.layers[0].support.length_mm == pytest.approx(58 * 25.4)


def test_what_was_typed_is_kept_as_typed() -> None:
    room = first_room(facts(width="12 ft", left="4' 6 1/2\"", crown="0", baseboard=None), TRADE)
    wall = room.walls[0]
    assert wall.width is not None
    assert wall.width.text == "12 ft"
    assert wall.openings[0].left is not None
    assert wall.openings[0].left.text == "4' 6 1/2\""
    assert wall.crown is not None
    assert wall.crown.mm == 0
    assert wall.baseboard is None


@pytest.mark.parametrize(
    ("ceiling", "above"), [("90", "3 1/2"), ("89 1/2", "3"), ("89 1/4", "2 7/8"), ("84", "1/4"), ("83 1/2", "0")]
)
def test_a_small_gap_is_shared(ceiling: str, above: str) -> None:
    # The casing's top is at 83 1/2: from 89 1/2 on there are 3 in below and above; less is shared half and half.
    at = layer_of(first_room(facts(ceiling=ceiling), TRADE)).rod.height.at
    assert at.mm == pytest.approx(parse_length(above).mm, abs=25.4 / 16 + 1e-6)


def test_a_narrow_wall_gets_caps_and_a_shorter_rod() -> None:
    layer = layer_of(first_room(facts(width="50"), TRADE))
    assert layer.rod.ends == "cap"
    out = set_out(first_room(facts(width="50"), TRADE), "wall-1", "s1", TRADE).treatments[0].layers[0].support
    assert out.metal_left_mm >= 0
    assert out.metal_right_mm <= 50 * 25.4


@pytest.mark.parametrize(("opening", "middles"), [("36", 0), ("38", 0), ("38 1/16", 1), ("60", 1), ("90", 1)])
def test_a_rod_over_sixty_inches_is_proposed_with_a_middle_bracket(opening: str, middles: int) -> None:
    # 38 + 2 * 11 = 60 in
    layer = layer_of(first_room(facts(opening_width=opening, width="240"), TRADE))
    assert len(layer.brackets) == 2 + middles


def test_every_joint_of_a_long_rod_has_a_bracket() -> None:
    room = first_room(facts(width="9 m", opening_width="8.4 m", opening_height="1200 mm", sill="900 mm", unit="mm"), TRADE)
    support = set_out(room, "wall-1", "s1", TRADE).treatments[0].layers[0].support
    assert support.pieces == 3  # 8.4 m and both reaches from 3 m tubes
    assert support.splice_free == ()


@pytest.mark.parametrize("unit", ["in", "mm"])
@pytest.mark.parametrize("opening_mm", [600, 1260, 1280, 1400, 1620, 1660, 2400, 3200])
def test_its_own_proposal_is_within_the_usual_fullness_of_its_heading(unit: str, opening_mm: int) -> None:
    # From headings.csv: flat cloth on clipped rings, 1.5 to 2.5. Two 54 in pieces a side would be 3 over a 55 in window.
    room = first_room(facts(unit=unit, width="5 m", opening_width=f"{opening_mm} mm"), TRADE)
    panels = set_out(room, "wall-1", "s1", TRADE).treatments[0].layers[0].panels
    assert all(1.5 <= panel.fullness <= 2.5 for panel in panels)


@pytest.mark.parametrize(
    ("changes", "path"),
    [
        ({"opening_width": "145"}, "openings[0]"),
        ({"left": "109"}, "openings[0]"),
        ({"sill": "60"}, "openings[0]"),
        ({"width": "0"}, "width"),
        ({"ceiling": "5"}, "ceiling"),
        ({"casing": "-1"}, "casing"),
    ],
)
def test_facts_that_cannot_be_true_together_are_refused(changes: dict[str, str], path: str) -> None:
    with pytest.raises(BadInput) as caught:
        first_room(facts(**changes), TRADE)
    assert path in str(caught.value)


@given(
    st.sampled_from(["in", "mm"]),
    st.integers(300, 9000),
    st.integers(1900, 4000),
    st.integers(200, 8000),
    st.integers(300, 2500),
    st.integers(0, 1200),
    st.none() | st.integers(0, 9000),
    st.none() | st.integers(0, 150),
)
def test_any_facts_that_fit_give_a_room_that_can_be(
    unit: Any, width: int, ceiling: int, opening: int, height: int, sill: int, left: int | None, casing: int | None
) -> None:
    assume((left or 0) + opening <= width and sill + height <= ceiling)

    def mm(value: int | None) -> Length | None:
        return None if value is None else Length(float(value), f"{value} mm")

    given_facts = {"width": width, "ceiling": ceiling, "opening_width": opening, "opening_height": height, "sill": sill}
    lengths: Any = {key: mm(value) for key, value in given_facts.items()}
    room = first_room(FirstFacts(**lengths, unit=unit, left=mm(left), casing=mm(casing)), TRADE)
    check_room(room, "x")
    check_rows(room, TRADE, "x")
    assert load_bytes(dump_room(room), "x") == room
    out = set_out(room, "wall-1", "s1", TRADE)
    (treatment,) = out.treatments
    support = treatment.layers[0].support
    assert support.length_mm >= opening - 1e-6
    assert support.left_mm >= -1e-6
    assert support.right_mm <= width + 1e-6
    assert support.splice_free == ()
    assert all(panel.cannot_pass == () for panel in treatment.layers[0].panels)


def test_tables_are_loaded_where_none_are_given() -> None:
    assert first_room(facts()) == first_room(facts(), TRADE)
