"""A panel gathered by its tie-back: folds that sweep from the heading to the waist and fall from it to the hem.

Each fold keeps its share of the cloth all the way down. Its valley leaves the heading straight down and bends in to the
waist as the set-out's swept edge does, a parabola, which a cubic draws exactly.
"""

from __future__ import annotations

from functools import partial

from msgspec import Struct

from elevation.setting_out.model import PanelOut, PatternOut, Point, TieOut
from elevation.sheet import inks
from elevation.sheet.draw_drape import Drape
from elevation.sheet.draw_pattern import Folded, pattern_marks, places_of
from elevation.sheet.paths import Step, circle, polygon
from elevation.sheet.records import NARROW, Fill, Path, Pen, Record

# Where across a fold its strips begin and end, and their tones: hollow, body, light, crease.
_STRIPS = ((0.0, 0.2, "hollow"), (0.46, 0.68, "crest"), (0.8, 1.0, "crease"))
_BAND_MM = 42.0
_EDGE_STEPS = 24
_IN_SHADE = 0.12  # swept folds lie at a slant to the light
_HOOK_MM = 15.0
_SHADOW_MM = (16.0, 10.0)


class _Sweep(Struct, frozen=True, gc=False):
    """What every line of a tied panel follows: shares ``u`` run from the fixed edge (0) to the leading one (1)."""

    fixed: float
    lead: float
    top: float
    tie: TieOut
    out: float

    def upper(self, u: float) -> tuple[Point, Point, Point, Point]:
        """From the heading to the waist, as a cubic."""
        x0, x1, y1 = self.at_top(u), self.at_waist(u), self.tie.hook[1]
        half = self.top - (self.top - y1) / 2  # the parabola's own corner lies straight under its start
        return (
            (x0, self.top),
            (x0, self.top + (half - self.top) * 2 / 3),
            (x1 + (x0 - x1) * 2 / 3, y1 + (half - y1) * 2 / 3),
            (x1, y1),
        )

    def lower(self, u: float) -> tuple[Point, Point, Point, Point]:
        """From the waist to the hem, as a cubic that leaves the waist steeply and hangs straight at the hem."""
        x1, y1 = self.at_waist(u), self.tie.hook[1]
        x2, y2 = self.at_foot(u), self.tie.hem_mm + self.tie.lift_mm * u
        return (x1, y1), (x1 + (x2 - x1) * 0.55, y1 + (y2 - y1) * 0.3), (x2, y1 + (y2 - y1) * 0.6), (x2, y2)

    def point(self, u: float, down: float) -> Point:
        """A place at share ``u``, ``down`` from 0 at the top of the cloth to 1 at its hem."""
        waist = (self.top - self.tie.hook[1]) / (self.top - self.tie.hem_mm)
        if down <= waist:
            return _on(self.upper(u), down / waist)
        return _on(self.lower(u), (down - waist) / (1 - waist))

    def at_top(self, u: float) -> float:
        return self.fixed + (self.lead - self.fixed) * u

    def at_waist(self, u: float) -> float:
        return self.tie.hook[0] + self.out * (self.tie.waist[1] - self.tie.waist[0]) * u

    def at_foot(self, u: float) -> float:
        return self.tie.hook[0] + self.out * (self.tie.foot[1] - self.tie.foot[0]) * u


def _swept(sweep: _Sweep, count: int, fold: int, across_share: float, down: float) -> Point:
    """A place of the flat cloth of a tied panel."""
    along = (fold + across_share) / count
    return sweep.point(along if sweep.out > 0 else 1 - along, down)


def tied_records(panel: PanelOut, tie: TieOut, drape: Drape, pattern: PatternOut | None = None) -> list[Record]:
    """The cloth below its heading, back to front, then what ties it.

    Parameters
    ----------
    panel : PanelOut
    tie : TieOut
    drape : Drape
        The same panel hanging free: its folds, tones and heading.
    pattern : PatternOut or None
        Of its cloth.
    """
    is_left = panel.side == "left"
    fixed, lead = (drape.left_mm, drape.right_mm) if is_left else (drape.right_mm, drape.left_mm)
    sweep = _Sweep(fixed, lead, drape.top_mm, tie, 1.0 if is_left else -1.0)
    paint, count = drape.tones, len(drape.foot) - 1
    outline = (*_down(sweep, 0.0, start=True), *_hem(sweep, count), *_up(sweep, 1.0), *_top(sweep, drape, count), ("Z",))
    records: list[Record] = [Fill(_moved(outline, *_SHADOW_MM), paint.shade), Fill(outline, paint.base)]
    for near, far, tone in _STRIPS:
        steps: list[Step] = []
        for fold in range(count):
            steps.extend(_strip(sweep, (fold + near) / count, (fold + far) / count))
        records.append(Fill(tuple(steps), getattr(paint, tone)))
    if pattern is not None and tie.hem_mm < tie.hook[1] < drape.top_mm:
        places = places_of(panel.flat_width_mm, drape.right_mm - drape.left_mm)
        flat, drop = panel.flat_width_mm, drape.top_mm - tie.hem_mm
        swept = Folded(count, places, flat, drop, not is_left, _EDGE_STEPS, partial(_swept, sweep, count))
        for mark in pattern_marks(swept, pattern):
            tone = inks.blend(inks.blend(paint.base[:7], pattern.ink, mark.strength), paint.hollow[:7], _IN_SHADE)
            records.append(Fill(mark.steps, tone))
    valleys: list[Step] = []
    for fold in range(1, count):
        valleys.extend(_down(sweep, fold / count, start=True))
    if valleys:
        records.append(Path(tuple(valleys), Pen(paint.line, 0.13)))
    records.append(Path(outline, Pen(paint.edge, 0.2)))
    records.extend(_held(sweep, drape))
    return records


