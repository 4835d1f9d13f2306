"""Drilling plates: outline, notches, marks and holes of every kit in the table, by its own row; laid side by side."""

from __future__ import annotations

import pytest

from elevation.planning.plate import BORDER_MM, CORNER_MM, NOTCH_MM, plate_of, side_by_side, size_of
from elevation.trade.tables import load_trade

TRADE = load_trade()
KITS = [kit for kit in TRADE.brackets.values() if kit.holes_mm and kit.mount in ("wall", "ceiling", "sash")]


@pytest.mark.parametrize("kit", KITS, ids=lambda kit: kit.id)
def test_a_plate_reaches_beyond_plate_and_holes_and_is_notched_on_both_lines(kit) -> None:
    plate = plate_of(kit, kit.mount)
    half = kit.plate_width_mm / 2
    high, low = (half, half) if kit.mount == "ceiling" else (kit.plate_above_mm, kit.plate_below_mm)
    xs = [x for x, _ in plate.holes]
    ys = [y for _, y in plate.holes]
    # The holes of a ceiling bracket lie along the rod, those of others over and under it.
    assert list(kit.holes_mm) == (xs if kit.mount == "ceiling" else ys)
    assert set(ys if kit.mount == "ceiling" else xs) == {0.0}
    left, bottom, right, top = size_of(plate)
    assert right == -left == pytest.approx(max(half, max(map(abs, xs))) + BORDER_MM)
    assert top == pytest.approx(max(high, max(ys), 0.0) + BORDER_MM)
    assert bottom == pytest.approx(min(-low, min(ys), 0.0) - BORDER_MM)
    # Left and right are alike; four notches point at the axis; only the upper corners are cut off.
    assert {(-x, y) for x, y in plate.outline} == set(plate.outline)
    notches = {(left + NOTCH_MM, 0.0), (right - NOTCH_MM, 0.0), (0.0, bottom + NOTCH_MM), (0.0, top - NOTCH_MM)}
    assert notches <= set(plate.outline)
    assert {(right, top - CORNER_MM), (right - CORNER_MM, top), (right, bottom)} <= set(plate.outline)
    assert (right, top) not in plate.outline
    for edge in ((0.0, bottom), (0.0, top), (left, 0.0), (right, 0.0)):
        assert edge not in plate.outline
    # Twice the area of a polygon is the sum of its cross products: a rectangle less two corners and four notches.
    points = plate.outline
    twice = sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in zip(points, [*points[1:], points[0]], strict=True))
    assert abs(twice) == pytest.approx(2 * (right - left) * (top - bottom) - 2 * CORNER_MM**2 - 4 * NOTCH_MM**2)
    # Scored: both lines from notch to notch, and the bracket's own plate.
    assert set(plate.marks[:2]) == {
        ((left + NOTCH_MM, 0.0), (right - NOTCH_MM, 0.0)),
        ((0.0, bottom + NOTCH_MM), (0.0, top - NOTCH_MM)),
    }
    assert {point for line in plate.marks[2:] for point in line} == {(x, y) for x in (-half, half) for y in (-low, high)}


def test_plates_side_by_side_keep_their_gap() -> None:
    laid = side_by_side([plate_of(kit, kit.mount) for kit in KITS], 10.0)
    end = -10.0
    for plate, (x, y) in laid:
        left, bottom, right, _ = size_of(plate)
        assert x + left == pytest.approx(end + 10.0)
        assert y + bottom == pytest.approx(0.0)
        end = x + right
