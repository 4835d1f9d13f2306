"""Lines to judge a wall by: parts of it, middles, and the levels and edges of what stands there.

Formulas, all in wall mm:

- part of the wall's width: ``share * width``; of its height, where the ceiling is level:
  ``floor + share * (ceiling - floor)``, both taken at the wall's middle;
- part of the way from head to ceiling: ``casing + share * (ceiling - crown - casing)``, casing the highest covered one (the
  head where uncased), ceiling the lowest over the rod; for rods before the wall;
- middle of an opening: ``(left + right) / 2``;
- reach on a side: from the covered opening's edge to the end of the rod without its finial; both are *equal* where they
  differ by no more than half a graduation.

Shares are a third, a half and two thirds. A line is *held* by a rod that stands on it within half a graduation: what reads
alike is called alike, as everywhere (``units.tolerance``).
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from msgspec import Struct

from elevation.findings.naming import obstacle_name, opening_name
from elevation.findings.shapes import extremes
from elevation.room.model import Ref
from elevation.setting_out.model import OpeningOut, SetOut, Span, TreatmentOut
from elevation.setting_out.mounting import INSIDE
from elevation.setting_out.profile import height_at
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Message, msg

Kind = Literal["wall", "gap", "middle", "level", "edge"]
SHARES: tuple[tuple[float, str], ...] = ((1 / 3, "1/3"), (1 / 2, "1/2"), (2 / 3, "2/3"))
_STANDING = frozenset({"picture", "shelf", "furniture", "hot-water-radiator", "electric-heater", "light"})
"""What the eye takes a line from."""


class Guide(Struct, frozen=True, gc=False):
    """One line.

    Attributes
    ----------
    kind : str
        ``wall`` (part of the wall), ``gap`` (part of head to ceiling), ``middle`` (of an opening), ``level`` and ``edge``
        (of what stands there: drawn only where something is aligned with it).
    axis : str
        ``x``: an upright line at that x; ``y``: a level one.
    at_mm : float
    run : Span
        From where to where it goes, along the other axis.
    mark : str
        What stands beside it ("1/3"); empty for none.
    reason : Message
        What it is, for a handle that sticks to it.
    about : Ref
        The treatment or opening that it belongs to; the wall's own are about the wall.
    """

    kind: Kind
    axis: Literal["x", "y"]
    at_mm: float
    run: Span
    mark: str
    reason: Message
    about: Ref


class Reach(Struct, frozen=True, gc=False):
    """How far a rod reaches past its openings on either side: the two stretches, at the rod's height, and whether alike."""

    about: Ref
    y_mm: float
    left: Span
    right: Span
    is_equal: bool


_WIDTHS = (msg("a third of the wall's width"), msg("the middle of the wall"), msg("two thirds of the wall's width"))
_HEIGHTS = (msg("a third of the wall's height"), msg("half of the wall's height"), msg("two thirds of the wall's height"))
_GAPS = (
    msg("a third up from head to ceiling"),
    msg("half way from head to ceiling"),
    msg("two thirds up from head to ceiling"),
)


def guides_of(set_out: SetOut) -> tuple[Guide, ...]:
    """Every line of a wall: the wall's own, those of each treatment, then openings and what stands there.

    Parameters
    ----------
    set_out : SetOut

    Returns
    -------
    tuple of Guide
    """
    found = [*_of_width(set_out), *_of_height(set_out)]
    for treatment in set_out.treatments:
        found += _of_gap(set_out, treatment)
    for opening in set_out.openings:
        found += _of_opening(set_out, opening)
    for obstacle in set_out.obstacles:
        if obstacle.kind not in _STANDING:
            continue
        across, up = (obstacle.left_mm, obstacle.right_mm), (obstacle.bottom_mm, obstacle.top_mm)
        name = obstacle_name(obstacle)
        level = msg("level with the top of {thing}", thing=name)
        beside = msg("in line with the side of {thing}", thing=name)
        found.append(Guide("level", "y", obstacle.top_mm, across, "", level, obstacle.ref))
        found += [Guide("edge", "x", x, up, "", beside, obstacle.ref) for x in across]
    return tuple(found)


def _of_width(set_out: SetOut) -> list[Guide]:
    if not set_out.known_width:
        return []
    run = _upright(set_out, set_out.width_mm / 2)
    return [
        Guide("wall", "x", set_out.width_mm * share, run, mark, reason, (set_out.wall,))
        for (share, mark), reason in zip(SHARES, _WIDTHS, strict=True)
    ]


