"""Leaves seen from above: drawn open, with the arcs of their closing edges, and what hangs on them."""

from __future__ import annotations

from math import cos, pi, sin

from elevation.setting_out.leaves import TURNS_IN, Leaf, leaves, load_on
from elevation.setting_out.model import LayerOut, OpeningOut, Point, TreatmentOut
from elevation.sheet import inks
from elevation.sheet.paths import polygon
from elevation.sheet.plan_frame import SASH_MM, Frame
from elevation.sheet.records import Fill, Ink, Line, Pen, Polyline, Record

SWING = Pen(Ink.THIN, 0.18, (1.4, 0.9))
"""What moves."""

_FINE = Pen(inks.FINE_LINE, 0.18)
_GHOST = Pen(Ink.GHOST, 0.18)
_ARC_STEPS = 24


def swing_records(opening: OpeningOut, frame: Frame, back: float) -> list[Record]:
    """Leaves that turn, drawn open; what tilts in or stands out dashed.

    Parameters
    ----------
    opening : OpeningOut
    frame : Frame
    back : float
        How deep in the reveal the sash is drawn, mm.
    """
    records: list[Record] = []
    turning = leaves(opening)
    is_in = opening.sash in TURNS_IN
    for leaf in turning:
        records += _leaf(leaf, back if is_in else back + SASH_MM, frame, 1.0 if is_in else -1.0)
    for left, _, right, _, out in opening.sweep[1 if turning and is_in else 0 :]:
        if out > 0:
            deep = min(out, frame.depth_mm)
            outline = frame.all(((left, 0.0), (left, deep), (right, deep), (right, 0.0)))
            records.append(Polyline(outline, SWING))
    return records


def _leaf(leaf: Leaf, back: float, frame: Frame, sign: float) -> list[Record]:
    """A leaf that turns into the room (sign 1) or out of it (-1), as far as the strip goes."""
    x, way, radius = leaf.hinge_mm, leaf.way, leaf.wide_mm
    most = frame.depth_mm + back if sign > 0 else frame.thick_mm + frame.outside_mm - back
    arc: list[Point] = []
    for step in range(_ARC_STEPS + 1):
        turn = pi / 2 * step / _ARC_STEPS
        far = radius * sin(turn)
        if far > most:
            break
        arc.append((x + way * radius * cos(turn), sign * far - back))
    tip = sign * min(radius, most) - back
    thick = min(SASH_MM, radius / 4) * way
    outline = frame.all(((x, -back), (x + thick, -back), (x + thick, tip), (x, tip)))
    records: list[Record] = [Fill(polygon(outline), inks.FRAME), Polyline(outline, _FINE, True)]
    if len(arc) > 1:
        records.append(Polyline(frame.all(arc), SWING))
    return records


def carried_records(treatment: TreatmentOut, frame: Frame) -> list[Record]:
    """What hangs on a sash that turns in, as it stands while that is open: rod and cloth beside the leaf, faint."""
    if treatment.mount != "sash" or not treatment.openings or treatment.openings[0].sash not in TURNS_IN:
        return []
    opening = treatment.openings[0]
    records: list[Record] = []
    for layer in treatment.layers:
        for leaf in leaves(opening):
            records += _on(leaf, layer, -(opening.reveal_mm or 0.0), frame)
    return records


def _on(leaf: Leaf, layer: LayerOut, face: float, frame: Frame) -> list[Record]:
    load = load_on(leaf, [layer])
    depth = layer.support.from_sash_mm
    if load is None or depth is None:
        return []
    near = face + load.near_mm
    far = min(face + load.near_mm + layer.support.length_mm, face + leaf.wide_mm, frame.depth_mm)
    if far <= near:
        return []
    inner, outer, axis = (leaf.hinge_mm - leaf.way * q for q in (load.back_mm, load.out_mm, depth))
    outline = frame.all(((inner, near), (outer, near), (outer, far), (inner, far)))
    return [
        Fill(polygon(outline), inks.with_alpha(layer.colour, 0.3)),
        Polyline(outline, _GHOST, True),
        Line(frame.at(axis, near), frame.at(axis, far), _GHOST),
    ]
