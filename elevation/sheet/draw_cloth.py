"""A panel of cloth: its folds, in the number the set-out gives, at the width it is drawn to.

One fold runs from each valley to the next. Valleys start where the heading holds the cloth and wander a little on
their way down, always the same way for the same fold, so that a drag moves cloth and does not make it shimmer.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence

from msgspec import Struct

from elevation.setting_out.model import PanelOut, Point, Profile, Span
from elevation.sheet.cloth import Tones, bunched_share, depth_share, tones
from elevation.sheet.paths import Step, height_at
from elevation.sheet.records import Fill, Gradient, Path, Pen, Record, Stop

MOST_FILLS = 36
_SHADOW_MM = 55.0
_GOLDEN = 0.61803398875

# How far folds wander beside a light cloth: the heavier, the straighter it hangs.
_LIMPNESS = {"sheer": 1.15, "light": 1.0, "medium": 0.85, "lined": 0.7, "interlined": 0.55}


class Drape(Struct, frozen=True, gc=False):
    """A panel as it hangs: what its folds and its heading are drawn from.

    ``valleys_top`` and ``valleys_foot`` are the x of the fold boundaries, one more than there are folds;
    ``foot`` the y of the hem at each of them; ``top_mm`` the top of the cloth, ``dip_mm`` how far it droops between
    two holders, ``pitch_mm`` a fold's drawn width.
    """

    left_mm: float
    right_mm: float
    top_mm: float
    dip_mm: float
    pitch_mm: float
    depth: float
    valleys_top: tuple[float, ...]
    valleys_foot: tuple[float, ...]
    foot: tuple[float, ...]
    lift_mm: float
    tones: Tones


def hang(panel: PanelOut, span: Span, heading: str, colour: str, body: str, floor: Profile) -> Drape:
    """How a panel hangs when it covers ``span``.

    Parameters
    ----------
    panel : PanelOut
    span : (left, right)
        Of the cloth, wall mm.
    heading : str
        Kind of heading (``draw_heading.heading_kind``).
    colour, body : str
        Of the fabric.
    floor : Profile
        Cloth never goes below it.
    """
    left, right = span
    width = max(right - left, 1e-6)
    count = max(1, panel.fold_count)
    pitch = width / count
    depth, bunched = depth_share(panel.flat_width_mm / width), bunched_share(panel.flat_width_mm / width)
    wander = pitch * (0.2 + 0.14 * bunched) * _LIMPNESS.get(body, 1.0)
    top_x = tuple(left + pitch * index for index in range(count + 1))
    foot_x = tuple(x if index in (0, count) else x + wander * _stray(index) for index, x in enumerate(top_x))
    foot = tuple(max(hem_at(panel.hem, x), height_at(floor, x)) for x in foot_x)
    lies = panel.target_gap_mm is not None and panel.target_gap_mm < -1e-6
    lift = 0.0 if lies else min(pitch * 0.16, 15.0) * (0.3 + 0.7 * depth)
    dip = min(pitch * 0.13, 20.0) if heading in ("rings", "tabs") else 0.0
    return Drape(
        left, right, panel.top_mm, dip, pitch, depth, top_x, foot_x, foot, lift, tones(colour, body, depth, bunched)
    )


def _stray(index: int) -> float:
    """A number from -1 to 1 that is always the same for one fold and unlike its neighbour's."""
    return 2.0 * ((index * _GOLDEN + 0.37 * math.sin(index * 2.3)) % 1.0) - 1.0


def hem_at(hem: Sequence[Point], x: float) -> float:
    """Height of the hem line at ``x``, level beyond its ends."""
    if x <= hem[0][0]:
        return hem[0][1]
    for (x1, y1), (x2, y2) in itertools.pairwise(hem):
        if x <= x2:
            return y1 + (y2 - y1) * (x - x1) / (x2 - x1) if x2 > x1 else y2
    return hem[-1][1]


def cloth_records(drape: Drape) -> list[Record]:
    """The panel's cloth below its heading, back to front: shadow, wash, folds, accents, hem line, outline."""
    outline = outline_path(drape)
    paint = drape.tones
    records: list[Record] = [_cast(drape), Fill(outline, paint.base)]
    records.extend(_folds(drape))
    records.append(Fill(_accents(drape), paint.deep))
    records.append(Fill(_lights(drape), paint.glow))
    records.append(Fill(outline, _fall(drape)))
    records.append(Path(_valleys(drape), Pen(paint.line, 0.13)))
    if drape.top_mm - max(drape.foot) > 500:
        records.append(Path(_hem_line(drape), Pen(paint.line, 0.1)))
    records.append(Path(outline, Pen(paint.edge, 0.2)))
    return records


