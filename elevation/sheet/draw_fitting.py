"""Things on the wall that give no heat: outlet, switch, light, alarm, shelf, furniture, picture, pipe, door swing."""

from __future__ import annotations

import math

from elevation.setting_out.model import ObstacleOut
from elevation.sheet import inks
from elevation.sheet.draw_face import GHOST_DASH
from elevation.sheet.paths import Step, arc, circle, ellipse, polygon, rectangle, rounded, segment
from elevation.sheet.records import NARROW, Fill, Gradient, Ink, Path, Pen, Record, Stop

EDGE = Pen(Ink.OUTLINE, NARROW)
FINE = Pen(inks.FINE_LINE, 0.13)


def fade(x1: float, y1: float, x2: float, y2: float, *colours: str) -> Gradient:
    """A gradient with its colours evenly spaced."""
    last = len(colours) - 1
    return Gradient((x1, y1), (x2, y2), tuple(Stop(index / last, tone) for index, tone in enumerate(colours)))


def drop_shadow(thing: ObstacleOut, top_mm: float | None = None) -> Fill:
    """The soft shadow to the right of something that stands out from the wall; light comes from the left."""
    reach = min(24.0, max(6.0, thing.out_mm * 0.18))
    top = thing.top_mm if top_mm is None else top_mm
    outer = max(top - reach, thing.bottom_mm)
    corners = (
        (thing.right_mm, thing.bottom_mm),
        (thing.right_mm + reach, thing.bottom_mm),
        (thing.right_mm + reach, outer),
        (thing.right_mm, top),
    )
    return Fill(polygon(corners), inks.SHADE)


def _middle(thing: ObstacleOut) -> tuple[float, float, float, float]:
    return (
        (thing.left_mm + thing.right_mm) / 2,
        (thing.bottom_mm + thing.top_mm) / 2,
        thing.right_mm - thing.left_mm,
        thing.top_mm - thing.bottom_mm,
    )


def _plate(thing: ObstacleOut) -> list[Record]:
    _, _, wide, high = _middle(thing)
    plate = rounded(thing.left_mm, thing.bottom_mm, thing.right_mm, thing.top_mm, min(wide, high) * 0.12)
    tone = fade(thing.left_mm, thing.top_mm, thing.right_mm, thing.bottom_mm, inks.PLASTIC, inks.ENAMEL_SHADE)
    return [Fill(plate, tone), Path(plate, EDGE)]


def outlet(thing: ObstacleOut) -> list[Record]:
    """A cover plate with two sockets, each a face with its slots; side by side where the plate is wide."""
    x, y, wide, high = _middle(thing)
    upright = high >= wide
    size = min(wide, high) * 0.3 if max(wide, high) > 1.25 * min(wide, high) else min(wide, high) * 0.36
    apart = max(wide, high) * 0.25
    two = max(wide, high) > 1.25 * min(wide, high)
    centres = [(x, y + apart), (x, y - apart)] if upright else [(x - apart, y), (x + apart, y)]
    faces: list[Step] = []
    slots: list[Step] = []
    for cx, cy in centres if two else [(x, y)]:
        faces.extend(circle(cx, cy, size))
        slots.extend(segment(cx - size * 0.4, cy - size * 0.05, cx - size * 0.4, cy + size * 0.5))
        slots.extend(segment(cx + size * 0.4, cy - size * 0.05, cx + size * 0.4, cy + size * 0.5))
        slots.extend(segment(cx, cy - size * 0.55, cx, cy - size * 0.3))
    return [*_plate(thing), Path(tuple(faces), FINE), Path(tuple(slots), EDGE)]


def switch(thing: ObstacleOut) -> list[Record]:
    """A cover plate with a rocker, its lower half in shade."""
    x, y, wide, high = _middle(thing)
    half, tall = wide * 0.2, high * 0.3
    rocker = rectangle(x - half, y - tall, x + half, y + tall)
    return [
        *_plate(thing),
        Fill(rectangle(x - half, y - tall, x + half, y), inks.ENAMEL_SHADE),
        Path((*rocker, *segment(x - half, y, x + half, y)), FINE),
    ]


def light(thing: ObstacleOut) -> list[Record]:
    """A wall light: back plate, arm and a shade that glows, with the light it throws on the wall."""
    x, _, wide, high = _middle(thing)
    foot, brim, crown = thing.bottom_mm, thing.bottom_mm + high * 0.4, thing.top_mm
    shade = polygon(((thing.left_mm, brim), (thing.right_mm, brim), (x + wide * 0.3, crown), (x - wide * 0.3, crown)))
    plate = rounded(x - wide * 0.13, foot, x + wide * 0.13, foot + high * 0.34, wide * 0.13)
    return [
        Fill(plate, fade(x - wide * 0.13, 0.0, x + wide * 0.13, 0.0, inks.METAL_LIGHT, Ink.METAL)),
        Path(plate, EDGE),
        Path(segment(x, foot + high * 0.3, x, brim), Pen(inks.METAL_DARK, 0.5)),
        Fill(shade, fade(0.0, crown, 0.0, brim, "#fbe6b4", "#fff6de")),
        Path(shade, EDGE),
    ]


