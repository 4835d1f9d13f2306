"""A rod out of level by choice: how steep it hangs, and the heights that follow.

A slope is the rise to the right over the length. The eye compares a rod with the head under it and the ceiling over it;
where these two lines are not parallel no rod is parallel to both, and one half way between them shares the fault.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import sqrt

from msgspec import Struct

from elevation.setting_out.model import OpeningOut, Point, Profile, Span, SupportOut
from elevation.setting_out.profile import height_at
from elevation.units.tolerance import TOUCH_MM

TILTS = ("level", "head", "ceiling", "split")
"""How a rod may hang."""


class Look(Struct, frozen=True, gc=False):
    """How far the lines beside a rod rise to the right over its length, in mm (negative: they fall).

    ``rod`` is the rod's own rise as planned. ``ceiling`` is None where it was not measured, or is no straight line there.
    """

    length_mm: float
    rod: float
    head: float
    ceiling: float | None

    def rise(self, tilt: str) -> float:
        """The rise that a rod has which hangs so."""
        return _between(tilt, self.head, self.ceiling or 0.0)


def _between(tilt: str, head: float, ceiling: float) -> float:
    if tilt == "head":
        return head
    if tilt == "ceiling":
        return ceiling
    return (head + ceiling) / 2 if tilt == "split" else 0.0


def head_slope(openings: Sequence[OpeningOut]) -> float:
    """The slope of the heads: from the left corner of the first one to the right corner of the last one."""
    first, last = openings[0], openings[-1]
    left = first.left_top_mm if first.head == "raked" else first.top_mm - max(first.head_rise_mm, 0.0)
    right = last.right_top_mm if last.head == "raked" else last.top_mm + min(last.head_rise_mm, 0.0)
    wide = last.right_mm - first.left_mm
    return (right - left) / wide if wide > TOUCH_MM else 0.0


def ceiling_slope(ceiling: Profile, left_mm: float, right_mm: float) -> float:
    """The slope of the ceiling between two places; 0 where it was not measured."""
    if not ceiling.known or right_mm - left_mm <= TOUCH_MM:
        return 0.0
    return (height_at(ceiling, right_mm) - height_at(ceiling, left_mm)) / (right_mm - left_mm)


def slope_of(tilt: str, openings: Sequence[OpeningOut], ceiling: Profile, span: Span) -> float:
    """How steep a rod over those openings hangs."""
    if tilt == "level":
        return 0.0
    return _between(tilt, head_slope(openings), ceiling_slope(ceiling, *span))


def run_of(slope: float) -> float:
    """How long a rod of that slope is for each mm along the wall."""
    return sqrt(1 + slope * slope)


def look_of(support: SupportOut, openings: Sequence[OpeningOut], ceiling: Profile, slack_mm: float) -> Look:
    """What the eye compares a rod with; a ceiling that bends by more than ``slack_mm`` is no line to be parallel to."""
    left, right, long = support.left_mm, support.right_mm, support.length_mm
    rise: float | None = None
    if ceiling.known and long > TOUCH_MM:
        rise = ceiling_slope(ceiling, left, right) * long
        at = height_at(ceiling, left)
        for x, y in ceiling.points:
            if left < x < right and abs(y - at - rise * (x - left) / long) > abs(rise) / 2 + slack_mm:
                rise = None
                break
    head = head_slope(openings) * long if openings else 0.0
    return Look(long, support.tilt * long, head, rise)


def corners_of(openings: Iterable[OpeningOut], *, with_casing: bool) -> tuple[Point, ...]:
    """The corners of the heads that a leaning rod is held over, without or with their casing."""
    found: list[Point] = []
    for one in openings:
        out = one.casing_mm if with_casing else 0.0
        wide = one.right_mm - one.left_mm
        if one.head == "raked" and wide > TOUCH_MM:
            slope = (one.right_top_mm - one.left_top_mm) / wide
            up = out * sqrt(1 + slope * slope)
            found += [
                (one.left_mm - out, one.left_top_mm + up - slope * out),
                (one.right_mm + out, one.right_top_mm + up + slope * out),
            ]
            continue
        # The highest reading is what counts; the other corner lies lower by what was read.
        left, right = max(one.head_rise_mm, 0.0), min(one.head_rise_mm, 0.0)
        found += [(one.left_mm - out, one.top_mm + out - left), (one.right_mm + out, one.top_mm + out + right)]
    return tuple(found)


def highest(points: Iterable[Point], slope: float, middle_mm: float) -> float:
    """The height at ``middle_mm`` of the lowest line of that slope which is under none of the points."""
    return max(y - slope * (x - middle_mm) for x, y in points)


def lowest(ceiling: Profile, span: Span, slope: float) -> float:
    """The height in the middle of a stretch of the highest line of that slope which stays under the ceiling there."""
    left, right = span
    middle = (left + right) / 2
    places = [left, right, *(x for x, _ in ceiling.points if left < x < right)]
    return min(height_at(ceiling, x) - slope * (x - middle) for x in places)


def axis_of(height_mm: float, slope: float, span: Span) -> Profile:
    """The axis of a rod that leans, through ``height_mm`` in its middle."""
    half = slope * (span[1] - span[0]) / 2
    return Profile(((span[0], height_mm - half), (span[1], height_mm + half)))


def axis_at(support: SupportOut, x_mm: float) -> float:
    """Height of the rod's centre line at ``x_mm``, as it hangs."""
    return support.height_mm if support.line is None else height_at(support.line, x_mm)


def over_tops(support: SupportOut, openings: Sequence[OpeningOut], *, with_casing: bool) -> float:
    """Least height of the rod's centre line over heads or casings (negative: below)."""
    if support.line is None or not support.tilt:
        tops = (one.casing_top_mm if with_casing else one.top_mm for one in openings)
        return support.height_mm - max(tops)
    return min(axis_at(support, x) - y for x, y in corners_of(openings, with_casing=with_casing))


def under_line(support: SupportOut, ceiling: Profile) -> float:
    """Least height of the ceiling over the rod's centre line, crown left out of account."""
    span = (support.left_mm, support.right_mm)
    return lowest(ceiling, span, support.tilt if support.line is not None else 0.0) - support.height_mm


def is_as_held(support: SupportOut) -> bool:
    """Whether the height of a rod's centre line is the very one that is held: level, and not read after hanging."""
    return support.planned_mm is None and not support.tilt
