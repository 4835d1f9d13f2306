"""The rod as it sags, drawn so much deeper that it is seen, with its figure and by how much it is exaggerated."""

from __future__ import annotations

from elevation.setting_out.loads import drop_at
from elevation.setting_out.model import LayerOut, SetOut, TreatmentOut
from elevation.sheet.inks import with_alpha
from elevation.sheet.paths import rectangle
from elevation.sheet.records import NARROW, Fill, Group, Ink, Line, Pen, Polyline, Record, Text
from elevation.sheet.type_metrics import text_width
from elevation.words import Message, Mm, Style, msg, say

HEIGHT = 2.9
"""Type size of the figures, paper mm."""

TIMES = (100, 50, 20, 10, 5, 2, 1)
"""What a sag may be drawn deeper by: the most that keeps it within ``MOST_MM``."""

MOST_MM = 160.0
"""How deep the deepest sag of a wall may be drawn, wall mm."""

_PLACES = 49
_PLATE = with_alpha(Ink.PAPER, 0.88)
_LINE = Pen(Ink.ACCENT, 0.4)
_LEVEL = Pen(Ink.ACCENT, 0.18, (1.6, 1.0))


def times_of(set_out: SetOut) -> int:
    """How much deeper than they are the sags of a wall are drawn: one figure for all its rods, so that they compare."""
    deepest = max((_deepest(layer)[1] for treatment in set_out.treatments for layer in treatment.layers), default=0.0)
    return next((times for times in TIMES if deepest * times <= MOST_MM), TIMES[-1])


def sag_groups(set_out: SetOut, style: Style, mm_per_paper: float) -> tuple[Group, ...]:
    """One group for each treatment.

    Parameters
    ----------
    set_out : SetOut
    style : Style
    mm_per_paper : float
        Wall mm for one paper mm.

    Returns
    -------
    tuple of Group
        Layer ``sag``, wall coordinates. Rods whose sag is not known have none.
    """
    times = times_of(set_out)
    return tuple(_group(treatment, times, style, mm_per_paper) for treatment in set_out.treatments)


def _group(treatment: TreatmentOut, times: int, style: Style, scale: float) -> Group:
    records: list[Record] = []
    for layer in treatment.layers:
        if layer.loads is not None and layer.loads.line is not None:
            records += _line(layer, times, style, scale)
    title = say(msg("Sag: {name}", name=treatment.name or treatment.ref[-1]), style)
    return Group(treatment.ref, "sag", title, tuple(records))


def _places(layer: LayerOut) -> list[float]:
    support = layer.support
    step = (support.right_mm - support.left_mm) / (_PLACES - 1)
    return [support.left_mm + step * index for index in range(_PLACES)]


def _deepest(layer: LayerOut) -> tuple[float, float]:
    """Where a rod hangs lowest with its panels as drawn, and by how much (brackets' droop with it)."""
    if layer.loads is None or layer.loads.line is None:
        return layer.support.left_mm, 0.0
    return max(((x, drop_at(layer, x)) for x in _places(layer)), key=lambda pair: pair[1])


def _line(layer: LayerOut, times: int, style: Style, scale: float) -> list[Record]:
    support = layer.support
    y = support.height_mm
    points = tuple((x, y - times * drop_at(layer, x)) for x in _places(layer))
    records: list[Record] = [
        Line((support.left_mm, y), (support.right_mm, y), _LEVEL),
        Polyline(points, _LINE),
    ]
    for bracket in layer.brackets:
        at = y - times * drop_at(layer, bracket.x_mm)
        records.append(Line((bracket.x_mm, y + 1.2 * scale), (bracket.x_mm, at - 1.2 * scale), Pen(Ink.ACCENT, NARROW)))
    x, deep = _deepest(layer)
    text = say(_said(deep, times), style)
    width, height = (text_width(text, HEIGHT) + 1.2) * scale, HEIGHT * 1.15 * scale
    top = y - times * max(deep, 0.0) - 1.0 * scale
    records.append(Fill(rectangle(x - width / 2, top - height, x + width / 2, top), _PLATE))
    records.append(Text((x, top - height + 0.26 * HEIGHT * scale), text, HEIGHT, Ink.ACCENT, "middle"))
    return records


def _said(deep_mm: float, times: int) -> Message:
    return msg("sags {sag}, drawn {times} times as deep", sag=Mm(deep_mm, about=True), times=times)
