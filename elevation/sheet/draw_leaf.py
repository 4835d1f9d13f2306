"""The leaf of a door, and the shade of a reveal on whatever stands in it."""

from __future__ import annotations

from elevation.setting_out.model import OpeningOut
from elevation.sheet import inks
from elevation.sheet.paths import Step, bounds, circle, head_at, head_tops, opening_path, rectangle, segment
from elevation.sheet.records import NARROW, Fill, Gradient, Ink, Path, Pen, Record, Stop

_NARROW = Pen(Ink.OUTLINE, NARROW)
_FINE = Pen(inks.FINE_LINE, 0.13)
KNOB_UP_MM = 965.0


def reveal_shade(opening: OpeningOut) -> list[Record]:
    """The shadow that a reveal throws inward from the left and from above, in two steps, whatever the head."""
    depth = opening.reveal_mm or 0.0
    if depth <= 0:
        return []
    wide, low = opening.right_mm - opening.left_mm, opening.bottom_mm
    reach = min(depth * 0.7, wide / 5, (min(head_tops(opening)) - low) / 5)
    outer = opening_path(opening)
    return [Fill((*outer, *_drawn_in(outer, opening, reach * share)), inks.SHADE_SOFT) for share in (1.0, 0.55)]


def _drawn_in(outline: tuple[Step, ...], opening: OpeningOut, by: float) -> tuple[Step, ...]:
    """The outline drawn in from the left and from above, its right and lower edges left where they are."""
    share = 1.0 - by / (opening.right_mm - opening.left_mm)
    steps: list[Step] = []
    for step in outline:
        moved: list[str | float] = [step[0]]
        for x, y in zip(step[1::2], step[2::2], strict=True):
            down = by if float(y) > opening.bottom_mm + 1e-6 else 0.0
            moved += [opening.right_mm - (opening.right_mm - float(x)) * share, float(y) - down]
        steps.append(tuple(moved))
    return tuple(steps)


def panelled_leaf(opening: OpeningOut) -> list[Record]:
    """A door's leaf, or both, with raised panels, knobs and hinges, under any head."""
    left, right, low = opening.left_mm, opening.right_mm, opening.bottom_mm
    records: list[Record] = [
        Fill(
            opening_path(opening),
            Gradient((left, 0.0), (right, 0.0), (Stop(0.0, inks.TRIM_SHADE), Stop(0.2, inks.LEAF), Stop(1.0, inks.LEAF))),
        )
    ]
    leaves = [(left, right, opening.hinge)]
    if opening.hinge == "both":
        middle = (left + right) / 2
        leaves = [(left, middle, "left"), (middle, right, "right")]
        records.append(Path(segment(middle, low, middle, head_at(opening, middle, 0.0)), _NARROW))
    upper: list[Step] = []
    lower: list[Step] = []
    knobs: list[Step] = []
    for near, far, hinge in leaves:
        spring = min(head_at(opening, near, 0.0), head_at(opening, far, 0.0))
        stile = min(115.0, (far - near) * 0.15, max(spring - low, 1.0) * 0.08)
        columns = 2 if far - near > 520 else 1
        wide = (far - near - stile * (columns + 1)) / columns
        lock = low + (spring - low) * 0.42
        for column in range(columns):
            x = near + stile + column * (wide + stile)
            lower.extend(rectangle(x, low + stile * 1.7, x + wide, lock))
            upper.extend(rectangle(x, lock + stile * 1.3, x + wide, spring - stile))
        x = far - stile / 2 if hinge != "right" else near + stile / 2
        knobs.extend(circle(x, min(low + KNOB_UP_MM, spring - stile), min(27.0, stile * 0.4)))
        wide, half = min(6.0, stile * 0.2), min(45.0, max(spring - low, 1.0) * 0.03)
        x = near + wide / 2 if hinge != "right" else far - wide * 1.5
        for share in (0.1, 0.5, 0.9):
            y = low + (spring - low) * share
            knobs.extend(rectangle(x, y - half, x + wide, y + half))
    for fields in (upper, lower):
        _, floor, _, top = bounds(fields)
        edge = (top - floor) * 0.03
        tone = Gradient(
            (0.0, top),
            (0.0, floor),
            (Stop(0.0, inks.TRIM_DEEP), Stop(0.08, inks.TRIM_SHADE), Stop(1.0, Ink.TRIM)),
        )
        records += [Fill(tuple(fields), tone), Path((*fields, *_inner(fields, min(22.0, edge * 2))), _FINE)]
    records += [Fill(tuple(knobs), inks.METAL_MIDDLE), Path(tuple(knobs), _FINE)]
    records.extend(reveal_shade(opening))
    return records


def _inner(rectangles: list[Step], by: float) -> tuple[Step, ...]:
    """The same rectangles, each ``by`` mm smaller all round: the raised field of a panel."""
    steps: list[Step] = []
    for start in range(0, len(rectangles), 5):
        left, bottom, right, top = bounds(rectangles[start : start + 4])
        if right - left > 3 * by and top - bottom > 3 * by:
            steps.extend(rectangle(left + by, bottom + by, right - by, top - by))
    return tuple(steps)
