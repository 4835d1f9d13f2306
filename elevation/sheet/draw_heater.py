"""Things that give heat: radiator, electric, fan and portable heaters, fireplace, registers."""

from __future__ import annotations

from elevation.setting_out.model import ObstacleOut
from elevation.sheet import inks
from elevation.sheet.draw_fitting import EDGE, FINE, drop_shadow, fade
from elevation.sheet.paths import Step, circle, polygon, rectangle, rounded, segment
from elevation.sheet.records import Fill, Gradient, Ink, Path, Pen, Record, Stop

_ENAMEL = (
    Stop(0.0, inks.ENAMEL_SHADE),
    Stop(0.33, inks.PLASTIC),
    Stop(0.61, inks.ENAMEL),
    Stop(1.0, inks.TRIM_DEEP),
)
"""Light across one column of a radiator."""


def radiator(thing: ObstacleOut) -> list[Record]:
    """A column radiator: rounded sections side by side on feet, with its valve."""
    wide, high = thing.right_mm - thing.left_mm, thing.top_mm - thing.bottom_mm
    count = max(3, min(30, round(wide / 62.0)))
    each = wide / count
    foot = min(90.0, high * 0.13)
    columns: list[Step] = []
    bodies: list[Fill] = []
    feet: list[Step] = []
    for index in range(count):
        near = thing.left_mm + index * each
        left, right = near + each * 0.06, near + each * 0.94
        column = rounded(left, thing.bottom_mm + foot, right, thing.top_mm, each * 0.42)
        columns.extend(column)
        # One gradient a column: a single one over them all is sampled too coarsely by some PDF viewers.
        bodies.append(Fill(column, Gradient((left, 0.0), (right, 0.0), _ENAMEL)))
    for near in (thing.left_mm + each * 0.3, thing.right_mm - each * 0.7):
        feet.extend(rectangle(near, thing.bottom_mm, near + each * 0.4, thing.bottom_mm + foot + each * 0.3))
    rails = (
        *rectangle(
            thing.left_mm + each * 0.2, thing.top_mm - high * 0.14, thing.right_mm - each * 0.2, thing.top_mm - high * 0.09
        ),
        *rectangle(
            thing.left_mm + each * 0.2,
            thing.bottom_mm + foot + high * 0.06,
            thing.right_mm - each * 0.2,
            thing.bottom_mm + foot + high * 0.11,
        ),
    )
    grooves: list[Step] = []
    for index in range(count):
        x = thing.left_mm + (index + 0.5) * each
        grooves.extend(segment(x, thing.bottom_mm + foot + each * 0.9, x, thing.top_mm - each * 0.9))
    valve_y = thing.bottom_mm + foot + high * 0.06
    return [
        drop_shadow(thing),
        Fill(tuple(feet), inks.ENAMEL_SHADE),
        Path(tuple(feet), FINE),
        Fill(rails, inks.TRIM_DEEP),
        Path(rails, FINE),
        *bodies,
        Path(tuple(grooves), Pen(inks.FINE_LINE, 0.13)),
        Path(tuple(columns), EDGE),
        Fill(circle(thing.left_mm + each * 0.4, valve_y, min(22.0, each * 0.36)), inks.METAL_MIDDLE),
    ]


def _case(thing: ObstacleOut, radius: float) -> list[Record]:
    case = rounded(thing.left_mm, thing.bottom_mm, thing.right_mm, thing.top_mm, radius)
    return [
        drop_shadow(thing),
        Fill(case, fade(0.0, thing.top_mm, 0.0, thing.bottom_mm, inks.PLASTIC, inks.ENAMEL, inks.ENAMEL_SHADE)),
        Path(case, EDGE),
    ]


def electric_heater(thing: ObstacleOut) -> list[Record]:
    """An electric baseboard heater: a long case with end caps, an air slot above and below, and its fins."""
    wide, high = thing.right_mm - thing.left_mm, thing.top_mm - thing.bottom_mm
    cap = min(60.0, wide * 0.08)
    left, right = thing.left_mm + cap, thing.right_mm - cap
    slot_low, slot_high = thing.top_mm - high * 0.3, thing.top_mm - high * 0.12
    fins: list[Step] = []
    count = max(4, min(60, round((right - left) / 22.0)))
    for index in range(1, count):
        x = left + (right - left) * index / count
        fins.extend(segment(x, slot_low, x, slot_high))
    return [
        *_case(thing, 6.0),
        Fill(
            rectangle(left, slot_low, right, slot_high),
            fade(0.0, slot_high, 0.0, slot_low, inks.METAL_DARK, inks.METAL_MIDDLE),
        ),
        Path(tuple(fins), Pen(inks.METAL_LIGHT, 0.1)),
        Path(
            (
                *segment(left, thing.bottom_mm, left, thing.top_mm),
                *segment(right, thing.bottom_mm, right, thing.top_mm),
                *segment(left, thing.bottom_mm + high * 0.16, right, thing.bottom_mm + high * 0.16),
            ),
            FINE,
        ),
    ]


