"""How a panel hangs: its folds, in the number the set-out gives, at the width it is drawn to.

One fold runs from each valley to the next. Valleys start where the heading holds the cloth and wander a little on
their way down, always the same way for the same fold, so that a drag moves cloth and does not make it shimmer.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Sequence
from functools import lru_cache

from msgspec import Struct

from elevation.setting_out.model import PanelOut, Point, Profile, Span
from elevation.sheet.cloth import Tones, across, bunched_share, depth_share, key_of, tones
from elevation.sheet.paths import height_at
from elevation.sheet.records import Stop

_GOLDEN = 0.61803398875

# How far folds wander beside a light cloth: the heavier, the straighter it hangs.
_LIMPNESS = {"sheer": 1.15, "light": 1.0, "medium": 0.85, "lined": 0.7, "interlined": 0.55}


Curve = tuple[Point, Point, Point, Point]


class Drape(Struct, frozen=True, gc=False):
    """A panel as it hangs: what its folds and its heading are drawn from.

    ``valleys_top`` and ``valleys_foot`` are the x of the fold boundaries, one more than there are folds;
    ``foot`` the y of the hem at each of them; ``top_mm`` the top of the cloth, ``dip_mm`` how far it droops between
    two holders, ``pitch_mm`` a fold's drawn width. ``stops`` is the wash across the panel; ``is_light`` asks for few
    strokes of the brush: a sheer, or a stack that shows little between its folds.
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
    stops: tuple[Stop, ...]
    is_light: bool


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
    over = panel.flat_width_mm / width
    depth, bunched = depth_share(over), bunched_share(over)
    key = key_of(colour, body, depth, bunched)
    feet, means = wandering(count, body, key[3])
    top_x = tuple(left + pitch * index for index in range(count + 1))
    foot_x = tuple(x + pitch * away for x, away in zip(top_x, feet, strict=True))
    foot = tuple(max(hem_at(panel.hem, x), height_at(floor, x)) for x in foot_x)
    lies = panel.target_gap_mm is not None and panel.target_gap_mm < -1e-6
    lift = 0.0 if lies else min(pitch * 0.16, 15.0) * (0.3 + 0.7 * depth)
    dip = min(pitch * 0.13, 20.0) if heading in ("rings", "tabs") else 0.0
    return Drape(
        left_mm=left,
        right_mm=right,
        top_mm=panel.top_mm,
        dip_mm=dip,
        pitch_mm=pitch,
        depth=depth,
        valleys_top=top_x,
        valleys_foot=foot_x,
        foot=foot,
        lift_mm=lift,
        tones=tones(key),
        stops=across(key, means),
        is_light=body == "sheer" or bunched > 0.5,
    )


@lru_cache(maxsize=256)
def wandering(count: int, body: str, bunched_step: int) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """How far each valley has wandered at the hem, in folds, and where it lies on average, 0 to 1 across the panel."""
    reach = (0.2 + 0.14 * bunched_step / 8) * _LIMPNESS.get(body, 1.0)
    feet = tuple(0.0 if index in (0, count) else reach * stray(index) for index in range(count + 1))
    means = tuple(
        index / count if index in (0, count) else (index + 0.5 * feet[index] + 0.34 * sway(index)) / count
        for index in range(count + 1)
    )
    return feet, means


def stray(index: int) -> float:
    """A number from -1 to 1 that is always the same for one fold and unlike its neighbour's."""
    return 2.0 * ((index * _GOLDEN + 0.37 * math.sin(index * 2.3)) % 1.0) - 1.0


def sway(index: int) -> float:
    """How far a valley swings out below its middle, in folds."""
    return stray(index * 3 + 1) * 0.16


def hem_at(hem: Sequence[Point], x: float) -> float:
    """Height of the hem line at ``x``, level beyond its ends."""
    if x <= hem[0][0]:
        return hem[0][1]
    for (x1, y1), (x2, y2) in itertools.pairwise(hem):
        if x <= x2:
            return y1 + (y2 - y1) * (x - x1) / (x2 - x1) if x2 > x1 else y2
    return hem[-1][1]


def valley(drape: Drape, index: int) -> Curve:
    """One valley from the heading to the hem as the four points of a cubic; the panel's edges hang straight."""
    x1, x2 = drape.valleys_top[index], drape.valleys_foot[index]
    y1, y2 = drape.top_mm, drape.foot[index] + drape.lift_mm
    drop = y1 - y2
    away = 0.0 if index in (0, len(drape.foot) - 1) else sway(index) * drape.pitch_mm
    return (x1, y1), (x1 + away * 0.3, y1 - drop * 0.3), (x2 + away, y2 + drop * 0.35), (x2, y2)
