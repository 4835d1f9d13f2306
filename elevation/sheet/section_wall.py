"""The wall in section: its body with the hatching of what it is made of, floor, ceiling, crown and baseboard."""

from __future__ import annotations

from elevation.sheet import hatch, inks
from elevation.sheet.draw_face import GHOST_DASH
from elevation.sheet.paths import Step, polygon, rectangle, segment
from elevation.sheet.records import NARROW, WIDE, Fill, Ink, Line, Path, Pen, Record
from elevation.sheet.section_cut import Cut

_WIDE = Pen(Ink.OUTLINE, WIDE)
_NARROW = Pen(Ink.OUTLINE, NARROW)
_HATCH = Pen(inks.FINE_LINE, 0.13)
_BREAK = Pen(Ink.THIN, 0.18)
_GHOST = Pen(Ink.GHOST, WIDE, GHOST_DASH)
SLAB_MM = 90.0
"""How much of floor and ceiling is drawn beyond their faces."""
_PLATE_MM = 38.0
"""A 2x stud or plate is 1 1/2 in thick (American Softwood Lumber Standard PS 20)."""
_BREAK_MM = 45.0

Box = tuple[float, float, float, float]


def wall_records(cut: Cut) -> list[Record]:
    """Everything that stands without the opening's own parts, in the order it is laid down."""
    records: list[Record] = []
    for box in solids(cut):
        records.extend(_body(cut, box))
    records.extend(_timbers(cut))
    records.extend(_slabs(cut))
    for box in solids(cut):
        left, bottom, right, top = box
        records.append(Line((right, bottom), (right, top), _WIDE))
        if cut.opening is not None and abs(top - cut.opening.bottom_mm) < 1e-6 and cut.opening.bottom_mm > cut.floor_mm:
            records.append(Line((left, top), (right, top), _WIDE))
        if cut.opening is not None and abs(bottom - cut.head_mm) < 1e-6:
            records.append(Line((left, bottom), (right, bottom), _WIDE))
    for _, bottom, _, top in solids(cut):
        # How thick a wall is nobody measured: it is broken off.
        low = bottom - (SLAB_MM if bottom <= cut.floor_mm + 1e-6 else 0.0)
        high = top + (SLAB_MM if top >= cut.ceiling_mm - 1e-6 else 0.0)
        records.append(Path(hatch.broken(-cut.thick_mm, low, high, min(_BREAK_MM, (high - low) / 6)), _BREAK))
    records.extend(_mouldings(cut))
    return records


def solids(cut: Cut) -> tuple[Box, ...]:
    """The wall's body: whole, or under and over the opening that is cut."""
    back = -cut.thick_mm
    if cut.opening is None:
        return ((back, cut.floor_mm, 0.0, cut.ceiling_mm),)
    boxes = [
        (back, cut.floor_mm, 0.0, cut.opening.bottom_mm),
        (back, cut.head_mm, 0.0, cut.ceiling_mm),
    ]
    return tuple(box for box in boxes if box[3] - box[1] > 1e-6)


def _body(cut: Cut, box: Box) -> list[Record]:
    left, bottom, right, top = box
    kind, face = cut.row.hatch, cut.row.face_mm
    records: list[Record] = [Fill(rectangle(*box), inks.SECTION_BODY)]
    core = (left, bottom, right - face, top)
    if kind == "plain":
        return records
    if kind == "cavity":
        core = (left + face, bottom, right - face, top)
        records.append(Fill(rectangle(*core), Ink.PAPER))
        for plate in ((core[0], bottom, core[2], bottom + _PLATE_MM), (core[0], top - _PLATE_MM, core[2], top)):
            if plate[3] - plate[1] < (top - bottom) / 2 + 1e-6:
                records.extend(timber(plate))
        records.append(Path((*segment(core[0], bottom, core[0], top), *segment(core[2], bottom, core[2], top)), _HATCH))
        grain = hatch.stippled((core[2], bottom, right, top), face * 0.9, face * 0.2)
        if grain:
            records.append(Fill(grain, inks.FINE_LINE))
        return records
    steps = _hatching(kind, core)
    if steps:
        records.append(Path(steps, _HATCH))
    if kind == "concrete":
        grit = hatch.stippled(core, 44.0, 13.0)
        if grit:
            records.append(Fill(grit, inks.FINE_LINE))
    if face > 0:
        # Plaster or board on the face.
        records.append(Fill(rectangle(right - face, bottom, right, top), inks.SECTION_FACE))
        records.append(Path(segment(right - face, bottom, right - face, top), _HATCH))
    return records


