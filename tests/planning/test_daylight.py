"""Daylight against integrals by hand: rectangles of glass and cloth, thicknesses, linings, layers, half the height."""

from __future__ import annotations

import math
from typing import Any

import pytest
from msgspec.structs import replace

from elevation.planning.cloth_light import passed_flat, passed_hung
from elevation.planning.daylight import daylight_of, passed_round, pieces_of, slits_of
from elevation.planning.daylight_words import daylight_words
from elevation.room.model import Fabric, Room
from elevation.setting_out.clipping import area_of, clipped
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.setting_out.whole import set_out
from elevation.trade import load_trade
from elevation.words import Style, say
from tests.handles.rooms import BACK, INCH, room, with_layer
from tests.handles.test_moves import mirrored

TRADE = load_trade()
LINEN, LINING, VOILE = (TRADE.fabrics[key].transmits for key in ("linen-light", "lining-light", "voile"))
# The glass runs from 52 to 88 in across and from 26 to 78 in up: 36 by 52 in. Each panel is 54 in of flat cloth.


def dressed(**fabric: object) -> Room:
    return room(layer=with_layer(fabric=Fabric(**{"row": "linen-light"} | fabric)))


def landed(now: Room) -> TreatmentOut:
    return set_out(now, "a", "s", TRADE).treatments[0]


def hung(
    treatment: TreatmentOut, *spans_in: tuple[float, float], top_in: float = 86.0, low_in: float = 0.5
) -> TreatmentOut:
    """The same treatment with its panels closed over these stretches, from one height to another."""
    layer = treatment.layers[0]
    panels = []
    for panel, (left, right) in zip(layer.panels, spans_in, strict=True):
        made: Any = {"closed": (left * INCH, right * INCH), "top_mm": top_in * INCH, "hem_low_mm": low_in * INCH}
        panels.append(replace(panel, **made))
    layers: tuple[LayerOut, ...] = (replace(layer, panels=tuple(panels)), *treatment.layers[1:])
    return replace(treatment, layers=layers)


def test_each_thickness_takes_its_part_again() -> None:
    now = dressed()
    # Panels of 54 in over 27 in each hang two thick; together they cover all of 43 to 97 in.
    closed = hung(landed(now), (43, 70), (70, 97))
    assert daylight_of(now, closed, TRADE).closed.least == pytest.approx(LINEN**2, rel=1e-9)
    # Over 18 in each, three thick, before the outer quarters of the glass: 52 to 61 and 79 to 88 in of 36 in.
    part = hung(landed(now), (43, 61), (79, 97))
    assert daylight_of(now, part, TRADE).closed.least == pytest.approx(0.5 + 0.5 * LINEN**3, rel=1e-9)


def test_cloth_before_half_of_the_height() -> None:
    now = dressed()
    # Up to 52 in: the lower 26 in of 52 in of glass.
    cafe = hung(landed(now), (43, 70), (70, 97), top_in=52.0)
    assert daylight_of(now, cafe, TRADE).closed.least == pytest.approx(0.5 + 0.5 * LINEN**2, rel=1e-9)
    # Hemmed at 39 in as well: a quarter covered, 39 to 52 in.
    short = hung(landed(now), (43, 70), (70, 97), top_in=52.0, low_in=39.0)
    assert daylight_of(now, short, TRADE).closed.least == pytest.approx(0.75 + 0.25 * LINEN**2, rel=1e-9)


def test_lining_and_layers_multiply() -> None:
    lined = dressed(lining="lining-light")
    closed = hung(landed(lined), (43, 70), (70, 97))
    assert daylight_of(lined, closed, TRADE).closed.least == pytest.approx((LINEN * LINING) ** 2, rel=1e-9)
    sheer = replace(BACK, fabric=Fabric(row="voile"))
    two = room(layer=with_layer(fabric=Fabric(row="linen-light")), layers=(sheer,))
    treatment = hung(landed(two), (43, 70), (70, 97))
    (behind,) = treatment.layers[1].panels
    wide = (behind.closed[1] - behind.closed[0]) / INCH
    covered = (min(behind.closed[1] / INCH, 88) - max(behind.closed[0] / INCH, 52)) / 36
    passes = VOILE ** max(54 / wide, 1.0)
    expected = LINEN**2 * (1 - covered + covered * passes)
    # The back panel hangs over all of the glass's height.
    assert behind.top_mm / INCH > 78
    assert behind.hem_low_mm / INCH < 26
    assert daylight_of(two, treatment, TRADE).closed.least == pytest.approx(expected, rel=1e-9)


def test_bare_blackout_and_cloth_that_is_not_chosen() -> None:
    dark = dressed(row="blackout")
    light = daylight_of(dark, hung(landed(dark), (43, 70), (70, 97)), TRADE)
    assert (light.closed.least, light.closed.most) == (0.0, 0.0)
    assert light.is_chosen
    none = room(layer=with_layer(panels=()))
    assert daylight_of(none, landed(none), TRADE).closed.least == 1.0


