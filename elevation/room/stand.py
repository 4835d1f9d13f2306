"""Where openings stand, as far as validation needs it: a plain reading of the measuring chain."""

from __future__ import annotations

from elevation.room.model import Station, Wall


def stands(wall: Wall) -> tuple[float | None, ...]:
    """The left side of each opening in mm from the wall's left end; None where the chain does not say.

    Read from the left (``left`` wins over ``gap``), then from the right for those still unknown.
    An unmeasured casing counts as none: it could only make an overlap that is not there.
    """
    lefts: list[float | None] = []
    edge: float | None = 0.0
    for opening in wall.openings:
        casing = opening.casing.mm if opening.casing else 0.0
        left = None
        if opening.left is not None:
            left = opening.left.mm
        elif opening.gap is not None and edge is not None:
            left = edge + opening.gap.mm + casing
        lefts.append(left)
        edge = None if left is None else left + opening.width.mm + casing
    edge = None
    if wall.width is not None and wall.gap_right is not None:
        edge = wall.width.mm - wall.gap_right.mm
    for index in range(len(lefts) - 1, -1, -1):
        opening = wall.openings[index]
        casing = opening.casing.mm if opening.casing else 0.0
        left = lefts[index]
        if left is None and edge is not None:
            left = edge - casing - opening.width.mm
            lefts[index] = left
        edge = None
        if left is not None and opening.gap is not None:
            edge = left - casing - opening.gap.mm
    return tuple(lefts)


def excess(wall: Wall) -> float:
    """By how many mm a chain that is typed in full is longer than its wall (less than zero: shorter).

    Zero where a link or the width is blank, or where an opening is placed from the wall's left end.
    """
    gaps = (*(opening.gap for opening in wall.openings), wall.gap_right)
    if wall.width is None or any(opening.left is not None for opening in wall.openings):
        return 0.0
    total = sum(opening.width.mm + 2 * (opening.casing.mm if opening.casing else 0.0) for opening in wall.openings)
    for gap in gaps:
        if gap is None:
            return 0.0
        total += gap.mm
    return total - wall.width.mm


def height_at(stations: tuple[Station, ...], x_mm: float) -> float | None:
    """Height of a profile at ``x_mm``: straight between its points, level beyond them; None if it has none."""
    if not stations:
        return None
    before = stations[0]
    if x_mm <= before.x.mm:
        return before.height.mm
    for after in stations[1:]:
        if x_mm <= after.x.mm:
            run = after.x.mm - before.x.mm
            share = (x_mm - before.x.mm) / run
            return before.height.mm + share * (after.height.mm - before.height.mm)
        before = after
    return before.height.mm