def smoke_alarm(thing: ObstacleOut) -> list[Record]:
    """A round alarm: dome, ring of vents, a small lamp."""
    x, y, wide, high = _middle(thing)
    body = ellipse(x, y, wide / 2, high / 2)
    vents: list[Step] = []
    for index in range(12):
        angle = math.tau * index / 12
        vents.extend(
            segment(
                x + wide * 0.3 * math.cos(angle), y + high * 0.3 * math.sin(angle),
                x + wide * 0.4 * math.cos(angle), y + high * 0.4 * math.sin(angle),
            )
        )  # fmt: skip
    return [
        Fill(body, fade(thing.left_mm, thing.top_mm, thing.right_mm, thing.bottom_mm, inks.PLASTIC, inks.ENAMEL_SHADE)),
        Path((*ellipse(x, y, wide * 0.22, high * 0.22), *vents), FINE),
        Path(body, EDGE),
        Fill(circle(x + wide * 0.1, y + high * 0.08, min(wide, high) * 0.035), Ink.ACCENT),
    ]


def shelf(thing: ObstacleOut) -> list[Record]:
    """A board on two brackets with its shadow on the wall; the outline is the board's and the brackets'."""
    _, _, wide, high = _middle(thing)
    board = min(high, 28.0)
    under = thing.top_mm - board
    records: list[Record] = []
    if high > board + 1:
        braces: list[Step] = []
        for x in (thing.left_mm + wide * 0.16, thing.right_mm - wide * 0.16):
            half = min(9.0, wide * 0.03)
            braces.extend(
                polygon(
                    (
                        (x - half, under),
                        (x + half, under),
                        (x + half * 0.7, thing.bottom_mm),
                        (x - half * 0.7, thing.bottom_mm),
                    )
                )
            )
        records += [Fill(tuple(braces), inks.METAL_MIDDLE), Path(tuple(braces), FINE)]
    reach = min(48.0, max(10.0, thing.out_mm * 0.22))
    records.append(
        Fill(
            rectangle(thing.left_mm, under - reach, thing.right_mm, under),
            inks.SHADE,
        )
    )
    plank = rectangle(thing.left_mm, under, thing.right_mm, thing.top_mm)
    grain = segment(thing.left_mm, under + board * 0.3, thing.right_mm, under + board * 0.3)
    return [
        *records,
        Fill(plank, fade(0.0, thing.top_mm, 0.0, under, inks.WOOD, inks.WOOD_DARK)),
        Path(grain, FINE),
        Path(plank, EDGE),
    ]


def furniture(thing: ObstacleOut) -> list[Record]:
    """A piece of furniture as a quiet cabinet: top, body with doors or drawers, feet."""
    x, _, wide, high = _middle(thing)
    top, foot = min(28.0, high * 0.08), min(70.0, high * 0.12)
    body_low, body_high = thing.bottom_mm + foot, thing.top_mm - top
    body = rectangle(thing.left_mm, body_low, thing.right_mm, body_high)
    slab = rectangle(thing.left_mm, body_high, thing.right_mm, thing.top_mm)
    feet: list[Step] = []
    for side in (thing.left_mm + wide * 0.05, thing.right_mm - wide * 0.05 - min(32.0, wide * 0.08)):
        feet.extend(rectangle(side, thing.bottom_mm, side + min(32.0, wide * 0.08), body_low))
    lines: list[Step] = []
    knobs: list[Step] = []
    columns = max(1, round(wide / 520.0))
    each = wide / columns
    inset = min(18.0, each * 0.06)
    for column in range(columns):
        near = thing.left_mm + column * each
        rows = 1 if body_high - body_low > 1.2 * each else max(1, min(4, round((body_high - body_low) / 190.0)))
        tall = (body_high - body_low) / rows
        for row in range(rows):
            low = body_low + row * tall
            lines.extend(rectangle(near + inset, low + inset, near + each - inset, low + tall - inset))
            knobs.extend(
                circle(
                    near + each / 2 if rows > 1 else near + each * (0.82 if near < x else 0.18),
                    low + tall / 2,
                    min(9.0, each * 0.03),
                )
            )
    return [
        drop_shadow(thing),
        Fill(tuple(feet), inks.WOOD_DARK),
        Path(tuple(feet), FINE),
        Fill(body, fade(thing.left_mm, 0.0, thing.right_mm, 0.0, inks.WOOD, inks.WOOD, inks.WOOD_DARK)),
        Path(tuple(lines), FINE),
        Fill(tuple(knobs), inks.METAL_MIDDLE),
        Path(body, EDGE),
        Fill(slab, fade(0.0, thing.top_mm, 0.0, body_high, inks.WOOD, inks.WOOD_DARK)),
        Path(slab, EDGE),
    ]


