"""What hangs, in section: mounting board, bracket with plate and arm, rod, rings, cloth with fold depth and hem."""

from __future__ import annotations

import math
from collections.abc import Sequence

from elevation.setting_out.model import BracketOut, SupportOut
from elevation.setting_out.mounting import PLATE_MM
from elevation.sheet import inks
from elevation.sheet.draw_heading import heading_kind
from elevation.sheet.paths import Step, arc, circle, polygon, rectangle, rounded, segment
from elevation.sheet.records import NARROW, Fill, Gradient, Ink, Line, Path, Pen, Record, Stop
from elevation.sheet.section_cut import Cut, Hanging
from elevation.sheet.section_wall import timber
from elevation.trade.model import BracketRow, HeadingRow, Trade

_NARROW = Pen(Ink.OUTLINE, NARROW)
_METAL = Pen(inks.METAL_DARK, NARROW)
_FINE = Pen(inks.METAL_DARK, 0.13)
_CENTRE = Pen(Ink.THIN, 0.18, (3.0, 0.7, 0.5, 0.7))
_ARM_MM = 6.0
"""Half the height of an arm as drawn."""
_RING_WIRE_MM = 2.5
_SCREW_MM = 32.0
_ON_ROD = frozenset({"pocket", "tabs", "back-tabs", "eyelets"})
"""Headings that the rod goes through; others hang from rings or glides."""
_HEM_MM = 60.0
_GATHER_MM = 110.0
"""Below its top the cloth comes to its full fold depth over this."""


def board_records(hanging: Hanging) -> list[Record]:
    """The mounting board behind the bracket, cut across."""
    board = hanging.layer.board
    if board is None:
        return []
    return timber((0.0, board.bottom_mm, board.thick_mm, board.top_mm))


def bracket_of(cut: Cut, hanging: Hanging) -> BracketOut | None:
    """The bracket nearest to the cut."""
    return min(hanging.layer.brackets, key=lambda bracket: abs(bracket.x_mm - cut.station_mm), default=None)


def bracket_records(cut: Cut, hanging: Hanging, trade: Trade) -> list[Record]:
    """The bracket nearest to the cut, seen from the side; what carries a rod without one between jambs."""
    support, bracket = hanging.layer.support, bracket_of(cut, hanging)
    z, y, radius = support.projection_mm, support.height_mm, support.diameter_mm / 2
    mount = cut.treatment.mount if cut.treatment is not None else "wall"
    if mount == "reveal" or support.kind == "tension-rod":
        # Seen along the rod: what holds it on the jamb beyond.
        disc = circle(z, y, radius * 1.7)
        return [Fill(disc, inks.METAL_LIGHT), Path(disc, _FINE)]
    records = _returned(hanging)
    if bracket is None:
        return records
    if bracket.on == "ceiling":
        records.extend(_from_ceiling(cut, bracket, support, trade))
    elif bracket.on == "layer":
        records.extend(_from_layer(cut, hanging, trade))
    else:
        foot = cut.sash_mm if mount == "sash" else (0.0 if hanging.layer.board is None else hanging.layer.board.thick_mm)
        records.extend(_from_wall(bracket, support, foot, trade.brackets.get(bracket.kit)))
    return records


def _from_wall(bracket: BracketOut, support: SupportOut, foot: float, kit: BracketRow | None) -> list[Record]:
    z, y, radius = support.projection_mm, support.height_mm, support.diameter_mm / 2
    low, high = bracket.plate[1], bracket.plate[3]
    plate = rectangle(foot, low, foot + PLATE_MM, high)
    under = y - radius - 2.0
    # The arm leaves the plate's lower half and comes to lie under the rod.
    start = max(min(under - _ARM_MM, (low + y) / 2), low + _ARM_MM)
    arm = polygon(
        (
            (foot + PLATE_MM, start + _ARM_MM),
            (foot + PLATE_MM, start - _ARM_MM),
            (z, under - 2 * _ARM_MM),
            (z + radius * 0.4, under - _ARM_MM),
            (z, under),
        )
    )
    return [
        Fill(arm, inks.METAL_LIGHT),
        Path(arm, _FINE),
        Fill(plate, inks.METAL_MIDDLE),
        Path(plate, _METAL),
        *_screws(foot, y, kit.holes_mm if kit is not None and kit.holes_mm else (0.6 * (high - y), 0.6 * (low - y))),
        *_cradle(bracket, z, y, radius, kit),
    ]


def _screws(foot: float, y: float, holes: Sequence[float]) -> list[Record]:
    """The screws through the plate into what is behind it, where the kit has its holes over and under the rod's axis."""
    return [Line((foot - _SCREW_MM, y + hole), (foot + PLATE_MM, y + hole), _CENTRE) for hole in holes]


