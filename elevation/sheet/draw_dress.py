"""A pelmet or valance before the rods, and the blind behind them, as records."""

from __future__ import annotations

from elevation.setting_out.model import BlindOut, PelmetOut, Profile, TreatmentOut
from elevation.sheet import inks
from elevation.sheet.cloth import depth_share, key_of, tones
from elevation.sheet.draw_titles import blind_title, pelmet_title
from elevation.sheet.leaning import lean
from elevation.sheet.paths import Step, circle, rectangle, segment
from elevation.sheet.records import NARROW, Fill, Gradient, Group, Ink, Path, Pen, Record, Stop
from elevation.words import Style

_EDGE = Pen(Ink.OUTLINE, NARROW)
_FINE = Pen(inks.FINE_LINE, 0.13)
_HIDDEN = Pen(inks.FINE_LINE, 0.13, (1.0, 0.7))
_IRON_MM = 75.0
_IRON_WIDE_MM = 18.0
_SHADOW_MM = 22.0
_FOLD_MM = 62.0
_FULL = 2.0
_BLIND = "#f1ead9"
_BLIND_SHADE = "#dcd3bf"
_BAR_MM = 16.0


def pelmet_group(treatment: TreatmentOut, pelmet: PelmetOut, style: Style) -> Group:
    """The pelmet as one group of layer ``pelmet``, wall coordinates in mm."""
    left, bottom, right = pelmet.left_mm, pelmet.bottom_mm, pelmet.right_mm
    # Even: a PDF painter makes a shadow that fades solid.
    shade = inks.SHADE_SOFT
    records: list[Record] = [Fill(rectangle(left, bottom - _SHADOW_MM, right, bottom), shade)]
    records.extend(_board(pelmet) if pelmet.kind == "board" else _valance(treatment, pelmet))
    # Behind its face, under the shelf: hidden edges are dashed.
    for x in pelmet.irons_mm:
        low = max(pelmet.top_mm - _IRON_MM, bottom)
        records.append(Path(rectangle(x - _IRON_WIDE_MM / 2, low, x + _IRON_WIDE_MM / 2, pelmet.top_mm), _HIDDEN))
    if pelmet.tilt:
        line = Profile(tuple((x, pelmet.up_at(x)) for x in (pelmet.left_mm, pelmet.right_mm)))
        records = lean(records, line, 0.0)
    return Group(treatment.ref, "pelmet", pelmet_title(treatment, style), tuple(records))


def _board(pelmet: PelmetOut) -> list[Record]:
    """A stiff face with a moulding along its top and a bead along its lower edge."""
    left, bottom, right, top = pelmet.left_mm, pelmet.bottom_mm, pelmet.right_mm, pelmet.top_mm
    high = top - bottom
    tone = Gradient(
        (0.0, top),
        (0.0, bottom),
        (Stop(0.0, inks.TRIM_SHADE), Stop(0.16, Ink.TRIM), Stop(0.9, Ink.TRIM), Stop(1.0, inks.TRIM_SHADE)),
    )
    lines = (
        *segment(left, top - high * 0.08, right, top - high * 0.08),
        *segment(left, top - high * 0.15, right, top - high * 0.15),
        *segment(left, bottom + high * 0.07, right, bottom + high * 0.07),
    )
    face = rectangle(left, bottom, right, top)
    return [Fill(face, tone), Path(lines, _FINE), Path(face, _EDGE)]