def fan_heater(thing: ObstacleOut) -> list[Record]:
    """A fan heater in the wall: a frame with its fan behind a grille of louvres, and a knob."""
    wide, high = thing.right_mm - thing.left_mm, thing.top_mm - thing.bottom_mm
    x, inset = (thing.left_mm + thing.right_mm) / 2, min(wide, high) * 0.1
    low, top = thing.bottom_mm + high * 0.2, thing.top_mm - inset
    radius = min((wide - 2 * inset) / 2, (top - low) / 2) * 0.92
    centre = (low + top) / 2
    blades: list[Step] = []
    for dx, dy in ((1, 1), (-1, 1), (-1, -1), (1, -1)):
        a, b, c = dx * radius * 0.2, dx * radius * 0.6, dx * radius * 0.62
        rise, bend = dy * radius * 0.7, dy * radius * 0.55
        blades.extend(
            (
                ("M", x, centre),
                ("C", x + a, centre + rise, x + b, centre + rise, x + c, centre + bend),
                ("C", x + b, centre + dy * radius * 0.2, x + a, centre, x, centre),
                ("Z",),
            )
        )
    louvres: list[Step] = []
    for index in range(1, 9):
        y = low + (top - low) * index / 9
        louvres.extend(segment(thing.left_mm + inset, y, thing.right_mm - inset, y))
    return [
        *_case(thing, min(wide, high) * 0.05),
        Fill(rectangle(thing.left_mm + inset, low, thing.right_mm - inset, top), inks.ENAMEL_SHADE),
        Fill(tuple(blades), inks.with_alpha(inks.METAL_MIDDLE, 0.55)),
        Path((*circle(x, centre, radius), *circle(x, centre, radius * 0.14)), FINE),
        Path(tuple(louvres), FINE),
        Path(rectangle(thing.left_mm + inset, low, thing.right_mm - inset, top), FINE),
        Fill(circle(thing.right_mm - inset * 2, thing.bottom_mm + high * 0.1, min(wide, high) * 0.04), inks.METAL_MIDDLE),
    ]


def portable_heater(thing: ObstacleOut) -> list[Record]:
    """A portable heater: a case with a handle and glowing bars, on two feet, with its lead."""
    wide, high = thing.right_mm - thing.left_mm, thing.top_mm - thing.bottom_mm
    foot, grip = high * 0.1, high * 0.12
    case = rounded(thing.left_mm, thing.bottom_mm + foot, thing.right_mm, thing.top_mm - grip, min(wide, high) * 0.08)
    handle = rounded(
        thing.left_mm + wide * 0.34, thing.top_mm - grip * 1.6, thing.right_mm - wide * 0.34, thing.top_mm, grip * 0.5
    )
    feet: list[Step] = []
    for near in (thing.left_mm + wide * 0.08, thing.right_mm - wide * 0.24):
        feet.extend(
            polygon(
                (
                    (near, thing.bottom_mm),
                    (near + wide * 0.16, thing.bottom_mm),
                    (near + wide * 0.12, thing.bottom_mm + foot * 1.2),
                    (near + wide * 0.04, thing.bottom_mm + foot * 1.2),
                )
            )
        )
    left, right = thing.left_mm + wide * 0.12, thing.right_mm - wide * 0.12
    low, top = thing.bottom_mm + foot + high * 0.1, thing.top_mm - grip - high * 0.1
    glow: list[Step] = []
    wires: list[Step] = []
    for index in range(3):
        y = low + (top - low) * (index + 0.5) / 3
        glow.extend(rounded(left + wide * 0.02, y - high * 0.02, right - wide * 0.02, y + high * 0.02, high * 0.02))
    for index in range(1, 8):
        x = left + (right - left) * index / 8
        wires.extend(segment(x, low, x, top))
    return [
        drop_shadow(thing, thing.top_mm - grip - min(wide, high) * 0.08),
        Path(handle, Pen(inks.METAL_DARK, 0.35)),
        Fill(tuple(feet), inks.METAL_DARK),
        Fill(case, fade(0.0, thing.top_mm, 0.0, thing.bottom_mm, inks.PLASTIC, inks.ENAMEL_SHADE)),
        Fill(rectangle(left, low, right, top), inks.EMBER),
        Fill(tuple(glow), inks.FLAME),
        Path(tuple(wires), Pen(inks.METAL_LIGHT, 0.1)),
        Path(rectangle(left, low, right, top), FINE),
        Path(case, EDGE),
    ]


