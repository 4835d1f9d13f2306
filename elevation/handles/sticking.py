"""Where a dragged handle comes to rest, and why.

A handle goes from graduation to graduation of the figure that is held. Within 8 pixels of a place that
means something it is caught there, and stays until the pointer is more than 12 pixels away.
"""

from __future__ import annotations

from collections.abc import Iterable

from msgspec.structs import replace

from elevation.findings.all_rules import stickings
from elevation.findings.model import Scene, Sticking
from elevation.handles.all_handles import own_places
from elevation.handles.model import Handle, Stuck
from elevation.handles.ranks import HARD
from elevation.room.model import Ref
from elevation.setting_out.model import TreatmentOut
from elevation.units import quantise
from elevation.units.tolerance import TOUCH_MM

CAPTURE_PX = 8.0
"""As near as this to a place, a handle is caught."""
RELEASE_PX = 12.0
"""Farther than this from where it was caught, it is let go."""
POINT_PX = 2.0
"""The nearest place within this is what the person points at, whatever ranks before it: no place is out of reach."""


def landing_mm(handle: Handle, wanted_mm: float, graduation_mm: float) -> float:
    """The wall coordinate nearest to ``wanted_mm`` at which the held figure stands on a graduation, within the range."""
    inside_mm = min(max(wanted_mm, handle.low_mm), handle.high_mm)
    shown_mm = handle.shown_mm(inside_mm)
    marked_mm = quantise(shown_mm, graduation_mm)
    value_mm = handle.from_shown(marked_mm)
    if handle.low_mm - TOUCH_MM <= value_mm <= handle.high_mm + TOUCH_MM:
        return value_mm
    # The nearest mark lies outside the range: take the next one towards the inside.
    step_mm = graduation_mm if marked_mm < shown_mm else -graduation_mm
    value_mm = handle.from_shown(marked_mm + step_mm)
    return value_mm if handle.low_mm - TOUCH_MM <= value_mm <= handle.high_mm + TOUCH_MM else inside_mm


def candidates(handle: Handle, scene: Scene, *, alone: bool = False, guided: bool = False) -> tuple[Sticking, ...]:
    """The places where ``handle`` may stick, on the graduations of its held figure; computed once, at press.

    Parameters
    ----------
    handle : Handle
        Its range already narrowed to where it can go in this gesture.
    scene : Scene
        The room and its set-out at press.
    alone : bool
        Only this end moves where both would.
    guided : bool
        The lines of proportion are shown, so that handles stick to them as well.

    Returns
    -------
    tuple of Sticking
        By rank, then by place; of places that fall together the first in rank stays.
    """
    graduation_mm = scene.room.graduation_mm
    found: dict[float, Sticking] = {}
    for sticking in sorted(_all(handle, scene, alone, guided), key=lambda place: place.rank):
        if not handle.low_mm - TOUCH_MM <= sticking.value_mm <= handle.high_mm + TOUCH_MM:
            continue
        value_mm = landing_mm(handle, sticking.value_mm, graduation_mm)
        key = round(value_mm, 3)
        if key not in found:
            found[key] = replace(sticking, value_mm=value_mm)
    return tuple(sorted(found.values(), key=lambda place: (place.rank, place.value_mm)))


def _all(handle: Handle, scene: Scene, alone: bool, guided: bool) -> Iterable[Sticking]:
    yield Sticking(handle.axis, handle.ref, handle.low_mm, handle.low_why, HARD)
    yield Sticking(handle.axis, handle.ref, handle.high_mm, handle.high_why, HARD)
    # Before the rules' places: where both name one place, ours says more.
    yield from own_places(handle, scene.room, scene.set_out, scene.trade, alone)
    treatment = _treatment_of(handle, scene)
    if treatment is not None:
        for sticking in stickings(scene, treatment):
            if sticking.axis == handle.axis and _is_about(sticking.ref, handle.ref):
                yield sticking
    if guided:
        # Loaded when the lines are first shown.
        from elevation.handles.guide_places import guide_places

        yield from guide_places(handle, scene, alone)


def _is_about(ref: Ref, handle_ref: Ref) -> bool:
    """Whether one lies in the other: a rule may name the treatment of a layer, or one panel of a layer's hem."""
    shared = min(len(ref), len(handle_ref))
    return ref[:shared] == handle_ref[:shared]


def _treatment_of(handle: Handle, scene: Scene) -> TreatmentOut | None:
    for treatment in scene.set_out.treatments:
        if handle.ref[:3] == treatment.ref:
            return treatment
    return None


def stick(
    handle: Handle,
    wanted_mm: float,
    candidates: tuple[Sticking, ...],
    graduation_mm: float,
    mm_per_px: float,
    held_on: Stuck | None,
    free: bool,
) -> Stuck:
    """Where the handle rests with the pointer at ``wanted_mm``.

    Parameters
    ----------
    handle : Handle
    wanted_mm : float
        Wall coordinate of the pointer along the handle's axis.
    candidates : tuple of Sticking
        From ``candidates``.
    graduation_mm : float
        The tape's smallest mark.
    mm_per_px : float
        How many mm of wall one pixel shows.
    held_on : Stuck or None
        Where it rested just before.
    free : bool
        No sticking but to graduations and hard limits.

    Returns
    -------
    Stuck
        ``reason`` None on a bare graduation.
    """
    if wanted_mm <= handle.low_mm:
        return Stuck(landing_mm(handle, handle.low_mm, graduation_mm), handle.low_why)
    if wanted_mm >= handle.high_mm:
        return Stuck(landing_mm(handle, handle.high_mm, graduation_mm), handle.high_why)
    if not free:
        best = _pointed_at(wanted_mm, candidates, POINT_PX * mm_per_px)
        if best is None:
            best = _first(wanted_mm, candidates, CAPTURE_PX * mm_per_px)
            if held_on is not None and _holds(held_on, wanted_mm, best, mm_per_px):
                return held_on
        if best is not None:
            return Stuck(best.value_mm, best.reason, best.breaks)
    return Stuck(landing_mm(handle, wanted_mm, graduation_mm))


def _holds(held_on: Stuck, wanted_mm: float, best: Sticking | None, mm_per_px: float) -> bool:
    """Whether the place where the handle was caught still holds it."""
    away_mm = abs(wanted_mm - held_on.value_mm)
    if held_on.reason is None or away_mm > RELEASE_PX * mm_per_px + TOUCH_MM:
        return False
    # Beyond its own capture, what holds gives way to a nearer place.
    return best is None or away_mm <= CAPTURE_PX * mm_per_px or _away(wanted_mm, best) >= away_mm


def _pointed_at(wanted_mm: float, candidates: tuple[Sticking, ...], reach_mm: float) -> Sticking | None:
    """The nearest place, if the pointer is right on it."""
    nearest = min(candidates, key=lambda place: (_away(wanted_mm, place), place.rank), default=None)
    return nearest if nearest is not None and _away(wanted_mm, nearest) <= reach_mm + TOUCH_MM else None


def _first(wanted_mm: float, candidates: tuple[Sticking, ...], reach_mm: float) -> Sticking | None:
    """Of the places within reach, the first in rank, and of those the nearest."""
    near = [place for place in candidates if _away(wanted_mm, place) <= reach_mm + TOUCH_MM]
    return min(near, key=lambda place: (place.rank, _away(wanted_mm, place)), default=None)


def _away(wanted_mm: float, place: Sticking) -> float:
    return abs(wanted_mm - place.value_mm)
