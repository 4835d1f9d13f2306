"""Sewn pleats at the top of a panel: pinched fingers, goblets, cartridges, boxes, inverted pleats, and the soft wave."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator

from elevation.sheet import inks
from elevation.sheet.draw_drape import Drape
from elevation.sheet.paths import Step, ellipse, rectangle, segment
from elevation.sheet.records import Fill, Path, Pen, Record

_DEEP_MM = 88.0
"""Depth of a buckram of about 3 1/2 in."""


def deep(drape: Drape, wanted: float) -> float:
    """The depth of a heading, less on a very short panel."""
    return min(wanted, 0.3 * (drape.top_mm - max(drape.foot)))


def middles(drape: Drape) -> Iterator[float]:
    """The middle of each fold at the heading, in mm along the wall."""
    for near, far in itertools.pairwise(drape.valleys_top):
        yield (near + far) / 2


def _pinched(drape: Drape, sides: tuple[float, ...]) -> list[Record]:
    """Pinch pleats: fingers that open above the pinch, cloth that falls from it."""
    paint = drape.tones
    fingers: list[Step] = []
    bellies: list[Step] = []
    pinches: list[Step] = []
    spread = min(drape.pitch_mm * 0.26, 24.0)
    top = drape.top_mm
    pinch = top - deep(drape, _DEEP_MM)
    for x in middles(drape):
        for side in sides:
            fingers.extend(
                (
                    ("M", x + side * spread * 0.12, pinch),
                    ("C", x + side * spread * 0.5, pinch + 30, x + side * spread, top - 30, x + side * spread, top),
                )
            )
        bellies.extend(
            (
                ("M", x, pinch),
                ("C", x + spread * 0.5, pinch + 30, x + spread, top - 30, x + spread, top),
                ("L", x + spread * 0.2, top),
                ("C", x + spread * 0.2, top - 30, x + spread * 0.1, pinch + 30, x, pinch),
                ("Z",),
            )
        )
        pinches.extend(segment(x - spread * 0.3, pinch, x + spread * 0.3, pinch))
    return [
        Fill(tuple(bellies), paint.deep),
        Path(tuple(fingers), Pen(paint.line, 0.18)),
        Path(tuple(pinches), Pen(paint.edge, 0.25)),
    ]


def _three_fingers(drape: Drape) -> list[Record]:
    return _pinched(drape, (-1.0, 0.0, 1.0))


def _two_fingers(drape: Drape) -> list[Record]:
    return _pinched(drape, (-1.0, 1.0))


def _goblets(drape: Drape) -> list[Record]:
    """Cups stuffed round: pinched at the foot, open at the top."""
    paint = drape.tones
    cups: list[Step] = []
    mouths: list[Step] = []
    feet: list[Step] = []
    half = min(drape.pitch_mm * 0.3, 34.0)
    top = drape.top_mm
    pinch = top - deep(drape, _DEEP_MM)
    third = (top - pinch) / 3
    for x in middles(drape):
        cups.extend(
            (
                ("M", x - half * 0.2, pinch),
                ("C", x - half, pinch + third, x - half, top - third, x - half, top),
                ("L", x + half, top),
                ("C", x + half, top - third, x + half, pinch + third, x + half * 0.2, pinch),
                ("Z",),
            )
        )
        mouths.extend(ellipse(x, top, half, half * 0.22))
        feet.extend(segment(x - half * 0.3, pinch, x + half * 0.3, pinch))
    return [
        Fill(tuple(cups), inks.with_alpha(paint.crest, 0.55)),
        Path(tuple(cups), Pen(paint.line, 0.18)),
        Fill(tuple(mouths), paint.deep),
        Path(tuple(mouths), Pen(paint.edge, 0.2)),
        Path(tuple(feet), Pen(paint.edge, 0.25)),
    ]


def _cartridges(drape: Drape) -> list[Record]:
    """Small tubes as wide below as above."""
    paint = drape.tones
    tubes: list[Step] = []
    sides: list[Step] = []
    mouths: list[Step] = []
    half = min(drape.pitch_mm * 0.22, 16.0)
    top, low = drape.top_mm, drape.top_mm - deep(drape, _DEEP_MM)
    for x in middles(drape):
        tubes.extend(rectangle(x - half, low, x + half, top))
        sides.extend((*segment(x - half, top, x - half, low), *segment(x + half, top, x + half, low)))
        mouths.extend(ellipse(x, top, half, half * 0.3))
    return [
        Fill(tuple(tubes), inks.with_alpha(paint.crest, 0.5)),
        Path(tuple(sides), Pen(paint.line, 0.2)),
        Fill(tuple(mouths), paint.deep),
        Path(tuple(mouths), Pen(paint.edge, 0.2)),
    ]


def _inverted(drape: Drape) -> list[Record]:
    """A flat face that meets itself in the middle of each pleat and opens below the stitching."""
    paint = drape.tones
    seams: list[Step] = []
    mouths: list[Step] = []
    spread = min(drape.pitch_mm * 0.2, 26.0)
    top = drape.top_mm
    low = top - deep(drape, _DEEP_MM)
    foot = top - deep(drape, _DEEP_MM * 3.2)
    for x in middles(drape):
        seams.extend(segment(x, top, x, low))
        for side in (-1.0, 1.0):
            away = side * spread * 0.5
            mouths.extend((("M", x, low), ("C", x + away * 0.2, low - 40, x + away * 0.7, foot + 60, x + away, foot)))
    return [Path(tuple(mouths), Pen(paint.line, 0.13)), Path(tuple(seams), Pen(paint.edge, 0.25))]


def _boxes(drape: Drape) -> list[Record]:
    """Flat boxes that stand before the cloth, their edges sharp at the top."""
    paint = drape.tones
    faces: list[Step] = []
    shades: list[Step] = []
    edges: list[Step] = []
    half = min(drape.pitch_mm * 0.3, 44.0)
    top, low = drape.top_mm, drape.top_mm - deep(drape, _DEEP_MM)
    for x in middles(drape):
        faces.extend(rectangle(x - half, low, x + half, top))
        shades.extend(rectangle(x + half, low, x + half * 1.25, top))
        edges.extend((*segment(x - half, top, x - half, low), *segment(x + half, top, x + half, low)))
        edges.extend(segment(x - half, low, x + half, low))
    return [
        Fill(tuple(faces), inks.with_alpha(paint.crest, 0.45)),
        Fill(tuple(shades), inks.with_alpha(paint.deep, 0.7)),
        Path(tuple(edges), Pen(paint.line, 0.2)),
    ]


def wave(drape: Drape) -> list[Record]:
    """The tape of a wave along the top: no pleats, folds that begin at once and stay even."""
    paint = drape.tones
    low = drape.top_mm - deep(drape, 60.0)
    creases: list[Step] = []
    for x in middles(drape):
        for side in (-1.0, 1.0):
            away = side * drape.pitch_mm * 0.3
            creases.extend(
                (
                    ("M", x + away, drape.top_mm),
                    ("C", x + away * 0.9, low + 20, x + away * 0.82, low, x + away * 0.8, low - 40),
                )
            )
    tape = (
        *segment(drape.left_mm, drape.top_mm - 4, drape.right_mm, drape.top_mm - 4),
        *segment(drape.left_mm, low, drape.right_mm, low),
    )
    return [Path(tuple(creases), Pen(paint.line, 0.13)), Path(tape, Pen(paint.line, 0.1, (0.8, 0.5)))]


def back_tabs(drape: Drape) -> list[Record]:
    """The cloth before its hidden tabs: only the stitching that holds them shows, and the swelling of the tube."""
    paint = drape.tones
    stitches: list[Step] = []
    for x in middles(drape):
        for y in (drape.top_mm - 9.0, drape.top_mm - deep(drape, 70.0)):
            stitches.extend(segment(x - drape.pitch_mm * 0.16, y, x + drape.pitch_mm * 0.16, y))
    top = segment(drape.left_mm, drape.top_mm - 3.0, drape.right_mm, drape.top_mm - 3.0)
    return [Path(tuple(stitches), Pen(paint.line, 0.13)), Path(top, Pen(paint.line, 0.1))]


PLEATS: dict[str, Callable[[Drape], list[Record]]] = {
    "pinch": _three_fingers,
    "two-finger": _two_fingers,
    "goblet": _goblets,
    "cartridge": _cartridges,
    "inverted": _inverted,
    "box": _boxes,
}
"""Sewn pleats: each hangs from its middle."""