def _valance(treatment: TreatmentOut, pelmet: PelmetOut) -> list[Record]:
    """Gathered cloth of the front layer's own: fronts and hollows of folds, and a softly scalloped edge."""
    layer = treatment.layers[0]
    left, bottom, right, top = pelmet.left_mm, pelmet.bottom_mm, pelmet.right_mm, pelmet.top_mm
    count = max(2, round((right - left) / _FOLD_MM))
    pitch = (right - left) / count
    dip = min(pitch * 0.16, (top - bottom) * 0.1)
    paint = tones(key_of(layer.colour, layer.body, depth_share(_FULL), 0.0))
    outline: list[Step] = [("M", left, top), ("L", right, top), ("L", right, bottom)]
    hollows: list[Step] = []
    lights: list[Step] = []
    valleys: list[Step] = []
    for index in range(count, 0, -1):
        x2, x1 = left + pitch * index, left + pitch * (index - 1)
        outline.append(("C", x2 - pitch * 0.3, bottom - dip, x1 + pitch * 0.3, bottom - dip, x1, bottom))
        hollows.extend(rectangle(x1, bottom, x1 + pitch * 0.2, top))
        lights.extend(rectangle(x1 + pitch * 0.42, bottom - dip * 0.6, x1 + pitch * 0.62, top))
        if index > 1:
            valleys.extend(segment(x1, bottom, x1, top))
    outline.append(("Z",))
    shape = tuple(outline)
    gather = segment(left, top - (top - bottom) * 0.1, right, top - (top - bottom) * 0.1)
    return [
        Fill(shape, paint.base),
        Fill(tuple(hollows), paint.hollow),
        Fill(tuple(lights), paint.crest),
        Path((*valleys, *gather), Pen(paint.line, 0.13)),
        Path(shape, Pen(paint.edge, 0.2)),
    ]


def blind_group(treatment: TreatmentOut, style: Style) -> Group:
    """The blinds of all its openings as one group of layer ``blind``."""
    records = [record for blind in treatment.blinds for record in _blind(blind)]
    return Group(treatment.ref, "blind", blind_title(treatment, style), tuple(records))


def _blind(blind: BlindOut) -> list[Record]:
    """The cloth as far as it is let down, the box, and cord or chain."""
    left, bottom, right, top = blind.left_mm, blind.bottom_mm, blind.right_mm, blind.top_mm
    inset = min(14.0, (right - left) * 0.03)
    records: list[Record] = []
    if blind.hem_mm < bottom:
        stops = (Stop(0.0, _BLIND_SHADE), Stop(0.1, _BLIND), Stop(1.0, _BLIND))
        tone = Gradient((0.0, bottom), (0.0, blind.hem_mm), stops)
        cloth = rectangle(left + inset, blind.hem_mm, right - inset, bottom)
        records += [
            Fill(rectangle(left + inset + 6.0, blind.hem_mm - 6.0, right - inset + 6.0, bottom), inks.SHADE),
            Fill(cloth, tone),
            Path(cloth, _EDGE),
            Path(segment(left + inset, blind.hem_mm + _BAR_MM, right - inset, blind.hem_mm + _BAR_MM), _FINE),
        ]  # fmt: skip
    face = rectangle(left, bottom, right, top)
    tone = Gradient(
        (0.0, top), (0.0, bottom), (Stop(0.0, inks.PLASTIC), Stop(0.35, inks.PLASTIC), Stop(1.0, inks.ENAMEL_SHADE))
    )
    records += [Fill(face, tone), Path(face, _EDGE)]
    if blind.cord_x_mm is not None:
        low = min(blind.hem_mm, bottom - 600.0)
        x = blind.cord_x_mm
        lines: tuple[Step, ...] = segment(x - 5.0, bottom, x - 5.0, low)
        if blind.cord != "cords":
            lines = (
                *lines,
                *segment(x + 5.0, bottom, x + 5.0, low),
                ("M", x - 5.0, low),
                ("C", x - 5.0, low - 9.0, x + 5.0, low - 9.0, x + 5.0, low),
            )
        records.append(Path(lines, Pen(inks.METAL_MIDDLE, NARROW)))
        if blind.cord == "cords":
            knob = circle(x - 5.0, low - 8.0, 8.0)
            records += [Fill(knob, inks.PLASTIC), Path(knob, _FINE)]
        elif blind.cord == "held-loop":
            holder = rectangle(x - 11.0, low - 14.0, x + 11.0, low + 8.0)
            records += [Fill(holder, inks.PLASTIC), Path(holder, _EDGE)]
    return records