def test_cloth_that_is_not_chosen_keeps_between_what_its_kind_keeps() -> None:
    # Of the table's sheer cloths the densest passes 0.6, the thinnest 0.65; two thick over all of the glass.
    unknown = dressed(row=None, body="sheer")
    light = daylight_of(unknown, hung(landed(unknown), (43, 70), (70, 97)), TRADE)
    assert (light.closed.least, light.closed.most) == pytest.approx((0.6**2, 0.65**2), rel=1e-9)
    assert not light.is_chosen
    assert say(daylight_words(light)[0], Style()).endswith("36 to 42% closed (its cloth is not chosen)")
    # A body that means a lining has no face of its own: any face, any lining.
    assert passed_flat(Fabric(body="lined"), TRADE) == (0.0, pytest.approx(0.65 * 0.3))
    assert passed_flat(Fabric(body="lined", lining="lining-sateen"), TRADE) == (0.0, pytest.approx(0.65 * 0.2))
    assert passed_flat(Fabric(body="interlined"), TRADE) == (0.0, pytest.approx(0.65 * 0.3 * 0.4))


def test_what_hangs_is_never_lighter_than_flat() -> None:
    assert passed_flat(Fabric(row="linen-light"), TRADE) == (LINEN, LINEN)
    assert passed_hung(0.5, 40.0, 54.0) == 0.5
    assert passed_hung(0.5, 108.0, 54.0) == 0.25
    assert passed_hung(0.5, 81.0, 54.0) == pytest.approx(math.sqrt(0.125))


def test_the_pieces_are_all_of_the_glass() -> None:
    now = dressed()
    for position in ("open", "closed", "drawn"):
        pieces = pieces_of(now, landed(now), TRADE, position)
        assert sum(piece.area_mm2 for piece in pieces) == pytest.approx(36 * 52 * INCH**2, rel=1e-9)


def test_a_half_round_head_is_clipped_to_its_area() -> None:
    # A half disc of radius 1000 is pi / 2 square metres; its left half half of that, its part over 500 mm by the segment's
    # formula r^2 acos(d / r) - d sqrt(r^2 - d^2).
    disc = [(1000 * math.cos(angle), 1000 * math.sin(angle)) for angle in (math.pi * n / 2048 for n in range(2049))]
    assert area_of(disc) == pytest.approx(math.pi / 2 * 1e6, rel=1e-5)
    assert area_of(clipped(disc, -2000, 0, 0, 2000)) == pytest.approx(math.pi / 4 * 1e6, rel=1e-5)
    segment = 1e6 * math.acos(0.5) - 500 * math.sqrt(1e6 - 500**2)
    assert area_of(clipped(disc, -2000, 500, 2000, 2000)) == pytest.approx(segment, rel=1e-5)
    assert clipped(disc, 3000, 0, 4000, 1000) == ()


def test_the_mirror_keeps_as_much() -> None:
    now = dressed()
    here, there = daylight_of(now, landed(now), TRADE), daylight_of(mirrored(now), landed(mirrored(now)), TRADE)
    for one, other in ((here.open, there.open), (here.closed, there.closed), (here.drawn, there.drawn)):
        assert (one.least, one.most) == pytest.approx((other.least, other.most))
    assert sorted(slit.share for slit in here.slits) == pytest.approx(sorted(slit.share for slit in there.slits))
    assert sorted(slit.width_mm for slit in here.slits) == pytest.approx(sorted(slit.width_mm for slit in there.slits))


def test_light_comes_round_cloth_as_far_as_it_stands_out() -> None:
    # The rod stands 3 1/2 in out; the panels leave 4 in between them.
    slits = slits_of(hung(landed(dressed()), (43, 68), (72, 97)))
    assert [(slit.place, round(slit.width_mm / INCH, 3)) for slit in slits] == [
        ("left", 3.5),
        ("right", 3.5),
        ("top", 3.5),
        ("centre", 4.0),
    ]
    met = slits_of(hung(landed(dressed()), (43, 70), (70, 97)))
    assert "centre" not in {slit.place for slit in met}
    ceiling = replace(landed(dressed()), mount="ceiling")
    assert "top" not in {slit.place for slit in slits_of(ceiling)}
    assert slits_of(replace(landed(dressed()), mount="reveal")) == ()


def test_what_comes_round_falls_off_as_crossed_strings_say() -> None:
    # View factor of two equal parallel strips w wide and h apart: sqrt(1 + (h/w)^2) - h/w (textbooks of heat transfer,
    # for instance J. R. Howell, A Catalog of Radiation Heat Transfer Configuration Factors, C-1): 0.4142 for h = w.
    assert passed_round(100.0, 100.0) == pytest.approx(math.sqrt(2) - 1)
    assert passed_round(100.0, 0.0) == passed_round(100.0, -50.0) == 1.0
    # The glass runs from 52 to 88 in and up to 78 in; the cloth to 43 in, to 97 in and to 86 in, 3 1/2 in out.
    slits = {slit.place: slit for slit in slits_of(hung(landed(dressed()), (43, 70), (70, 97)))}
    for place, past in (("left", 9.0), ("right", 9.0), ("top", 8.0)):
        ratio = past / 3.5
        assert slits[place].share == pytest.approx(math.hypot(1, ratio) - ratio, rel=1e-9)
    assert slits["left"].beside == pytest.approx((26 * INCH, 78 * INCH))
    assert slits["top"].beside == pytest.approx((52 * INCH, 88 * INCH))


@pytest.mark.parametrize("ends", ["socket", "return", "elbow"])
def test_no_light_comes_round_an_end_that_goes_to_a_wall(ends: str) -> None:
    now = dressed()
    layer = now.walls[0].schemes[0].treatments[0].layers[0]
    turned = room(layer=replace(layer, rod=replace(layer.rod, left_ends=ends)))
    assert [slit.place for slit in slits_of(landed(turned))][:2] == ["right", "top"]