def flame_heater(thing: ObstacleOut) -> list[Record]:
    """A fireplace: surround and mantel, a dark hearth with its flame."""
    wide, high = thing.right_mm - thing.left_mm, thing.top_mm - thing.bottom_mm
    x, mantel = (thing.left_mm + thing.right_mm) / 2, min(80.0, high * 0.09)
    jamb = min(wide * 0.17, 190.0)
    body = rectangle(thing.left_mm + wide * 0.03, thing.bottom_mm, thing.right_mm - wide * 0.03, thing.top_mm - mantel)
    shelf_board = rectangle(thing.left_mm, thing.top_mm - mantel, thing.right_mm, thing.top_mm)
    left, right, top = thing.left_mm + jamb, thing.right_mm - jamb, thing.top_mm - mantel - high * 0.17
    hearth = rectangle(left, thing.bottom_mm, right, top)
    tall = (top - thing.bottom_mm) * 0.55
    spread = (right - left) * 0.26
    foot = thing.bottom_mm + (top - thing.bottom_mm) * 0.12
    logs = (
        *rounded(x - spread * 1.3, foot - tall * 0.1, x + spread * 1.1, foot + tall * 0.04, tall * 0.07),
        *rounded(x - spread * 0.8, foot + tall * 0.05, x + spread * 0.9, foot + tall * 0.18, tall * 0.065),
    )
    return [
        drop_shadow(thing),
        Fill(body, fade(thing.left_mm, 0.0, thing.right_mm, 0.0, inks.ENAMEL, inks.TRIM_SHADE, inks.TRIM_DEEP)),
        Fill(hearth, fade(0.0, top, 0.0, thing.bottom_mm, "#2b2622", inks.EMBER)),
        Fill(_flame(x, foot, spread, tall), fade(0.0, foot + tall, 0.0, foot, "#c9602a", inks.FLAME, "#f4d28c")),
        Fill(_flame(x, foot, spread * 0.5, tall * 0.55), "#f8e6b0"),
        Fill(logs, "#3b2d24"),
        Path(hearth, EDGE),
        Path(rectangle(thing.left_mm + wide * 0.05, thing.bottom_mm, left - jamb * 0.22, top), FINE),
        Path(rectangle(right + jamb * 0.22, thing.bottom_mm, thing.right_mm - wide * 0.05, top), FINE),
        Path(body, EDGE),
        Fill(shelf_board, fade(0.0, thing.top_mm, 0.0, thing.top_mm - mantel, inks.PLASTIC, inks.TRIM_DEEP)),
        Path(
            (
                *shelf_board,
                *segment(thing.left_mm, thing.top_mm - mantel * 0.6, thing.right_mm, thing.top_mm - mantel * 0.6),
            ),
            EDGE,
        ),
    ]


def _flame(x: float, foot: float, half: float, tall: float) -> tuple[Step, ...]:
    return (
        ("M", x - half * 0.7, foot),
        ("C", x - half * 1.5, foot + tall * 0.4, x - half * 0.5, foot + tall * 0.5, x - half * 0.45, foot + tall * 0.78),
        ("C", x - half * 0.1, foot + tall * 0.62, x - half * 0.2, foot + tall * 0.5, x, foot + tall * 0.48),
        ("C", x + half * 0.3, foot + tall * 0.7, x, foot + tall * 0.85, x + half * 0.1, foot + tall),
        ("C", x + half * 0.9, foot + tall * 0.7, x + half * 1.3, foot + tall * 0.35, x + half * 0.7, foot),
        ("Z",),
    )


def register(thing: ObstacleOut) -> list[Record]:
    """An air register: a rimmed grille with slats across its shorter side and a lever."""
    wide, high = thing.right_mm - thing.left_mm, thing.top_mm - thing.bottom_mm
    rim = min(wide, high) * 0.14
    left, low, right, top = thing.left_mm + rim, thing.bottom_mm + rim, thing.right_mm - rim, thing.top_mm - rim
    outline = rounded(thing.left_mm, thing.bottom_mm, thing.right_mm, thing.top_mm, rim * 0.4)
    slats: list[Step] = []
    if wide >= high:
        count = max(4, min(40, round((right - left) / 16.0)))
        for index in range(count):
            x = left + (right - left) * (index + 0.5) / count
            half = (right - left) / count * 0.26
            slats.extend(rectangle(x - half, low, x + half, top))
    else:
        count = max(4, min(40, round((top - low) / 16.0)))
        for index in range(count):
            y = low + (top - low) * (index + 0.5) / count
            half = (top - low) / count * 0.26
            slats.extend(rectangle(left, y - half, right, y + half))
    return [
        Fill(outline, fade(0.0, thing.top_mm, 0.0, thing.bottom_mm, inks.PLASTIC, inks.ENAMEL_SHADE)),
        Fill(tuple(slats), Ink.METAL),
        Path(outline, EDGE),
        Path(rectangle(left, low, right, top), FINE),
    ]
