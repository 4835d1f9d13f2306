"""How far a rod stands out: dragged in the section, where it can be seen.

The figure held is the rod's projection: from the wall's face (or the board on it), inside an opening from the sash.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil

from msgspec.structs import replace

from elevation.findings.model import Sticking
from elevation.findings.naming import obstacle_name, opening_name
from elevation.findings.shapes import way
from elevation.handles.context import (
    Context,
    Dressed,
    Family,
    HoldFigure,
    Scale,
    dressed_layers,
    dressed_of,
    make,
    place_of,
)
from elevation.handles.model import Handle
from elevation.handles.ranks import NEIGHBOUR
from elevation.room.edits import replace_rod
from elevation.room.model import Ref, Room
from elevation.room.mounting import INSIDE
from elevation.units import Length
from elevation.words import msg

AXIS = "projection"

MOST_MM = 600.0
"""No bracket holds a rod farther out."""


def scale_of(dressed: Dressed) -> Scale:
    """How the held projection stands on the axis out from the wall's face."""
    return Scale(dressed.landed.support.projection_mm - dressed.layer.rod.projection.mm, 1)


def hold_projection(ref: Ref) -> HoldFigure:
    """Writes the projection of the rod of the layer at ``ref``."""

    def write(room: Room, figure: Length, _alone: bool) -> Room:
        return replace_rod(room, ref, projection=figure)

    return write


def _handles(context: Context) -> Iterable[Handle]:
    for dressed in dressed_layers(context):
        support, scale = dressed.landed.support, scale_of(dressed)
        is_inside = dressed.treatment.mount in INSIDE
        handle = make(
            AXIS,
            dressed.landed.ref,
            (support.projection_mm, support.height_mm),
            "x",
            support.projection_mm,
            (scale.base_mm + support.diameter_mm / 2, scale.base_mm + MOST_MM),
            scale,
            dressed.layer.rod.projection,
            hold_projection(dressed.landed.ref),
            msg("projection, {where}", where=place_of(dressed)),
            msg("from the sash to its centre") if is_inside else msg("from the wall to its centre"),
            low_why=msg("the sash") if is_inside else msg("the wall"),
            high_why=msg("farther out than brackets reach"),
        )
        yield replace(handle, sheet="section")


def _places(handle: Handle, context: Context, _alone: bool) -> Iterable[Sticking]:
    """Where the cloth just clears what stands behind it, and the folds of the layer behind."""
    dressed = dressed_of(context, handle)
    if dressed.treatment.mount in INSIDE or not dressed.landed.panels:
        return
    half_mm = max(panel.fold_depth_mm for panel in dressed.landed.panels) / 2

    def past(out_mm: float) -> float:
        """The first graduation at which folds clear what stands out so far."""
        return _at_mark(context, dressed, out_mm + half_mm)

    hem_mm = min(panel.hem_low_mm for panel in dressed.landed.panels)
    top_mm = max(panel.top_mm for panel in dressed.landed.panels)
    for opening in dressed.landed_treatment.openings:
        if opening.stool is not None and hem_mm < opening.bottom_mm:
            reason = msg("folds just clear the stool of {opening}", opening=opening_name(opening))
            yield Sticking(handle.axis, handle.ref, past(opening.stool[2]), reason, NEIGHBOUR)
    spans = [way(panel) for panel in dressed.landed.panels]
    left_mm, right_mm = min(span[0] for span in spans), max(span[1] for span in spans)
    for obstacle in context.set_out.obstacles:
        is_beside = obstacle.right_mm <= left_mm or obstacle.left_mm >= right_mm
        if is_beside or obstacle.kind == "door-swing" or obstacle.top_mm <= hem_mm or obstacle.bottom_mm >= top_mm:
            continue
        reason = msg("folds just clear {obstacle}", obstacle=obstacle_name(obstacle))
        yield Sticking(handle.axis, handle.ref, past(obstacle.out_mm), reason, NEIGHBOUR)
    yield from _beside_layers(handle, context, dressed, half_mm)


def _at_mark(context: Context, dressed: Dressed, out_mm: float) -> float:
    """A place out from the wall whose figure is the next whole graduation: nearer in, folds would touch."""
    scale, mark_mm = scale_of(dressed), context.room.graduation_mm
    marks = ceil((out_mm - scale.base_mm) / mark_mm - 1e-9)
    return scale.base_mm + marks * mark_mm


def _beside_layers(handle: Handle, context: Context, dressed: Dressed, half_mm: float) -> Iterable[Sticking]:
    for other in dressed_layers(context):
        if other.landed_treatment is not dressed.landed_treatment or other.landed.ref == dressed.landed.ref:
            continue
        depth_mm = max((panel.fold_depth_mm for panel in other.landed.panels), default=0.0)
        apart_mm = half_mm + depth_mm / 2
        centre_mm = other.landed.support.projection_mm
        is_before = dressed.landed.support.projection_mm > centre_mm
        if is_before:
            at_mm = _at_mark(context, dressed, centre_mm + apart_mm)
        else:
            mark_mm = context.room.graduation_mm
            at_mm = _at_mark(context, dressed, centre_mm - apart_mm - mark_mm * (1 - 1e-6))
        yield Sticking(handle.axis, handle.ref, at_mm, msg("folds just clear those of the other layer"), NEIGHBOUR)


FAMILY = Family(frozenset({AXIS}), _handles, _places)
