"""An opening where it stands: head, casing, glass with the frame deducted all round, and what its sash sweeps."""

from __future__ import annotations

import math

from msgspec import Struct

from elevation.room.model import Opening, Ref
from elevation.setting_out import heads
from elevation.setting_out.chain import Spot
from elevation.setting_out.heads import Shape
from elevation.setting_out.model import OpeningOut

Box = tuple[float, float, float, float, float]


class SweepSizes(Struct, frozen=True, gc=False):
    """What is taken for sashes where nothing is measured: the handle's zone in mm, tilt into the room over height."""

    handle_zone_mm: float
    tilt_reach: float


class Placed(Struct, frozen=True, gc=False):
    """An opening set out, and the shape of its glass for exact areas."""

    out: OpeningOut
    glass: Shape


def place(ref: Ref, opening: Opening, spot: Spot, sizes: SweepSizes) -> Placed:
    """Set out one opening at its spot."""
    left, right = spot.left_mm, spot.right_mm
    bottom = opening.sill.mm
    head = opening.head
    first_top = bottom + opening.height.mm
    frame = opening.frame.mm if opening.frame else 0.0
    casing = opening.casing.mm if opening.casing else 0.0
    rise, left_top, right_top, top, glass = 0.0, first_top, first_top, first_top, Shape(0.0, 0.0, 0.0, 0.0, 0.0)
    slope_factor, steepness = 1.0, 0.0
    if head.kind in ("segmental", "half-round"):
        rise = _rise(opening)
        left_top = right_top = first_top - rise
    elif head.kind == "raked" and head.right_height is not None:
        right_top = bottom + head.right_height.mm
        top = max(first_top, right_top)
        slope = (right_top - left_top) / (right - left) if right > left else 0.0
        slope_factor, steepness = math.sqrt(1 + slope * slope), abs(slope)
    glass = _glass(left, right, bottom, left_top, right_top, rise, frame, slope_factor)
    out = OpeningOut(
        ref=ref,
        number=spot.number,
        kind=opening.kind,
        left_mm=left,
        right_mm=right,
        bottom_mm=bottom,
        top_mm=top,
        head=head.kind,
        rise_mm=rise,
        right_top_mm=right_top,
        casing_mm=casing,
        # Under a raked head the casing's outer corner stands higher still, beside the jamb.
        casing_top_mm=top + casing * (slope_factor + steepness),
        frame_mm=frame,
        glass_left_mm=glass.left_mm,
        glass_right_mm=glass.right_mm,
        glass_bottom_mm=glass.bottom_mm,
        glass_top_mm=glass.top_mm,
        glass_area_mm2=heads.area_of(glass),
        glass=heads.outline(glass),
        columns=opening.columns,
        rows=opening.rows,
        sash=opening.sash.kind,
        hinge=opening.sash.hinge,
        handle_out_mm=opening.sash.handle_out.mm if opening.sash.handle_out else 0.0,
        sweep=sweep_of(opening, left, right, bottom, top, sizes),
        stool=None if opening.stool is None else _stool(opening),
        apron_mm=opening.apron.mm if opening.apron else 0.0,
        reveal_mm=opening.reveal.mm if opening.reveal else None,
        escape=opening.escape,
        known_casing=opening.casing is not None,
        placed=spot.placed,
        left_top_mm=left_top,
        handle_stands_mm=opening.sash.handle_stands.mm if opening.sash.handle_stands else None,
        shutter_box_mm=opening.shutter_box.mm if opening.shutter_box else 0.0,
        head_rise_mm=_head_rise(opening),
    )
    return Placed(out, glass)


def _head_rise(opening: Opening) -> float:
    """How much higher a flat head was read at the right than at the left, from one level sill."""
    taken = opening.taken
    if opening.head.kind != "flat" or taken.height_left is None or taken.height_right is None:
        return 0.0
    return taken.height_right.mm - taken.height_left.mm


def _rise(opening: Opening) -> float:
    if opening.head.kind == "half-round":
        return min(opening.width.mm / 2, opening.height.mm)
    rise = opening.head.rise.mm if opening.head.rise else 0.0
    # An arc higher than a half circle would overhang its own jambs.
    return min(rise, opening.width.mm / 2, opening.height.mm)


def _stool(opening: Opening) -> tuple[float, float, float]:
    stool = opening.stool
    return (0.0, 0.0, 0.0) if stool is None else (stool.thickness.mm, stool.horn.mm, stool.projection.mm)


def _glass(
    left: float, right: float, bottom: float, left_top: float, right_top: float, rise: float, frame: float, slope: float
) -> Shape:
    """The frame deducted all round: arcs keep their centre and lose the frame from their radius; slopes move in square."""
    wide = right - left
    if rise > 0:
        radius = (wide * wide / 4 + rise * rise) / (2 * rise)
        centre_y = left_top + rise - radius
        return heads.arched(left + frame, right - frame, bottom + frame, (left + right) / 2, centre_y, radius - frame)
    tilt = (right_top - left_top) / wide if wide > 0 else 0.0
    down = frame * slope
    first, last = left_top - down + tilt * frame, right_top - down - tilt * frame
    return heads.level(left + frame, right - frame, bottom + frame, first, last)


def sweep_of(opening: Opening, left: float, right: float, bottom: float, top: float, sizes: SweepSizes) -> tuple[Box, ...]:
    """Boxes (left, bottom, right, top, out from the wall's face) that a moving sash or leaf needs.

    A leaf that turns in needs its own width before the opening, less the depth it hangs back in the reveal; a sash that
    tilts in, a part of its height. A handle needs what it stands out, over a zone at the closing side. What ends in the
    reveal, behind the wall's face, reaches out a negative way: only what hangs in there can be met.
    """
    sash = opening.sash
    boxes: list[Box] = []
    back = opening.reveal.mm if opening.reveal else 0.0
    if sash.kind in ("casement-in", "swing-in"):
        leaf = (right - left) / (2 if sash.hinge == "both" else 1)
        if leaf > 0:  # pragma: no branch - a room whose opening has no width is refused
            boxes.append((left, bottom, right, top, leaf - back))
    elif sash.kind == "tilt-in":
        boxes.append((left, bottom, right, top, sizes.tilt_reach * (top - bottom) - back))
    handle = _handle_out(opening)
    if handle is not None:
        zone = min(sizes.handle_zone_mm, right - left)
        a, b = _handle_zone(sash.kind, sash.hinge, left, right, zone)
        boxes.append((a, bottom, b, top, handle))
    return tuple(boxes)


def _handle_out(opening: Opening) -> float | None:
    """How far a handle reaches out from the wall's face; None where none was measured."""
    sash = opening.sash
    if sash.handle_out is not None and sash.handle_out.mm > 0:
        return sash.handle_out.mm
    if sash.handle_stands is not None and sash.handle_stands.mm > 0:
        return sash.handle_stands.mm - (opening.reveal.mm if opening.reveal else 0.0)
    return None


def _handle_zone(kind: str, hinge: str, left: float, right: float, zone: float) -> tuple[float, float]:
    if kind in ("double-hung", "tilt-in", "fixed"):
        return left, right
    if hinge == "both":
        middle = (left + right) / 2
        return middle - zone / 2, middle + zone / 2
    return (right - zone, right) if hinge == "left" else (left, left + zone)