def picture(thing: ObstacleOut) -> list[Record]:
    """A framed picture: frame with mitres, mount, and a quiet landscape of three washes."""
    x, y, wide, high = _middle(thing)
    rim = min(wide, high) * 0.07
    mount = min(wide, high) * 0.2
    outer = rectangle(thing.left_mm, thing.bottom_mm, thing.right_mm, thing.top_mm)
    inner = rectangle(thing.left_mm + rim, thing.bottom_mm + rim, thing.right_mm - rim, thing.top_mm - rim)
    left, low, right, top = thing.left_mm + mount, thing.bottom_mm + mount, thing.right_mm - mount, thing.top_mm - mount
    mitres: list[Step] = []
    for cx, cy, sx, sy in (
        (thing.left_mm, thing.bottom_mm, 1, 1), (thing.right_mm, thing.bottom_mm, -1, 1),
        (thing.right_mm, thing.top_mm, -1, -1), (thing.left_mm, thing.top_mm, 1, -1),
    ):  # fmt: skip
        mitres.extend(segment(cx, cy, cx + sx * rim, cy + sy * rim))
    far = (
        ("M", left, y),
        ("C", left + (x - left) * 0.6, y + high * 0.12, x + (right - x) * 0.2, y - high * 0.02, right, y + high * 0.07),
        ("L", right, low), ("L", left, low), ("Z",),
    )  # fmt: skip
    near = (
        ("M", left, y - high * 0.12), ("C", x, y - high * 0.02, x, y - high * 0.16, right, y - high * 0.1),
        ("L", right, low), ("L", left, low), ("Z",),
    )  # fmt: skip
    return [
        drop_shadow(thing),
        Fill(outer, fade(thing.left_mm, thing.top_mm, thing.right_mm, thing.bottom_mm, inks.WOOD, inks.WOOD_DARK)),
        Fill(inner, Ink.TRIM),
        Fill(rectangle(left, low, right, top), fade(0.0, top, 0.0, y, inks.SKY_HIGH, inks.SKY_LOW)),
        Fill(far, "#b9c4b8"),
        Fill(near, "#93a497"),
        Path((*rectangle(left, low, right, top), *mitres, *inner), FINE),
        Path(outer, EDGE),
    ]


def pipe(thing: ObstacleOut) -> list[Record]:
    """A pipe along its longer side, with clips."""
    _, _, wide, high = _middle(thing)
    outline = rectangle(thing.left_mm, thing.bottom_mm, thing.right_mm, thing.top_mm)
    tones = (inks.METAL_LIGHT, inks.ENAMEL, inks.METAL_LIGHT, inks.METAL_MIDDLE)
    clips: list[Step] = []
    if high >= wide:
        tone = fade(thing.left_mm, 0.0, thing.right_mm, 0.0, *tones)
        count = max(1, round(high / 900.0))
        for index in range(count):
            at = thing.bottom_mm + high * (index + 0.5) / count
            clips.extend(rectangle(thing.left_mm - wide * 0.12, at - 9, thing.right_mm + wide * 0.12, at + 9))
    else:
        tone = fade(0.0, thing.top_mm, 0.0, thing.bottom_mm, *tones)
        count = max(1, round(wide / 900.0))
        for index in range(count):
            at = thing.left_mm + wide * (index + 0.5) / count
            clips.extend(rectangle(at - 9, thing.bottom_mm - high * 0.12, at + 9, thing.top_mm + high * 0.12))
    return [Fill(outline, tone), Path(outline, EDGE), Fill(tuple(clips), inks.METAL_MIDDLE), Path(tuple(clips), FINE)]


def door_swing(thing: ObstacleOut) -> list[Record]:
    """The region that another wall's door sweeps: dashed, lightly hatched, with a quarter arc for a sign."""
    _, _, wide, high = _middle(thing)
    outline = rectangle(thing.left_mm, thing.bottom_mm, thing.right_mm, thing.top_mm)
    hatch: list[Step] = []
    pitch = max(90.0, (wide + high) / 40)
    start = thing.left_mm - high
    while start < thing.right_mm:
        near, far = max(start, thing.left_mm), min(start + high, thing.right_mm)
        if far > near:
            hatch.extend(segment(near, thing.bottom_mm + near - start, far, thing.bottom_mm + far - start))
        start += pitch
    radius = min(wide, high) * 0.6
    sign = (("M", thing.left_mm + radius, thing.bottom_mm), *arc(thing.left_mm, thing.bottom_mm, radius, 0.0, math.pi / 2))
    hatched = [Path(tuple(hatch), Pen(inks.HATCH, 0.1))] if hatch else []
    return [
        Fill(outline, inks.with_alpha(Ink.GHOST, 0.07)),
        *hatched,
        Path(sign, Pen(Ink.GHOST, 0.18, GHOST_DASH)),
        Path(outline, Pen(Ink.GHOST, NARROW, GHOST_DASH)),
    ]
