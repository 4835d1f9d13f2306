"""What goes with the cloth, in section: pelmet or valance before the rod, blinds behind the cloth."""

from __future__ import annotations

from elevation.setting_out.model import BlindOut, PelmetOut
from elevation.sheet import inks
from elevation.sheet.paths import circle, polygon, rectangle, rounded, segment
from elevation.sheet.records import NARROW, Fill, Ink, Path, Pen, Record
from elevation.sheet.section_cut import Cut
from elevation.sheet.section_wall import timber

_NARROW = Pen(Ink.OUTLINE, NARROW)
_CLOTH_MM = 3.0
_BAR_MM = 12.0
_IRON_MM = 75.0
_IRON_THICK_MM = 2.5
_VALANCE_MM = 40.0


def pelmet_records(cut: Cut, pelmet: PelmetOut) -> list[Record]:
    """A pelmet's top and front board cut across; a valance as gathered cloth under its top."""
    if not pelmet.left_mm <= cut.station_mm <= pelmet.right_mm:
        return []
    pelmet = pelmet.level_at(cut.station_mm)
    thick = min(cut.stock.casing_mm, pelmet.out_mm / 3, (pelmet.top_mm - pelmet.bottom_mm) / 3)
    if thick <= 0:
        return []
    top = [*timber((0.0, pelmet.top_mm - thick, pelmet.out_mm, pelmet.top_mm)), *_iron(pelmet, thick)]
    if pelmet.kind == "valance":
        colour = cut.hangings[0].layer.colour if cut.hangings else inks.WOOD
        deep = min(_VALANCE_MM, pelmet.out_mm / 3)
        front, low = pelmet.out_mm, pelmet.bottom_mm
        cloth = polygon(
            (
                (front - _CLOTH_MM, pelmet.top_mm),
                (front, pelmet.top_mm),
                (front + deep * 0.3, low),
                (front - deep * 0.7, low),
            )
        )
        edge = Pen(inks.blend(colour, "#1c1512", 0.55), NARROW)
        return [*top, Fill(cloth, inks.blend(colour, Ink.PAPER, 0.2)), Path(cloth, edge)]
    return [*top, *timber((pelmet.out_mm - thick, pelmet.bottom_mm, pelmet.out_mm, pelmet.top_mm - thick))]


def _iron(pelmet: PelmetOut, thick: float) -> list[Record]:
    """An angle iron under the shelf, beyond the cut."""
    if not pelmet.irons_mm:
        return []
    under, reach = pelmet.top_mm - thick, max(pelmet.out_mm - 2 * thick, 2 * _IRON_THICK_MM)
    down = min(_IRON_MM, under - pelmet.bottom_mm)
    iron = polygon(
        (
            (0.0, under),
            (reach, under),
            (reach, under - _IRON_THICK_MM),
            (_IRON_THICK_MM, under - _IRON_THICK_MM),
            (_IRON_THICK_MM, under - down),
            (0.0, under - down),
        )
    )
    return [Fill(iron, inks.METAL_MIDDLE), Path(iron, Pen(inks.FINE_LINE, 0.13))]


def blind_records(cut: Cut, blind: BlindOut) -> list[Record]:
    """A blind's box with its roll, its cloth as far as it is let down, the bar at its foot; only before this opening."""
    if not blind.left_mm <= cut.station_mm <= blind.right_mm:
        return []
    box = rounded(blind.back_mm, blind.bottom_mm, blind.out_mm, blind.top_mm, min(4.0, (blind.out_mm - blind.back_mm) / 4))
    middle = (blind.back_mm + blind.out_mm) / 2
    radius = min(blind.out_mm - blind.back_mm, blind.top_mm - blind.bottom_mm) * 0.32
    roll = circle(middle, (blind.bottom_mm + blind.top_mm) / 2, max(radius, 1.0))
    records: list[Record] = [Fill(box, inks.PLASTIC), Path(box, _NARROW), Path(roll, Pen(inks.FINE_LINE, 0.18))]
    if blind.hem_mm < blind.bottom_mm - 1.0:
        cloth = segment(middle, blind.bottom_mm, middle, blind.hem_mm)
        bar = rectangle(middle - 3.0, blind.hem_mm, middle + 3.0, blind.hem_mm + _BAR_MM)
        records += [Path(cloth, Pen(Ink.OUTLINE, 0.35)), Fill(bar, inks.PLASTIC), Path(bar, _NARROW)]
    return records
