"""The rod: from what is held to where it lands, where it is cut, joined and ended."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import NamedTuple

from elevation.room.corners import AROUND
from elevation.room.model import Held, Rod
from elevation.setting_out.facts import Overhead
from elevation.setting_out.model import OpeningOut, SupportOut
from elevation.setting_out.mounting import depths_of
from elevation.setting_out.profile import lowest_over
from elevation.setting_out.tilt import axis_of, corners_of, highest, lowest, run_of, slope_of
from elevation.trade.counting import pieces_of
from elevation.trade.mitres import JOINT
from elevation.trade.mitres import bend as bend_of
from elevation.trade.mitres import mitre as mitre_of
from elevation.trade.model import EndRow, Trade
from elevation.trade.tables import row_of


def ends_of(
    rod: Rod, openings: Sequence[OpeningOut], width_mm: float, angles: tuple[float, float] = (90.0, 90.0)
) -> tuple[float, float]:
    """Left and right end of the rod without finial, in mm along the wall.

    An end that goes round a corner stands where its axis meets that of a rod at the same projection on the neighbour wall.
    An end that holds the rod's length stands that length from the other end; if both do, the left one is held
    so that the rod stands in the middle of its openings. A rod that would have less than no length has none.
    """
    left = _end(rod.left, openings[0], width_mm, is_left=True)
    right = _end(rod.right, openings[-1], width_mm, is_left=False)
    if rod.left.hold == AROUND:
        left = mitre_of(rod.projection.mm, angles[0]) + rod.left.at.mm
    if rod.right.hold == AROUND:
        right = width_mm - mitre_of(rod.projection.mm, angles[1]) - rod.right.at.mm
    if left is None and right is None:
        middle = (openings[0].left_mm + openings[-1].right_mm) / 2
        left = middle - rod.left.at.mm / 2
        right = middle + rod.left.at.mm / 2
    elif left is None and right is not None:
        left = right - rod.left.at.mm
    elif right is None and left is not None:
        right = left + rod.right.at.mm
    a, b = left or 0.0, right or 0.0
    return (a, b) if a <= b else ((a + b) / 2, (a + b) / 2)


def _end(held: Held, opening: OpeningOut, width_mm: float, *, is_left: bool) -> float | None:
    at = held.at.mm
    if held.hold == "rod-length":
        return None
    if held.hold == "inside-opening":
        return opening.left_mm + at if is_left else opening.right_mm - at
    if is_left:
        if held.hold == "from-corner":
            return at
        return opening.left_mm - at - (opening.casing_mm if held.hold == "beyond-casing" else 0.0)
    if held.hold == "from-corner":
        return width_mm - at
    return opening.right_mm + at + (opening.casing_mm if held.hold == "beyond-casing" else 0.0)


def height_of(
    held: Held,
    openings: Sequence[OpeningOut],
    facts: Overhead,
    left_mm: float,
    right_mm: float,
    mount: str = "wall",
    drop_mm: float = 0.0,
    slope: float = 0.0,
) -> float:
    """Height of the rod's centre line over the datum, in its middle.

    Above the highest covered head or casing, or below it; below ceiling or crown where that is lowest along the rod (the
    bare ceiling for a rod that is fixed to it); ``drop_mm`` below it and lower where its brackets hold it; over the sill or
    a share of the opening; or over the datum. A rod out of level by ``slope`` (rise to the right over length) keeps what it
    holds over the head and below the ceiling as the least along it.
    """
    at = held.at.mm
    if slope:
        leaning = _leaning_height(held, openings, facts, (left_mm, right_mm), mount, drop_mm, slope)
        if leaning is not None:
            return leaning
    if held.hold == "bracket-drop":
        return lowest_over(facts.ceiling, left_mm, right_mm) - drop_mm - at
    if held.hold == "below-head":
        return max(opening.top_mm for opening in openings) - at
    if held.hold in ("above-sill", "share-of-opening"):
        bottom = min(opening.bottom_mm for opening in openings)
        return bottom + held.share * (max(opening.top_mm for opening in openings) - bottom) + at
    if held.hold == "above-head":
        return max(opening.top_mm for opening in openings) + at
    if held.hold == "above-casing":
        return max(opening.casing_top_mm for opening in openings) + at
    if held.hold == "below-ceiling":
        crown_mm = 0.0 if mount == "ceiling" else facts.crown_mm
        return lowest_over(facts.ceiling, left_mm, right_mm) - crown_mm - at
    return at


def _leaning_height(
    held: Held,
    openings: Sequence[OpeningOut],
    facts: Overhead,
    span: tuple[float, float],
    mount: str,
    drop_mm: float,
    slope: float,
) -> float | None:
    """Middle of a rod that leans, from lines over or under it; None where its middle is what is held."""
    at, middle = held.at.mm, (span[0] + span[1]) / 2
    if held.hold in ("above-head", "above-casing", "below-head"):
        top = highest(corners_of(openings, with_casing=held.hold == "above-casing"), slope, middle)
        return top - at if held.hold == "below-head" else top + at
    if held.hold == "bracket-drop":
        return lowest(facts.ceiling, span, slope) - drop_mm - at
    if held.hold == "below-ceiling":
        return lowest(facts.ceiling, span, slope) - (0.0 if mount == "ceiling" else facts.crown_mm) - at
    return None


def support_of(
    rod: Rod,
    openings: Sequence[OpeningOut],
    facts: Overhead,
    trade: Trade,
    bracket_xs: Sequence[float],
    span: tuple[float, float],
    mount: str = "wall",
    drop_mm: float = 0.0,
) -> SupportOut:
    """The rod set out.

    Parameters
    ----------
    rod : Rod
    openings : sequence of OpeningOut
        Those it covers, left to right; at least one.
    facts : Overhead
    trade : Trade
    bracket_xs : sequence of float
        Bracket centres, rising.
    span : tuple of float
        Its ends, from ``ends_of``.
    mount : str
        What the treatment is fixed to.
    drop_mm : float
        How far below the ceiling its brackets hold the rod's axis, where they are fixed to it.
    """
    left, right = span
    section = row_of(trade.sections, rod.section, "section")
    material = row_of(trade.materials, rod.material or section.material, "material")
    diameter = rod.diameter.mm if rod.diameter else section.outer_mm
    first, last = (row_of(trade.ends, own or rod.ends, "end") for own in (rod.left_ends, rod.right_ends))
    is_cut = rod.kind != "tension-rod"
    first = JOINT if rod.left.hold == AROUND else first
    last = JOINT if rod.right.hold == AROUND else last
    cut_left, cut_right = left - first.extra_tube_mm, right + last.extra_tube_mm
    if not is_cut:
        # It is pulled out to the length it has: nothing is cut, joined or put on its ends.
        cut_left, cut_right = left, right
        first = last = EndRow("pads", "", 0.0, 0.0, 0.0, "none", "", "published")
    stock = rod.stock.mm if rod.stock else section.stock_mm
    slope = slope_of(rod.tilt, openings, facts.ceiling, span)
    joints, free = joints_of(cut_left, cut_right, stock / run_of(slope), bracket_xs) if is_cut else ((), ())
    bends = tuple(
        None if rod.bend is None or held.hold != AROUND else bend_of(rod.bend.mm, angle)
        for held, angle in zip((rod.left, rod.right), facts.angles, strict=True)
    )
    # Bent in one piece it takes a shorter way round a corner; each leg counts half of the arc.
    saved = sum(tangent - arc / 2 for tangent, arc in filter(None, bends))
    projection, from_sash = depths_of(rod, mount, openings)
    height = height_of(rod.height, openings, facts, left, right, mount, drop_mm, slope)
    return SupportOut(
        kind=rod.kind,
        left_mm=left,
        right_mm=right,
        height_mm=height,
        length_mm=right - left,
        cut_left_mm=cut_left,
        cut_right_mm=cut_right,
        cut_length_mm=(cut_right - cut_left) * run_of(slope)
        + bent_mm(first, projection)
        + bent_mm(last, projection)
        - saved,
        metal_left_mm=min(cut_left, left - _beyond(first, diameter)),
        metal_right_mm=max(cut_right, right + _beyond(last, diameter)),
        diameter_mm=diameter,
        projection_mm=projection,
        ends=rod.ends,
        finial_mm=max(first.length_mm, last.length_mm),
        finial_diameter_mm=max(first.diameter_mm, last.diameter_mm),
        splices_mm=joints,
        splice_free=free,
        pieces=len(joints) + 1,
        material=material.looks,
        from_sash_mm=from_sash,
        left_ends=first.id,
        right_ends=last.id,
        carried=(first.carries, last.carries),
        drop_mm=drop_mm,
        overlap_mm=rod.overlap.mm if rod.overlap else 0.0,
        least_mm=rod.packet.least.mm if rod.packet.least else None,
        most_mm=rod.packet.most.mm if rod.packet.most else None,
        holds_kg=rod.packet.holds_kg,
        spacing_mm=rod.packet.spacing.mm if rod.packet.spacing else None,
        line=axis_of(height, slope, span) if slope else None,
        tilt=slope,
        bend_mm=rod.bend.mm if rod.bend and any(bends) else None,
        tangents_mm=(bends[0][0] if bends[0] else 0.0, bends[1][0] if bends[1] else 0.0),
        stack_mm=rod.packet.stack.mm if rod.packet.stack else None,
        arm_mm=rod.packet.arm.mm if rod.packet.arm else None,
        least_bend_mm=rod.packet.least_bend.mm if rod.packet.least_bend else None,
    )


def _beyond(end: EndRow, diameter_mm: float) -> float:
    """How far metal stands beyond a rod's end: half the tube where that end is the middle line of a leg to the wall."""
    return max(end.diameter_mm, diameter_mm) / 2 if end.shape == "return" else end.length_mm