def _cradle(bracket: BracketOut, z: float, y: float, radius: float, kit: BracketRow | None) -> list[Record]:
    """What the rod lies in: open above where it can be lifted out, else it goes round the rod."""
    reach = radius + 2.2
    is_open = bracket.rings_pass if kit is None else not kit.holds_down
    if is_open:
        start, end = math.pi * 1.05, math.pi * 1.95
    else:
        start, end = math.pi * 0.5, math.pi * 2.5
    steps: tuple[Step, ...] = (
        ("M", z + reach * math.cos(start), y + reach * math.sin(start)),
        *arc(z, y, reach, start, end),
    )
    return [Path(steps, Pen(inks.METAL_MIDDLE, 0.5))]


def _from_ceiling(cut: Cut, bracket: BracketOut, support: SupportOut, trade: Trade) -> list[Record]:
    z, y, radius = support.projection_mm, support.height_mm, support.diameter_mm / 2
    top = cut.ceiling_mm
    kit = trade.brackets.get(bracket.kit)
    half = (kit.plate_width_mm if kit is not None else 2 * bracket.half_width_mm) / 2
    plate = rectangle(z - half, top - PLATE_MM, z + half, top)
    stem_low = y + radius * 0.6 if support.kind == "track" else y
    stem = rectangle(z - 4.0, stem_low, z + 4.0, top - PLATE_MM)
    records: list[Record] = [
        Fill(stem, inks.METAL_LIGHT),
        Path(stem, _FINE),
        Fill(plate, inks.METAL_MIDDLE),
        Path(plate, _METAL),
    ]
    screws = (z - half * 0.6, z + half * 0.6)
    records.extend(Line((place, top - PLATE_MM), (place, top + _SCREW_MM), _CENTRE) for place in screws)
    if support.kind != "track":
        records.extend(_cradle(bracket, z, y, radius, kit))
    return records


def _from_layer(cut: Cut, hanging: Hanging, trade: Trade) -> list[Record]:
    """The back rod of a double bracket: an arm from the front rod's bracket."""
    front = cut.hangings[0].layer.support
    support = hanging.layer.support
    a, b = (support.projection_mm, support.height_mm), (front.projection_mm, front.height_mm)
    records: list[Record] = [Line(a, b, Pen(inks.METAL_MIDDLE, 0.5))]
    for bracket in hanging.layer.brackets[:1]:
        kit = trade.brackets.get(bracket.kit)
        records.extend(_cradle(bracket, a[0], a[1], support.diameter_mm / 2, kit))
    return records


def _returned(hanging: Hanging) -> list[Record]:
    """A tube that is bent back to the wall, beyond the cut."""
    support = hanging.layer.support
    if not any(support.carried) or support.projection_mm <= 0:
        return []
    z, y, radius = support.projection_mm, support.height_mm, support.diameter_mm / 2
    tube = rectangle(0.0, y - radius, z, y + radius)
    return [Fill(tube, inks.METAL_LIGHT), Path(tube, _FINE)]


def rod_records(hanging: Hanging) -> list[Record]:
    """The rod cut across with its centre lines; a track as its channel."""
    support = hanging.layer.support
    z, y, radius = support.projection_mm, support.height_mm, support.diameter_mm / 2
    light, body, shade, edge = inks.ROD_TONES.get(support.material, inks.ROD_TONES["steel"])
    reach = radius * 1.8 + 8.0
    lines: list[Record] = [Line((z - reach, y), (z + reach, y), _CENTRE), Line((z, y - reach), (z, y + reach), _CENTRE)]
    pen = Pen(edge, NARROW)
    if support.kind == "track":
        body_box = rounded(z - radius, y - radius, z + radius, y + radius, radius * 0.2)
        slot = rectangle(z - radius * 0.25, y - radius, z + radius * 0.25, y - radius * 0.2)
        return [Fill(body_box, body), Path(body_box, pen), Fill(slot, shade), *lines]
    tone = Gradient((z, y - radius), (z, y + radius), (Stop(0.0, shade), Stop(0.6, body), Stop(1.0, light)))
    disc = circle(z, y, radius)
    records: list[Record] = [Fill(disc, tone), Path(disc, pen)]
    if support.material != "wood":
        # A tube: its bore, as thin tubes have it.
        bore = circle(z, y, radius * 0.82)
        records += [Fill(bore, inks.SECTION_BODY), Path(bore, _FINE)]
    return [*records, *lines]


