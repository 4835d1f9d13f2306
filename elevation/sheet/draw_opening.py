"""An opening: casing, stool and apron around it; what fills it is in ``draw_sash``."""

from __future__ import annotations

from elevation.setting_out.model import OpeningOut
from elevation.sheet import inks
from elevation.sheet.draw_face import GHOST_DASH
from elevation.sheet.draw_sash import sash_records
from elevation.sheet.paths import Step, opening_path, rectangle, segment
from elevation.sheet.records import NARROW, WIDE, Fill, Gradient, Group, Ink, Path, Pen, Record, Stop

_EDGE = Pen(Ink.OUTLINE, 0.35)
_NARROW = Pen(Ink.OUTLINE, NARROW)
_FINE = Pen(inks.FINE_LINE, 0.13)
_GHOST = Pen(Ink.GHOST, NARROW, GHOST_DASH)
_SHADOW_MM = 12.0


def draw_opening(opening: OpeningOut, title: str) -> Group:
    """One opening with everything that belongs to it.

    Parameters
    ----------
    opening : OpeningOut
        Where it stands, wall mm.
    title : str
        Plain words for the group.

    Returns
    -------
    Group
        Layer ``opening``. Its outline is dashed where its place is assumed, the casing where it was not measured.
    """
    records: list[Record] = []
    if opening.casing_mm > 0 and opening.known_casing:
        records.extend(_casing(opening))
    records.extend(sash_records(opening))
    records.append(Path(opening_path(opening), _EDGE if opening.placed else Pen(Ink.GHOST, WIDE, GHOST_DASH)))
    if opening.casing_mm > 0 and not opening.known_casing:
        foot = _casing_foot(opening)
        turns_under = foot < opening.bottom_mm
        records.append(Path(opening_path(opening, opening.casing_mm, foot, closed=turns_under), _GHOST))
    if opening.stool is not None or opening.apron_mm > 0:
        records.extend(_sill(opening))
    return Group(opening.ref, "opening", title, tuple(records))


def _casing_foot(opening: OpeningOut) -> float:
    """Where the casing ends below: on the floor or the stool, or turned under a window that has no stool."""
    turns_under = opening.kind == "window" and opening.stool is None and opening.apron_mm <= 0
    return opening.bottom_mm - (opening.casing_mm if turns_under else 0.0)


def _casing(opening: OpeningOut) -> list[Record]:
    width, foot = opening.casing_mm, _casing_foot(opening)
    outer = opening_path(opening, width, foot)
    bead = opening_path(
        opening, width * 0.24, opening.bottom_mm - (opening.bottom_mm - foot) * 0.24, closed=foot < opening.bottom_mm
    )
    back = opening_path(
        opening, width * 0.8, opening.bottom_mm - (opening.bottom_mm - foot) * 0.8, closed=foot < opening.bottom_mm
    )
    tone = Gradient(
        (opening.left_mm - width, opening.bottom_mm),
        (opening.right_mm + width, opening.bottom_mm),
        (Stop(0.0, Ink.TRIM), Stop(0.8, Ink.TRIM), Stop(1.0, inks.TRIM_SHADE)),
    )
    records: list[Record] = [
        _cast_shadow(opening, foot),
        Fill(outer, tone),
        Path((*bead, *back, *_mitres(opening, foot)), _FINE),
        Path(outer, _EDGE),
    ]
    return records


def _cast_shadow(opening: OpeningOut, foot: float) -> Fill:
    """The soft shadow that the casing's right edge throws on the wall; light comes from the left."""
    edge = opening.right_mm + opening.casing_mm
    top = opening_path(opening, opening.casing_mm)[-3][-1]
    return Fill(rectangle(edge, foot, edge + _SHADOW_MM, float(top) - _SHADOW_MM / 2), inks.SHADE)


def _mitres(opening: OpeningOut, foot: float) -> tuple[Step, ...]:
    inner, outer = opening_path(opening), opening_path(opening, opening.casing_mm)
    lines: list[Step] = []
    if opening.head in ("flat", "raked"):
        for place in (1, 2):
            (_, x1, y1), (_, x2, y2) = inner[place], outer[place]
            lines.extend(segment(float(x1), float(y1), float(x2), float(y2)))
    else:
        for place in (1, -3):
            x1, y1 = inner[place][-2:]
            x2, y2 = outer[place][-2:]
            lines.extend(segment(float(x1), float(y1), float(x2), float(y2)))
    if foot < opening.bottom_mm:
        for x, side in ((opening.left_mm, -1.0), (opening.right_mm, 1.0)):
            lines.extend(segment(x, opening.bottom_mm, x + side * opening.casing_mm, foot))
    return tuple(lines)


def _sill(opening: OpeningOut) -> list[Record]:
    """Stool with its horns and shadow, and the apron under it."""
    thickness, horn, _ = opening.stool or (0.0, 0.0, 0.0)
    left, right = opening.left_mm - opening.casing_mm, opening.right_mm + opening.casing_mm
    under = opening.bottom_mm - thickness
    records: list[Record] = []
    if opening.apron_mm > 0:
        foot = under - opening.apron_mm
        fade = Gradient(
            (0.0, under), (0.0, foot), (Stop(0.0, inks.TRIM_DEEP), Stop(0.35, Ink.TRIM), Stop(1.0, inks.TRIM_SHADE))
        )
        records.append(Fill(rectangle(left, foot, right, under), fade))
        bead = foot + min(12.0, opening.apron_mm * 0.2)
        records.append(Path(segment(left, bead, right, bead), _FINE))
        records.append(Path(rectangle(left, foot, right, under), _NARROW))
    elif thickness > 0:
        records.append(Fill(rectangle(left, under - 2 * _SHADOW_MM, right, under), inks.SHADE))
    if thickness > 0:
        shelf = rectangle(left - horn, under, right + horn, opening.bottom_mm)
        tone = Gradient(
            (0.0, opening.bottom_mm), (0.0, under), (Stop(0.0, Ink.TRIM), Stop(0.6, Ink.TRIM), Stop(1.0, inks.TRIM_DEEP))
        )
        nose = under + thickness * 0.3
        records.append(Fill(shelf, tone))
        records.append(Path(segment(left - horn, nose, right + horn, nose), _FINE))
        records.append(Path(shelf, _EDGE))
    return records