def bent_mm(end: EndRow, projection_mm: float) -> float:
    """Tube that an end bent back to the wall needs beyond the rod's end: arc and leg, less the corner that the arc cuts."""
    if end.shape != "return":
        return 0.0
    bend = min(end.bend_mm, max(projection_mm, 0.0))
    return max(projection_mm, 0.0) - 2 * bend + math.pi / 2 * bend


def joints_of(
    left_mm: float, right_mm: float, stock_mm: float, bracket_xs: Sequence[float]
) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """Joints of a rod longer than its stock: the fewest pieces, joined over bracket centres where that can be.

    Returns
    -------
    joints, free : tuples of float
        All joints, and those of them that no bracket carries.
    """
    count = pieces_of(right_mm - left_mm, stock_mm)
    if count == 1:
        return (), ()
    even = (right_mm - left_mm) / count
    ways: dict[float, _Way] = {left_mm: _Way(0, 0, 0.0, (), ())}
    for x in (*(x for x in bracket_xs if left_mm < x < right_mm), right_mm):
        ways[x] = min(_on(way, start, x, stock_mm, even) for start, way in ways.items() if start < x)
    best = ways[right_mm]
    return best.joints, best.free


class _Way(NamedTuple):
    """One way to join the rod from its left end up to a bracket; the least, field by field, is the best."""

    pieces: int
    missed: int
    uneven: float
    joints: tuple[float, ...]
    free: tuple[float, ...]


def _on(way: _Way, start: float, x: float, stock: float, even: float) -> _Way:
    """The way on to the next joint that a bracket carries, or to the end: joints in the open between stand evenly."""
    count = pieces_of(x - start, stock)
    free = tuple(start + (x - start) * number / count for number in range(1, count))
    joint = (start,) if way.pieces else ()
    uneven = way.uneven + abs(x - start - even * count)
    return _Way(way.pieces + count, way.missed + len(free), uneven, way.joints + joint + free, way.free + free)
