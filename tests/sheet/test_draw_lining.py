"""The strip of lining at a leading edge: on the right side, within the cloth, above the hem, only where there is one."""

from __future__ import annotations

import pytest
from msgspec.structs import replace

from elevation.room.edits import edit_at
from elevation.setting_out.model import Profile
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet.draw_drape import hang
from elevation.sheet.draw_lining import WIDEST_MM, lining_records
from elevation.sheet.drawing import View, draw_treatment
from elevation.sheet.inks import contrast
from elevation.sheet.paths import bounds
from elevation.sheet.records import Fill
from tests.findings.rooms import LAYER, good_room, trade
from tests.sheet.draw_cases import IN, make_opening, make_panel, make_trade, make_treatment

LEVEL = Profile(((0.0, 0.0),))
UP_MM = trade().allowances["lining-up"].length_mm


def strip(side, width=900.0, hem=0.5 * IN, top=2200.0):
    span = (100.0, 100.0 + width)
    panel = make_panel("p1", side, span, span, span, top, hem)
    drape = hang(panel, span, "pinch", "#4a5d7a", "lined", LEVEL)
    return drape, lining_records(panel, drape, UP_MM)


@pytest.mark.parametrize("width", [110.0, 12 * WIDEST_MM, 900.0])
@pytest.mark.parametrize("side", ["left", "right"])
def test_it_lies_along_the_leading_edge_within_the_cloth(side, width):
    drape, (fill, _) = strip(side, width)
    left, bottom, right, top = bounds(fill.steps)
    assert (right if side == "left" else left) == pytest.approx(100.0 + width if side == "left" else 100.0)
    assert right - left == pytest.approx(min(WIDEST_MM, width / 12))
    assert top == pytest.approx(drape.top_mm)
    assert bottom == pytest.approx(0.5 * IN + drape.lift_mm + UP_MM)


def test_it_is_told_from_the_face_and_alike_on_both_sides():
    (_, (fill, _)), (drape, (other, _)) = strip("left"), strip("right")
    assert contrast(fill.paint, drape.tones.base) > 3.0
    assert fill.paint == other.paint
    assert {(round(1100.0 - x, 6), y) for _, x, y in fill.steps[:-1]} == {(round(x, 6), y) for _, x, y in other.steps[:-1]}


def test_cloth_too_short_shows_none():
    drape, _ = strip("left")
    short = drape.lift_mm + 2 * UP_MM
    assert strip("left", top=0.5 * IN + short - 0.5)[1] == ()
    assert len(strip("left", top=0.5 * IN + short + 0.5)[1]) == 2


def test_only_a_lined_layer_shows_it_and_two_records_a_panel_are_all_that_it_costs():
    plain = make_treatment(make_opening())
    lined = replace(plain, layers=tuple(replace(layer, is_lined=True) for layer in plain.layers))
    counts = [
        sum(len(group.records) for group in draw_treatment(one, LEVEL, make_trade(), View("closed", False)))
        for one in (plain, lined)
    ]
    assert counts[1] - counts[0] == 4
    fills = [
        sum(
            isinstance(record, Fill)
            for group in draw_treatment(one, LEVEL, make_trade(), View("open", False))
            for record in group.records
        )
        for one in (plain, lined)
    ]
    assert fills[1] - fills[0] == 2


@pytest.mark.parametrize(("field", "value", "is_lined"), [
    ("body", "light", False), ("body", "sheer", False), ("body", "lined", True), ("body", "interlined", True),
    ("lining", "lining-light", True),
])  # fmt: skip
def test_a_layer_is_lined_by_its_body_or_by_the_lining_that_is_chosen(field, value, is_lined):
    room = edit_at(
        good_room(),
        LAYER,
        lambda old: replace(old, fabric=replace(old.fabric, **{"body": "light", "lining": None, field: value})),
    )
    (layer,) = set_out_afresh(room, "w1", "s1", trade()).treatments[0].layers
    assert layer.is_lined is is_lined
