"""What hangs, seen from above: the rod's axis with its mitres, brackets as far as they stand out, folds of real depth."""

from __future__ import annotations

from math import cos, radians, sin

from elevation.setting_out.model import BracketOut, LayerOut, PanelOut, Point, Span, SupportOut, TreatmentOut
from elevation.sheet import inks
from elevation.sheet.paths import circle, polygon, rectangle
from elevation.sheet.plan_folds import drawn_depth, fold_line
from elevation.sheet.plan_frame import Frame
from elevation.sheet.records import NARROW, Fill, Ink, Line, Path, Pen, Polyline, Record, Text
from elevation.sheet.type_metrics import text_width
from elevation.trade.mitres import mitre
from elevation.words import Mm, Style, msg, say

FIGURE = 2.5
"""Type size of the projection's figure, paper mm."""

_AXIS = Pen(Ink.THIN, 0.18, (4.0, 0.8, 0.6, 0.8))
_METAL = Pen(Ink.METAL, NARROW)
_THIN = Pen(Ink.THIN, 0.18)
_LEAST_FOLD_MM = 14.0
"""Flat cloth is drawn so deep: flatter, it would vanish under the rod."""

_FREE_MM = 6.0
"""Between the folds and the wall's face, as drawn."""

_STROKE_MM = 0.9
_BEND_STEPS = 8


def treatment_records(
    treatment: TreatmentOut,
    angles: Span,
    frame: Frame,
    style: Style,
    mm_per_paper: float,
    position: str,
    *,
    has_figure: bool = True,
) -> tuple[Record, ...]:
    """Every layer of a treatment, the one nearest the wall first, and how far the front rod stands out.

    Parameters
    ----------
    treatment : TreatmentOut
    angles : (float, float)
        Inside angles at the wall's ends.
    frame : Frame
    style : Style
    mm_per_paper : float
    position : str
        ``open``, ``closed``, ``drawn`` or ``none``.
    has_figure : bool
        With how far the front rod stands out.
    """
    records: list[Record] = []
    for layer in reversed(treatment.layers):
        records += _layer(treatment, layer, angles, frame, position)
    if treatment.layers and has_figure:
        records += _projection(treatment, treatment.layers[0], frame, style, mm_per_paper, position)
    return tuple(records)


def _layer(treatment: TreatmentOut, layer: LayerOut, angles: Span, frame: Frame, position: str) -> list[Record]:
    records: list[Record] = []
    if layer.board is not None:
        board = layer.board
        outline = frame.all(
            (
                (board.left_mm, 0.0),
                (board.right_mm, 0.0),
                (board.right_mm, board.thick_mm),
                (board.left_mm, board.thick_mm),
            )
        )
        records += [Fill(polygon(outline), inks.WOOD), Polyline(outline, _THIN, True)]
    for bracket in layer.brackets:
        records += _bracket(bracket, layer.support, frame)
    if position != "none":
        for panel in (*layer.panels, *layer.guests):
            records += _panel(panel, layer, frame, position)
    records += _rod(treatment, layer.support, angles, frame)
    return records


def _mitred(treatment: TreatmentOut, support: SupportOut, angles: Span, side: int, out: float) -> float:
    """Where an edge of the rod that lies ``out`` from the wall ends: cut along the mitre where the rod goes on."""
    end = (support.left_mm, support.right_mm)[side]
    if treatment.joined[side] is None:
        return end
    by = mitre(out, angles[side]) - mitre(support.projection_mm, angles[side])
    return end + by if side == 0 else end - by


def _end(treatment: TreatmentOut, support: SupportOut, angles: Span, side: int, out: float) -> list[Point]:
    """An edge of the rod at one end, outward: to the mitre, or half way round the bend where it is bent."""
    tangent = support.tangents_mm[side]
    if not tangent or support.bend_mm is None or treatment.joined[side] is None:
        return [(_mitred(treatment, support, angles, side, out), out)]
    way = -1.0 if side == 0 else 1.0
    start = (support.left_mm, support.right_mm)[side] - way * tangent
    # An inside corner turns into the room, an outside one away from it.
    turn = 1.0 if angles[side] < 180.0 else -1.0
    centre, radius = support.projection_mm + turn * support.bend_mm, support.bend_mm - turn * (out - support.projection_mm)
    half = radians(abs(180.0 - angles[side])) / 2
    steps = (half * step / _BEND_STEPS for step in range(_BEND_STEPS + 1))
    return [(start + way * radius * sin(at), centre - turn * radius * cos(at)) for at in steps]


def _rod(treatment: TreatmentOut, support: SupportOut, angles: Span, frame: Frame) -> list[Record]:
    radius, out = support.diameter_mm / 2, support.projection_mm
    edges: list[Point] = []
    for z in (out - radius, out + radius):
        line = [*reversed(_end(treatment, support, angles, 0, z)), *_end(treatment, support, angles, 1, z)]
        edges += line if z < out else reversed(line)
    outline = frame.all(edges)
    light, middle, _, _ = inks.ROD_TONES.get(support.material, inks.ROD_TONES["steel"])
    records: list[Record] = [Fill(polygon(outline), inks.blend(light, middle, 0.5)), Polyline(outline, _METAL, True)]
    thick = max(support.finial_diameter_mm / 2, radius)
    for inner, outer, ends_with in (
        (support.left_mm, support.metal_left_mm, support.left_ends),
        (support.right_mm, support.metal_right_mm, support.right_ends),
    ):
        if abs(outer - inner) < 1.0:
            continue
        if ends_with == "ball-finial":
            ball = circle(*frame.at((inner + outer) / 2, out), abs(outer - inner) / 2)
            records += [Fill(ball, middle), Path(ball, _METAL)]
            continue
        back = 0.0 if ends_with in ("return", "elbow") else out - thick
        end = frame.all(((inner, back), (outer, back), (outer, out + thick), (inner, out + thick)))
        records += [Fill(polygon(end), middle), Polyline(end, _METAL, True)]
    over = 22.0
    left = support.left_mm - (0.0 if treatment.joined[0] else over)
    right = support.right_mm + (0.0 if treatment.joined[1] else over)
    records.append(Line(frame.at(left, out), frame.at(right, out), _AXIS))
    return records