def _hatching(kind: str, box: Box) -> tuple[Step, ...]:
    """The lines of a kind of hatching; none for a wall that nobody has looked into."""
    if kind == "brick":
        return hatch.oblique(box, 26.0)
    if kind == "hollow":
        return (*hatch.oblique(box, 40.0), *hatch.coursed(box, 200.0))
    if kind == "aerated":
        return (*hatch.oblique(box, 44.0), *hatch.oblique(box, 44.0, -1.0))
    if kind == "concrete":
        return hatch.oblique(box, 60.0)
    return hatch.grained(box, 16.0) if kind == "timber" else ()


def timber(box: Box) -> list[Record]:
    """A piece of timber cut across: filled, outlined and crossed."""
    return [
        Fill(rectangle(*box), inks.WOOD),
        Path((*rectangle(*box), *hatch.crossed(box)), Pen(inks.WOOD_DARK, 0.18)),
    ]


def _timbers(cut: Cut) -> list[Record]:
    """Headers and lintels that likely carry the wall over the opening; dashed unless found."""
    records: list[Record] = []
    face = cut.row.face_mm
    for zone in cut.zones:
        if zone.kind not in ("header", "lintel"):
            continue
        box = (
            -cut.thick_mm + (face if zone.kind == "header" else 0.0),
            max(zone.bottom_mm, cut.head_mm),
            -face,
            zone.top_mm,
        )
        if box[3] - box[1] <= 1e-6:
            continue
        if zone.kind == "header":
            records.extend(timber(box))
        else:
            records.append(Fill(rectangle(*box), inks.SECTION_FACE))
            records.append(Path(hatch.oblique(box, 18.0, -1.0), _HATCH))
            records.append(Path(rectangle(*box), _HATCH))
    return records


def _slabs(cut: Cut) -> list[Record]:
    """Floor and ceiling as far as the section shows them; dashed where their heights were not measured."""
    left, right = -cut.thick_mm, cut.room_mm
    low, high = cut.floor_mm, cut.ceiling_mm
    floor, ceiling = (left, low - SLAB_MM, right, low), (left, high, right, high + SLAB_MM)
    records: list[Record] = [
        Fill(rectangle(*floor), Ink.FLOOR),
        Path(hatch.oblique(floor, 30.0), _HATCH),
        Fill(rectangle(*ceiling), inks.SECTION_BODY),
        Path(hatch.oblique(ceiling, 30.0, -1.0), _HATCH),
        # The floor runs on under a door; at a window the wall stands on it.
        Line((left if _is_door(cut) else 0.0, low), (right, low), _WIDE if cut.known_floor else _GHOST),
        Line((0.0, high), (right, high), _WIDE if cut.known_ceiling else _GHOST),
    ]
    return records


def _is_door(cut: Cut) -> bool:
    return cut.opening is not None and cut.opening.bottom_mm <= cut.floor_mm + 1e-6


def _mouldings(cut: Cut) -> list[Record]:
    records: list[Record] = []
    if cut.crown_mm > 0:
        c, top = cut.crown_mm, cut.ceiling_mm
        steps = (
            ("M", 0.0, top),
            ("L", c, top),
            ("L", c, top - 0.16 * c),
            ("C", c * 0.62, top - 0.2 * c, c * 0.3, top - 0.45 * c, c * 0.22, top - c * 0.84),
            ("L", c * 0.14, top - c),
            ("L", 0.0, top - c),
            ("Z",),
        )
        records += [Fill(steps, Ink.TRIM), Path(steps, _NARROW)]
    if cut.baseboard_mm > 0 and not _is_door(cut):
        thick, low, high = cut.stock.baseboard_mm, cut.floor_mm, cut.floor_mm + cut.baseboard_mm
        bevel = min(thick * 0.6, cut.baseboard_mm * 0.2)
        board = polygon(((0.0, low), (thick, low), (thick, high - bevel), (thick - bevel, high), (0.0, high)))
        records += [Fill(board, Ink.TRIM), Path(board, _NARROW)]
    return records