def cloth_records(cut: Cut, hanging: Hanging, row: HeadingRow | None, hem_turned_mm: float = _HEM_MM) -> list[Record]:
    """The cloth: as deep as its folds, gathered at the heading, its hem turned up; what lies on the floor before it."""
    panel, layer = hanging.panel, hanging.layer
    if panel is None or hanging.hem_mm is None:
        return []
    kind = heading_kind(row)
    z, back, front = hanging.centre_mm, hanging.back_mm, hanging.front_mm
    top, hem = panel.top_mm, hanging.hem_mm
    if top - hem < 1.0:
        return []
    gather = min(_GATHER_MM, (top - hem) / 3)
    radius = layer.support.diameter_mm / 2
    neck = min(front - z, max(3.0, radius + 2.0 if kind in _ON_ROD else 5.0))
    outline: list[Step] = [
        ("M", z - neck, top),
        ("C", z - neck, top - gather * 0.5, back, top - gather * 0.5, back, top - gather),
        ("L", back, hem),
    ]
    spare = _on_floor(cut, hanging)
    if spare > 0:
        lift = min(26.0, 6.0 + spare * 0.12)
        outline += [
            ("L", front + spare * 0.8, hem),
            ("C", front + spare * 1.05, hem, front + spare, hem + lift, front + spare * 0.7, hem + lift),
            ("C", front + spare * 0.3, hem + lift, front, hem + lift * 1.2, front, hem + lift * 3.0),
        ]
    else:
        outline.append(("L", front, hem))
    outline += [
        ("L", front, top - gather),
        ("C", front, top - gather * 0.5, z + neck, top - gather * 0.5, z + neck, top),
        ("Z",),
    ]
    steps = tuple(outline)
    base = layer.colour
    pale = inks.blend(base, Ink.PAPER, 0.35 if layer.body != "sheer" else 0.7)
    deep = inks.blend(base, "#2a211c", 0.28 if layer.body != "sheer" else 0.1)
    tone = Gradient((back, 0.0), (front, 0.0), (Stop(0.0, deep), Stop(0.45, base), Stop(0.75, pale), Stop(1.0, base)))
    if not hanging.is_cut:
        tone = Gradient((back, 0.0), (front, 0.0), (Stop(0.0, inks.blend(deep, Ink.PAPER, 0.3)), Stop(1.0, pale)))
    lines: list[Step] = []
    for share in (0.28, 0.55, 0.8):
        at = back + (front - back) * share
        lines.extend(
            (("M", z + (share - 0.5) * 2 * neck * 0.7, top - 2.0), ("L", at, top - gather), ("L", at, hem + hem_turned_mm))
        )
    edge = Pen(inks.blend(base, "#1c1512", 0.55), 0.35 if hanging.is_cut else NARROW)
    fine = Pen(inks.blend(base, "#1c1512", 0.4), 0.13)
    hem_line = segment(back, hem + hem_turned_mm, front, hem + hem_turned_mm)
    return [
        *_rings(hanging, kind, top),
        Fill(steps, tone),
        Path(tuple(lines), fine),
        Path(hem_line, fine),
        Path(steps, edge),
        *_over_rod(hanging, kind, top, edge),
    ]


def _on_floor(cut: Cut, hanging: Hanging) -> float:
    panel, hem = hanging.panel, hanging.hem_mm
    if panel is None or hem is None or hem > cut.floor_mm + 1.0 or panel.finished_length_mm is None:
        return 0.0
    return max(0.0, min(panel.finished_length_mm - (panel.top_mm - hem), 600.0))


def _rings(hanging: Hanging, kind: str, top: float) -> list[Record]:
    """A ring round the rod with its clip, or the glide under a track."""
    support = hanging.layer.support
    z, y, radius = support.projection_mm, support.height_mm, support.diameter_mm / 2
    if kind in _ON_ROD:
        return []
    if support.kind == "track":
        return [Line((z, y - radius * 0.4), (z, min(top, y - radius) - 4.0), Pen(inks.METAL_MIDDLE, 0.5))]
    drop = y - top
    reach = max(radius + 3.0, min(radius * 1.5 + 3.0, (drop + radius) * 0.42))
    middle = y + radius + _RING_WIRE_MM / 2 - reach
    ring = circle(z, middle, reach)
    records: list[Record] = [Path(ring, Pen(inks.METAL_DARK, 0.5))]
    if middle - reach > top:
        records.append(Line((z, middle - reach), (z, top - 6.0), Pen(inks.METAL_DARK, 0.5)))
    return records


def _over_rod(hanging: Hanging, kind: str, top: float, edge: Pen) -> list[Record]:
    """Tabs and pockets go round the rod."""
    support = hanging.layer.support
    z, y, radius = support.projection_mm, support.height_mm, support.diameter_mm / 2
    if kind not in ("pocket", "tabs", "back-tabs") or support.kind == "track":
        return []
    loop = circle(z, y, radius + 3.0)
    records: list[Record] = [Path(loop, edge)]
    if top < y - radius:
        records.append(
            Path((*segment(z - radius - 3.0, y, z - 3.0, top), *segment(z + radius + 3.0, y, z + 3.0, top)), edge)
        )
    return records