def _bracket(bracket: BracketOut, support: SupportOut, frame: Frame) -> list[Record]:
    """The plate on the wall and the arm out to the rod."""
    radius, out = support.diameter_mm / 2, support.projection_mm
    half = max(bracket.half_width_mm, 4.0)
    plate = max((bracket.plate[2] - bracket.plate[0]) / 2, half)
    back = 0.0 if support.from_sash_mm is None else out - support.from_sash_mm
    arm = frame.all(
        (
            (bracket.x_mm - half, back),
            (bracket.x_mm + half, back),
            (bracket.x_mm + half, out + radius),
            (bracket.x_mm - half, out + radius),
        )
    )
    foot = frame.all(
        (
            (bracket.x_mm - plate, back),
            (bracket.x_mm + plate, back),
            (bracket.x_mm + plate, back + 4.0),
            (bracket.x_mm - plate, back + 4.0),
        )
    )
    records: list[Record] = [Fill(polygon(arm), inks.METAL_MIDDLE), Polyline(arm, _THIN, True)]
    if bracket.on in ("wall", "sash"):
        records += [Fill(polygon(foot), inks.METAL_DARK)]
    return records


def _cover(panel: PanelOut, position: str) -> Span:
    return {"open": panel.open, "closed": panel.closed}.get(position, panel.drawn)


def _panel(panel: PanelOut, layer: LayerOut, frame: Frame, position: str) -> list[Record]:
    """The line of the folds: as many as there are, as long as the cloth is wide flat."""
    left, right = _cover(panel, position)
    wide = right - left
    if wide <= 0 or panel.fold_count < 1:
        return []
    out = layer.support.projection_mm
    count, flat = panel.folds_over(position), panel.flat_over(position)
    most = 2 * max(abs(out) - _FREE_MM, _LEAST_FOLD_MM / 2)
    depth = drawn_depth(flat, wide, count, _LEAST_FOLD_MM, most)
    steps, deep = fold_line((left, right), flat, count, out, depth, frame), depth / 2
    edge = inks.blend(layer.colour, Ink.OUTLINE, 0.35)
    band = frame.all(((left, out - deep), (right, out - deep), (right, out + deep), (left, out + deep)))
    return [Fill(polygon(band), inks.with_alpha(layer.colour, 0.16)), Path(steps, Pen(edge, 0.35))]


def _projection(
    treatment: TreatmentOut, layer: LayerOut, frame: Frame, style: Style, mm_per_paper: float, position: str
) -> list[Record]:
    """From the wall's face to the rod's axis, where no cloth is drawn; the figure stands beside it."""
    support = layer.support
    if support.projection_mm <= 0:
        return []
    x = figure_x(treatment, layer, position)
    a, b = frame.at(x, 0.0), frame.at(x, support.projection_mm)
    tick = _STROKE_MM * mm_per_paper
    text = say(msg("{figure}", figure=Mm(support.projection_mm)), style)
    middle = (a[1] + b[1]) / 2 - FIGURE * 0.36 * mm_per_paper
    left, pad = x + 1.6 * mm_per_paper, 0.4 * mm_per_paper
    wide, high = text_width(text, FIGURE) * mm_per_paper, FIGURE * 0.72 * mm_per_paper
    if support.projection_mm < high + 2 * pad:
        # No room between wall and rod at this scale: the figure stands before the rod.
        left, middle = x - wide / 2, b[1] - tick - 2 * pad - high
    return [
        # Clear paper under the figure: a radiator or a stool often stands there.
        Fill(rectangle(left - pad, middle - pad, left + wide + pad, middle + high + pad), Ink.PAPER),
        Line(a, b, _THIN),
        *(Line((x - tick, y - tick), (x + tick, y + tick), Pen(Ink.THIN, NARROW)) for _, y in (a, b)),
        Text((left, middle), text, FIGURE),
    ]


def figure_x(treatment: TreatmentOut, layer: LayerOut, position: str) -> float:
    """Where along the wall the projection is measured: the middle of the widest stretch of rod without cloth or bracket."""
    support = layer.support
    spans: list[Span] = [(bracket.x_mm - 12.0, bracket.x_mm + 12.0) for bracket in layer.brackets]
    if position != "none":
        spans += [_cover(panel, position) for panel in layer.panels]
    spans += [(opening.left_mm - 1.0, opening.left_mm + 1.0) for opening in treatment.openings]
    edges = [support.left_mm]
    for left, right in sorted(spans):
        edges += [left, max(right, edges[-1])]
    edges.append(support.right_mm)
    gaps = [(b - a, a, b) for a, b in zip(edges[::2], edges[1::2], strict=True)]
    wide, a, b = max(gaps)
    return (a + b) / 2 if wide > 0 else (support.left_mm + support.right_mm) / 2
