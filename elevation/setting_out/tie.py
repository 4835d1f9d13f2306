"""Panels gathered by tie-backs: the hook, the waist, the swept edge and the corner of the hem that it lifts.

The leading edge leaves the heading straight down and sweeps in to the waist as a parabola; it is as long as it was, so
what its way there takes more than the drop, its corner of the hem hangs higher.
"""

from __future__ import annotations

from math import asinh, hypot

from elevation.room.model import TieBack
from elevation.setting_out.facts import Defaults
from elevation.setting_out.model import Point, Profile, Span, TieOut
from elevation.setting_out.profile import height_at

STEPS = 24
"""Straight pieces that a swept edge is drawn and measured by: its area errs by less than a thousandth."""

_NEAREST = 0.05
_MOST_LIFT = 0.8


def swept_mm(aside_mm: float, drop_mm: float) -> float:
    """Length of a parabola that starts straight down and ends ``aside_mm`` aside, ``drop_mm`` lower: by formula."""
    slope = 2 * abs(aside_mm)
    if slope < 1e-9 * drop_mm:
        return drop_mm
    return hypot(slope, drop_mm) / 2 + drop_mm * drop_mm / (2 * slope) * asinh(slope / drop_mm)


def tie_of(
    tie: TieBack,
    side: str,
    drawn: Span,
    top_mm: float,
    hem: tuple[Point, ...],
    stack_mm: float,
    floor: Profile,
    defaults: Defaults,
) -> TieOut | None:
    """How a tie-back gathers one panel.

    Parameters
    ----------
    tie : TieBack
    side : str
        ``left`` or ``right``: which way the panel's fixed edge lies.
    drawn : (float, float)
        The cloth at its heading, mm.
    top_mm : float
        Top of the cloth.
    hem : tuple of points
        Its lower edge as drawn, left to right.
    stack_mm : float
        As wide as the panel is gathered where no waist is given.
    floor, defaults
        What holds for the wall and for the trade.

    Returns
    -------
    TieOut or None
        None for a panel that has no width or no length.
    """
    out = 1.0 if side == "left" else -1.0
    fixed, lead = drawn if side == "left" else (drawn[1], drawn[0])
    hem_mm = (hem[0] if side == "left" else hem[-1])[1]
    wide, drop = abs(lead - fixed), top_mm - hem_mm
    if wide <= 0 or drop <= 0:
        return None
    hook_x = fixed - out * tie.out.mm
    under = height_at(floor, hook_x)
    above = tie.at if tie.hold == "above-floor" else None
    wanted = hem_mm + tie.share * drop if above is None else under + above.mm
    # A tie-back above the heading or below the hem holds nothing: the nearest it can be is shown.
    y = min(max(wanted, hem_mm + _NEAREST * drop), top_mm - _NEAREST * drop)
    waist = min(tie.waist.mm if tie.waist is not None else stack_mm, wide)
    foot = min(waist * defaults.tie_foot, max(wide, waist))
    near, away = hook_x + out * waist, lead - (hook_x + out * waist)
    edge = tuple(
        (near + away * (1 - (step / STEPS) ** 2), top_mm - (top_mm - y) * step / STEPS) for step in range(STEPS + 1)
    )
    long = swept_mm(away, top_mm - y) + hypot(foot - waist, y - hem_mm)
    lift = min(max(long - drop, 0.0), _MOST_LIFT * (y - hem_mm))
    return TieOut(
        hook=(hook_x, y),
        waist=_span(hook_x, near),
        foot=_span(hook_x, hook_x + out * foot),
        edge=edge,
        hem_mm=hem_mm,
        lift_mm=lift,
        is_loop=tie.kind == "loop",
        is_there=tie.there,
        floor_mm=under,
    )


def _span(a: float, b: float) -> Span:
    return (a, b) if a <= b else (b, a)