def _of_height(set_out: SetOut) -> list[Guide]:
    low, high = _upright(set_out, set_out.width_mm / 2)
    heights = [y for _, y in set_out.ceiling.points]
    if not set_out.ceiling.known or max(heights) - min(heights) > TOUCH_MM:
        # Under a raked ceiling no height is the wall's.
        return []
    return [
        Guide("wall", "y", low + (high - low) * share, (0.0, set_out.width_mm), mark, reason, (set_out.wall,))
        for (share, mark), reason in zip(SHARES, _HEIGHTS, strict=True)
    ]


def gap_of(set_out: SetOut, treatment: TreatmentOut) -> Span | None:
    """From the casing's top (the head where uncased) to ceiling or crown, least over the rod; None where there is none."""
    if treatment.mount in INSIDE or not treatment.openings or not treatment.layers or not set_out.ceiling.known:
        return None
    support = treatment.layers[0].support
    low = max(opening.casing_top_mm for opening in treatment.openings)
    high = extremes(set_out.ceiling, support.left_mm, support.right_mm)[0] - set_out.crown_mm
    return (low, high) if high > low + TOUCH_MM else None


def _of_gap(set_out: SetOut, treatment: TreatmentOut) -> list[Guide]:
    gap = gap_of(set_out, treatment)
    if gap is None:
        return []
    support = treatment.layers[0].support
    run = (support.metal_left_mm, support.metal_right_mm)
    return [
        Guide("gap", "y", gap[0] + (gap[1] - gap[0]) * share, run, mark, reason, treatment.ref)
        for (share, mark), reason in zip(SHARES, _GAPS, strict=True)
    ]


def _of_opening(set_out: SetOut, opening: OpeningOut) -> list[Guide]:
    middle = (opening.left_mm + opening.right_mm) / 2
    across = (opening.left_mm - opening.casing_mm, opening.right_mm + opening.casing_mm)
    name = opening_name(opening)
    found = [
        Guide(
            "middle",
            "x",
            middle,
            _upright(set_out, middle),
            "",
            msg("over the middle of {opening}", opening=name),
            opening.ref,
        ),
        Guide("level", "y", opening.top_mm, across, "", msg("level with the head of {opening}", opening=name), opening.ref),
    ]
    if opening.casing_top_mm > opening.top_mm + TOUCH_MM:
        reason = msg("level with the casing of {opening}", opening=name)
        found.append(Guide("level", "y", opening.casing_top_mm, across, "", reason, opening.ref))
    return found


def _upright(set_out: SetOut, x_mm: float) -> Span:
    return height_at(set_out.floor, x_mm), height_at(set_out.ceiling, x_mm)


def reaches_of(set_out: SetOut, half_graduation_mm: float) -> tuple[Reach, ...]:
    """For each treatment before the wall, how far its front rod reaches past its openings on either side."""
    found = []
    for treatment in set_out.treatments:
        if treatment.mount in INSIDE or not treatment.openings or not treatment.layers:
            continue
        support = treatment.layers[0].support
        left = (support.left_mm, treatment.openings[0].left_mm)
        right = (treatment.openings[-1].right_mm, support.right_mm)
        differ = abs((left[1] - left[0]) - (right[1] - right[0]))
        is_equal = differ <= half_graduation_mm + TOUCH_MM
        found.append(Reach(treatment.ref, support.height_mm, left, right, is_equal))
    return tuple(found)


def held_by(guide: Guide, treatments: Sequence[TreatmentOut], half_graduation_mm: float) -> tuple[TreatmentOut, ...]:
    """The treatments whose front rod stands on a line: its centre on a level one, an end or its middle on an upright."""
    reach = half_graduation_mm + TOUCH_MM
    found = []
    for treatment in treatments:
        if not treatment.layers or (guide.kind == "gap" and guide.about != treatment.ref):
            continue
        support = treatment.layers[0].support
        if guide.axis == "y":
            places: tuple[float, ...] = (support.height_mm,)
        elif guide.kind == "middle" or guide.mark == "1/2":
            places = ((support.left_mm + support.right_mm) / 2,)
        else:
            places = (support.left_mm, support.right_mm)
        if any(abs(place - guide.at_mm) <= reach for place in places):
            found.append(treatment)
    return tuple(found)