def outline_path(drape: Drape) -> tuple[Step, ...]:
    """The closed outline of the cloth: heading, right edge, scalloped hem, left edge."""
    count = len(drape.foot) - 1
    steps: list[Step] = [("M", drape.left_mm, drape.top_mm)]
    steps.extend(_top_step(drape, index) for index in range(count))
    steps.append(_side(drape, count, down=True))
    steps.extend(_hem_step(drape, index) for index in range(count - 1, -1, -1))
    steps.append(_side(drape, 0, down=False))
    steps.append(("Z",))
    return tuple(steps)


def _top_step(drape: Drape, index: int) -> Step:
    x1, x2, y = drape.valleys_top[index], drape.valleys_top[index + 1], drape.top_mm
    if drape.dip_mm <= 0:
        return ("L", x2, y)
    low = y - drape.dip_mm * 4 / 3
    third = (x2 - x1) * 0.28
    return ("C", x1 + third, low, x2 - third, low, x2, y)


def _hem_step(drape: Drape, index: int) -> Step:
    """The hem of one fold from its right valley to its left: its front hangs to the hem, its back is seen higher."""
    x1, x2 = drape.valleys_foot[index], drape.valleys_foot[index + 1]
    y1, y2 = drape.foot[index], drape.foot[index + 1]
    dip = drape.lift_mm / 3
    third = (x2 - x1) * 0.3
    return ("C", x2 - third, y2 - dip, x1 + third, y1 - dip, x1, y1 + drape.lift_mm)


def _side(drape: Drape, index: int, *, down: bool) -> Step:
    """One valley as a cubic, from the heading to the hem or back."""
    x1, x2 = drape.valleys_top[index], drape.valleys_foot[index]
    y1, y2 = drape.top_mm, drape.foot[index] + drape.lift_mm
    drop = y1 - y2
    stray = _stray(index * 3 + 1) * drape.pitch_mm * 0.2
    if index in (0, len(drape.foot) - 1):
        stray = 0.0
    a, b = (x1 + stray * 0.3, y1 - drop * 0.3), (x2 + stray, y2 + drop * 0.35)
    return ("C", *a, *b, x2, y2) if down else ("C", *b, *a, x1, y1)


def _folds(drape: Drape) -> list[Record]:
    """The folds, each washed across with its own gradient; many folds share a record."""
    count = len(drape.foot) - 1
    share = math.ceil(count / MOST_FILLS)
    records: list[Record] = []
    for first in range(0, count, share):
        last = min(first + share, count)
        steps: list[Step] = [("M", drape.valleys_top[first], drape.top_mm)]
        steps.extend(_top_step(drape, index) for index in range(first, last))
        steps.append(_side(drape, last, down=True))
        steps.extend(_hem_step(drape, index) for index in range(last - 1, first - 1, -1))
        steps.append(_side(drape, first, down=False))
        steps.append(("Z",))
        left = (drape.valleys_top[first] + drape.valleys_foot[first]) / 2
        right = (drape.valleys_top[last] + drape.valleys_foot[last]) / 2
        records.append(Fill(tuple(steps), Gradient((left, 0.0), (right, 0.0), fold_stops(drape.tones, first, last))))
    return records


def fold_stops(paint: Tones, first: int, last: int) -> tuple[Stop, ...]:
    """The gradient across the folds from ``first`` up to ``last``, evenly wide."""
    variants = paint.folds
    if last - first == 1:
        return variants[first % len(variants)]
    width = 1.0 / (last - first)
    return tuple(
        Stop((index - first + stop.at) * width, stop.colour)
        for index in range(first, last)
        for stop in variants[index % len(variants)]
    )


def _sliver(x1: float, y1: float, x2: float, y2: float, bulge: float) -> tuple[Step, ...]:
    """A stroke of the brush between two points: no width at its ends, ``bulge`` mm in its body to one side."""
    third = (y2 - y1) / 3
    return (
        ("M", x1, y1),
        ("C", x1 + bulge, y1 + third, x2 + bulge * 0.8, y2 - third, x2, y2),
        ("C", x2 - bulge * 0.1, y2 - third, x1, y1 + third, x1, y1),
        ("Z",),
    )


