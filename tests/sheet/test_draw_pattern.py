"""A pattern on folds: true to scale, read back from the display list and from the SVG."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET
from itertools import pairwise

import pytest
from msgspec.structs import replace
from scipy.special import ellipeinc

from elevation.commands.draw import picture_of
from elevation.output.svg import to_svg
from elevation.room.edits import edit_at
from elevation.room.model import Room, TieBack
from elevation.setting_out.model import PanelOut, PatternOut
from elevation.setting_out.whole import set_out_afresh
from elevation.sheet import inks
from elevation.sheet.draw_drape import hang
from elevation.sheet.draw_pattern import pattern_records, places_of, stripe_spans
from elevation.sheet.draw_tied import tied_records
from elevation.sheet.records import Fill, Gradient
from elevation.trade.folds import steepness_of, wave_places
from tests.cross.vectors import SVG
from tests.findings.rooms import INCH, LAYER, good_room, inch, mm, panels, trade
from tests.sheet.test_draw_cloth import LEVEL, drape_of

STRIPES = PatternOut("stripes", "#204060", 120.0, 120.0)


def areas(records) -> list[list[tuple[float, float]]]:
    """Closed areas of the first record, as points."""
    found: list[list[tuple[float, float]]] = []
    for step in records[0].steps:
        if step[0] == "M":
            found.append([])
        if step[0] != "Z":
            found[-1].append((step[-2], step[-1]))
    return found


def spans(records) -> list[tuple[float, float]]:
    """Where each strip begins and ends at the heading, left to right."""
    return sorted((min(one[0][0], one[2][0]), max(one[0][0], one[2][0])) for one in areas(records))


@pytest.mark.parametrize("fullness", [1.0, 1.25, 2.0, 3.0, 7.9])
def test_equal_lengths_of_cloth_lie_between_the_places_of_a_wave(fullness: float) -> None:
    # Arc length of a sine by the incomplete elliptic integral of the second kind (scipy, parameter m = -k2).
    k = steepness_of(fullness) if fullness > 1 else 0.0
    whole = ellipeinc(2 * 3.141592653589793, -k * k)
    for index, place in enumerate(wave_places(fullness)):
        assert ellipeinc(2 * 3.141592653589793 * place, -k * k) / whole == pytest.approx(index / 32, abs=1e-5)
    assert all(a < b for a, b in pairwise(wave_places(fullness)))


@pytest.mark.parametrize("over", [1.0, 1.5, 2.0, 3.0, 6.0])
@pytest.mark.parametrize("side", ["left", "right"])
def test_stripes_on_the_folds_add_up_to_those_of_the_flat_cloth(over: float, side: str) -> None:
    # Every strip that is drawn at the heading is measured back along its wave: together half of the flat cloth, to 1 %.
    panel, drape = drape_of(width=900.0, folds=9, flat_width_mm=900.0 * over)
    panel = replace(panel, side=side)
    k = steepness_of(over) if over > 1 else 0.0
    whole = ellipeinc(2 * 3.141592653589793, -k * k)

    def along(x: float) -> float:
        fold = min(int(x / 100.0 + 1e-9), 8)
        share = ellipeinc(2 * 3.141592653589793 * (x / 100.0 - fold), -k * k) / whole
        return (fold + share) * 100.0 * over

    stripes = areas(pattern_records(panel, drape, STRIPES, "#b9704a", "light"))
    measured = sum(abs(along(strip[2][0]) - along(strip[0][0])) for strip in stripes)
    wanted = sum(b - a for a, b in stripe_spans(900.0 * over, 120.0))
    assert measured == pytest.approx(wanted, rel=0.01)


def test_the_pattern_begins_at_the_leading_edge_and_mirrors() -> None:
    # Parked at the left its leading edge is on the right: there a quarter of a repeat is plain, then comes a stripe.
    panel, drape = drape_of(width=900.0, folds=9, flat_width_mm=900.0)
    left = spans(pattern_records(panel, drape, STRIPES, "#b9704a", "light"))
    assert left[-1][1] == pytest.approx(900.0 - 30.0, abs=0.5)
    right = spans(pattern_records(replace(panel, side="right"), drape, STRIPES, "#b9704a", "light"))
    assert right[0][0] == pytest.approx(30.0, abs=0.5)
    turned = sorted((900.0 - b, 900.0 - a) for a, b in right)
    assert [x for span in turned for x in span] == pytest.approx([x for span in left for x in span], abs=0.5)


@pytest.mark.parametrize(
    ("flat", "repeat", "spans"),
    [
        (240.0, 120.0, ((30.0, 90.0), (150.0, 210.0))),
        # Cut in the middle of a stripe, just at its end, just before it begins.
        (180.0, 120.0, ((30.0, 90.0), (150.0, 180.0))),
        (210.0, 120.0, ((30.0, 90.0), (150.0, 210.0))),
        (150.0, 120.0, ((30.0, 90.0),)),
        (150.1, 120.0, ((30.0, 90.0), (150.0, 150.1))),
    ],
)
def test_where_stripes_begin_and_end(flat: float, repeat: float, spans: tuple[tuple[float, float], ...]) -> None:
    assert stripe_spans(flat, repeat) == tuple((pytest.approx(a), pytest.approx(b)) for a, b in spans)


def test_light_and_shade_of_the_folds_are_on_the_pattern_too() -> None:
    panel, drape = drape_of()
    (stripes,) = pattern_records(panel, drape, STRIPES, "#b9704a", "light")
    assert isinstance(stripes.paint, Gradient)
    assert len({stop.colour for stop in stripes.paint.stops}) > 3


def test_finer_than_can_be_drawn_is_left_out() -> None:
    panel, drape = drape_of(flat_width_mm=1800.0)
    fine = PatternOut("dots", "#204060", 5.0, 5.0)
    assert pattern_records(panel, drape, fine, "#b9704a", "light") == []
    assert pattern_records(panel, drape, replace(fine, kind="stripes", up_mm=4000.0), "#b9704a", "light") != []


def test_dots_step_by_half_a_repeat() -> None:
    panel, drape = drape_of(width=900.0, folds=1, flat_width_mm=900.0)
    dots = PatternOut("dots", "#204060", 300.0, 400.0)

    def heights(pattern: PatternOut) -> list[set[int]]:
        columns: dict[int, set[int]] = {}
        for dot in areas(pattern_records(panel, drape, pattern, "#b9704a", "light")):
            x, y = (sum(part) / len(dot) for part in zip(*dot, strict=True))
            columns.setdefault(round(x / 300 - 0.5), set()).add(round((2200.0 - y) / 50))
        return [columns[key] for key in sorted(columns)]

    straight, dropped = heights(dots), heights(replace(dots, half_drop=True))
    assert straight[0] == straight[1] == straight[2]
    assert dropped[0] == dropped[2] != dropped[1]


def striped(kind: str, **fields: object) -> Room:
    room = panels(good_room(), drawn=inch(30))

    def dye(layer):
        return replace(layer, fabric=replace(layer.fabric, pattern=kind, **fields))

    return edit_at(room, LAYER, dye)


def cloth_paths(room: Room) -> list[list[tuple[float, float]]]:
    data = to_svg(picture_of(room, room.walls[0], room.walls[0].schemes[0], trade()))
    group = next(one for one in ET.fromstring(data).iter(f"{SVG}g") if one.get("class") == "panel-drawn")
    found = []
    for path in group.iter(f"{SVG}path"):
        for piece in re.findall(r"M[^MZ]*Z", path.get("d", "")):
            numbers = [float(number) for number in re.findall(r"-?[\d.]+", piece)]
            if "C" not in piece and len(numbers) > 40:
                found.append(list(zip(numbers[::2], numbers[1::2], strict=True)))
    return found


def test_the_repeat_of_bands_measured_in_the_svg() -> None:
    # Where the two lower corners of a band stand, one repeat under the other; the sheet's scale is read from the wall.
    room = striped("bands", repeat=mm(160))
    bands = cloth_paths(room)
    firsts = [band[0][1] for band in bands]
    steps = [b - a for a, b in pairwise(firsts)]
    assert len(steps) > 8
    scale = 160 / steps[0]
    assert all(step * scale == pytest.approx(160, abs=0.5) for step in steps)
    other = [band[0][1] for band in cloth_paths(striped("bands", repeat=mm(320)))]
    assert (other[1] - other[0]) / steps[0] == pytest.approx(2, abs=0.01)
    # Half of each repeat is band.
    assert abs(bands[0][-1][1] - bands[0][0][1]) / steps[0] == pytest.approx(0.5, abs=0.01)


def test_what_is_not_typed_is_taken_from_the_other_way_else_usual() -> None:
    def pattern(**fields: object) -> PatternOut:
        layer = set_out_afresh(striped("dots", **fields), "w1", "s1", trade()).treatments[0].layers[0]
        assert layer.pattern is not None
        return layer.pattern

    assert (pattern().across_mm, pattern().up_mm) == (4 * INCH, 4 * INCH)
    assert (pattern(repeat=mm(90)).across_mm, pattern(repeat=mm(90)).up_mm) == (90, 90)
    assert (pattern(repeat_across=mm(70)).across_mm, pattern(repeat_across=mm(70)).up_mm) == (70, 70)
    both = pattern(repeat=mm(90), repeat_across=mm(70), half_drop=True)
    assert (both.across_mm, both.up_mm, both.half_drop) == (70, 90, True)
    assert set_out_afresh(good_room(), "w1", "s1", trade()).treatments[0].layers[0].pattern is None


@pytest.mark.parametrize("kind", ["stripes", "bands", "check", "grid", "dots"])
def test_a_tied_panel_keeps_its_pattern_inside_its_outline(kind: str) -> None:
    room = striped(kind)
    room = edit_at(room, LAYER, lambda layer: replace(layer, tie=TieBack()))
    layer = set_out_afresh(room, "w1", "s1", trade()).treatments[0].layers[0]
    panel: PanelOut = layer.panels[0]
    drape = hang(panel, panel.drawn, "rings", layer.colour, layer.body, LEVEL)
    assert panel.tie is not None
    plain = tied_records(panel, panel.tie, drape)
    records = tied_records(panel, panel.tie, drape, layer.pattern)
    assert layer.pattern is not None
    assert len(records) - len(plain) == {"grid": 2, "check": 3}.get(kind, 1)
    marks = next(record for record in records if isinstance(record, Fill) and record not in plain)
    xs = [step[-2] for step in marks.steps if step[0] != "Z"]
    low, high = min(panel.tie.waist[0], panel.drawn[0]), max(panel.tie.waist[1], panel.drawn[1])
    assert low - 30 <= min(xs)
    assert max(xs) <= high + 1


def test_places_follow_how_far_the_panel_is_drawn() -> None:
    assert places_of(900.0, 900.0) == wave_places(1.0)
    assert places_of(1800.0, 900.0) == wave_places(2.0)
    assert places_of(18000.0, 900.0) == wave_places(8.0)


def test_a_check_is_darkest_where_stripes_and_bands_cross() -> None:
    panel, drape = drape_of(width=900.0, folds=1, flat_width_mm=900.0)
    check = PatternOut("check", "#000000", 300.0, 400.0)
    stripes, bands, crossings = pattern_records(panel, drape, check, "#ffffff", "light")

    def light(record) -> float:
        return max(inks.lightness(stop.colour) for stop in record.paint.stops)

    assert light(stripes) == light(bands) > light(crossings)
    # Three stripes over five and a half repeats of bands: 3 x 6 crossings, and each lies in a stripe and in a band.
    assert len(areas([crossings])) == 18