def _on(curve: tuple[Point, Point, Point, Point], share: float) -> Point:
    """A point of a cubic."""
    back = 1 - share
    weights = (back**3, 3 * back * back * share, 3 * back * share * share, share**3)
    return (
        sum(weight * point[0] for weight, point in zip(weights, curve, strict=True)),
        sum(weight * point[1] for weight, point in zip(weights, curve, strict=True)),
    )


def _down(sweep: _Sweep, u: float, *, start: bool) -> list[Step]:
    a, b = sweep.upper(u), sweep.lower(u)
    first: list[Step] = [("M" if start else "L", *a[0])]
    return [*first, ("C", *a[1], *a[2], *a[3]), ("C", *b[1], *b[2], *b[3])]


def _up(sweep: _Sweep, u: float) -> list[Step]:
    a, b = sweep.upper(u), sweep.lower(u)
    return [("L", *b[3]), ("C", *b[2], *b[1], *b[0]), ("C", *a[2], *a[1], *a[0])]


def _hem(sweep: _Sweep, count: int) -> list[Step]:
    """The scalloped hem from the fixed edge to the leading one."""
    steps: list[Step] = []
    for fold in range(count):
        (x1, y1), (x2, y2) = sweep.lower(fold / count)[3], sweep.lower((fold + 1) / count)[3]
        dip = abs(x2 - x1) * 0.16
        third = (x2 - x1) * 0.3
        steps.append(("C", x1 + third, y1 - dip, x2 - third, y2 - dip, x2, y2))
    return steps


def _top(sweep: _Sweep, drape: Drape, count: int) -> list[Step]:
    """The heading from the leading edge back to the fixed one, drooping between its holders."""
    steps: list[Step] = []
    low = drape.top_mm - drape.dip_mm * 4 / 3
    for fold in range(count, 0, -1):
        x1, x2 = sweep.at_top(fold / count), sweep.at_top((fold - 1) / count)
        third = (x2 - x1) * 0.28
        steps.append(("C", x1 + third, low, x2 - third, low, x2, drape.top_mm))
    return steps


def _strip(sweep: _Sweep, near: float, far: float) -> list[Step]:
    return [*_down(sweep, near, start=True), *_up(sweep, far), ("Z",)]


def _moved(steps: tuple[Step, ...], right: float, down: float) -> tuple[Step, ...]:
    return tuple(
        (step[0], *(float(part) + (right if place % 2 == 0 else -down) for place, part in enumerate(step[1:])))
        for step in steps
    )


def _held(sweep: _Sweep, drape: Drape) -> list[Record]:
    """The loop around the waist with its hook, or the arm that holds the cloth from the front."""
    tie, out = sweep.tie, sweep.out
    x, y = tie.hook
    far = sweep.at_waist(1.0) + out * 4.0
    half = _BAND_MM / 2
    if tie.is_loop:
        low = y - _BAND_MM * 0.7  # the band hangs lower where it goes around the front of the cloth
        band = (
            ("M", x, y + half * 0.35),
            ("C", x + (far - x) * 0.3, low + half, x + (far - x) * 0.7, low + half * 0.9, far, y + half * 0.6),
            ("L", far, y - half * 0.7),
            ("C", x + (far - x) * 0.7, low - half * 1.1, x + (far - x) * 0.3, low - half, x, y - half * 0.35),
            ("Z",),
        )  # fmt: skip
        tone = inks.blend(drape.tones.hollow[:7], inks.METAL_DARK, 0.25)
        held: list[Record] = [Fill(band, tone), Path(band, Pen(drape.tones.edge, NARROW))]
    else:
        bar = polygon(((x, y + 5.0), (far, y + 7.0), (far + out * 6.0, y), (far, y - 7.0), (x, y - 5.0)))
        held = [Fill(bar, inks.METAL_MIDDLE), Path(bar, Pen(inks.METAL_DARK, NARROW))]
    knob = circle(x, y, _HOOK_MM)
    return [*held, Fill(knob, inks.METAL_LIGHT), Path(knob, Pen(inks.METAL_DARK, NARROW))]