def _accents(drape: Drape) -> tuple[Step, ...]:
    """Shade strokes that run down from the heading beside each valley, and short ones up from the hem."""
    steps: list[Step] = []
    for index in range(len(drape.foot) - 1):
        x, y = drape.valleys_top[index + 1], drape.top_mm - drape.dip_mm * 0.4
        foot_x, foot_y = drape.valleys_foot[index + 1], drape.foot[index + 1] + drape.lift_mm
        drop = y - foot_y
        reach = 0.4 + 0.35 * abs(_stray(index * 5 + 2))
        end_x = x + (foot_x - x) * reach
        steps.extend(_sliver(x, y, end_x, y - drop * reach, -drape.pitch_mm * 0.3))
        rise = 0.22 + 0.2 * abs(_stray(index * 7 + 3))
        from_x = foot_x + (x - foot_x) * rise
        steps.extend(_sliver(foot_x, foot_y, from_x, foot_y + drop * rise, -drape.pitch_mm * 0.36))
        if index % 3 != 1:
            # A shallow crease that opens toward the hem on the fold's shaded flank.
            share = 0.56 + 0.1 * _stray(index * 17 + 9)
            crease = drape.valleys_foot[index] + (foot_x - drape.valleys_foot[index]) * share
            from_y = foot_y + drop * (0.38 + 0.3 * abs(_stray(index * 19 + 4)))
            steps.extend(_sliver(crease, foot_y, crease + drape.pitch_mm * 0.05, from_y, drape.pitch_mm * 0.1))
    return tuple(steps)


def _lights(drape: Drape) -> tuple[Step, ...]:
    """A long stroke of light on the crest of each fold."""
    steps: list[Step] = []
    for index in range(len(drape.foot) - 1):
        top = drape.valleys_top[index] + drape.pitch_mm * 0.34
        low = drape.valleys_foot[index] + (drape.valleys_foot[index + 1] - drape.valleys_foot[index]) * 0.34
        drop = drape.top_mm - drape.foot[index]
        start = 0.04 + 0.1 * abs(_stray(index * 11 + 5))
        end = 0.72 + 0.22 * abs(_stray(index * 13 + 7))
        y1, y2 = drape.top_mm - drop * start, drape.top_mm - drop * end
        steps.extend(_sliver(top + (low - top) * start, y1, top + (low - top) * end, y2, drape.pitch_mm * 0.22))
    return tuple(steps)


def _fall(drape: Drape) -> Gradient:
    """Light from above: a little shade under the heading, a little more toward the floor."""
    clear = drape.tones.deep[:7] + "00"
    deep = drape.tones.deep[:7]
    return Gradient(
        (0.0, drape.top_mm),
        (0.0, min(drape.foot)),
        (Stop(0.0, deep + "4d"), Stop(0.05, deep + "1a"), Stop(0.16, clear), Stop(0.62, clear), Stop(1.0, deep + "24")),
    )


def _valleys(drape: Drape) -> tuple[Step, ...]:
    steps: list[Step] = []
    for index in range(1, len(drape.foot) - 1):
        steps.append(("M", drape.valleys_top[index], drape.top_mm))
        steps.append(_side(drape, index, down=True))
    return tuple(steps) or (("M", drape.left_mm, drape.top_mm), ("L", drape.left_mm, drape.top_mm))


def _hem_line(drape: Drape) -> tuple[Step, ...]:
    """The stitched line of the turned hem, 4 in above it (common practice, no source)."""
    up = 101.6
    steps: list[Step] = []
    for index in range(len(drape.foot) - 1, 0, -1):
        x, y = drape.valleys_foot[index], drape.foot[index] + drape.lift_mm + up
        steps.append(("M", x, y))
        step = _hem_step(drape, index - 1)
        steps.append((step[0], *(float(part) + (up if place % 2 else 0.0) for place, part in enumerate(step[1:]))))
    return tuple(steps)


def _cast(drape: Drape) -> Fill:
    """The soft shadow on the wall to the right of the panel."""
    right, top, low = drape.right_mm, drape.top_mm - 12.0, drape.foot[-1] + drape.lift_mm
    reach = min(_SHADOW_MM, max(12.0, drape.pitch_mm * 0.8))
    clear = drape.tones.shade[:7] + "00"
    return Fill(
        (("M", right, low), ("L", right + reach, low), ("L", right + reach, top - reach), ("L", right, top), ("Z",)),
        Gradient((right, 0.0), (right + reach, 0.0), (Stop(0.0, drape.tones.shade), Stop(1.0, clear))),
    )
