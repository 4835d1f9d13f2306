"""Hems: how long a panel is, where its lower edge runs over the real floor, and how far that is from the floor."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from msgspec import Struct

from elevation.room.model import Hem, Panel
from elevation.setting_out.facts import Defaults
from elevation.setting_out.model import OpeningOut, Point, Profile, Span
from elevation.setting_out.profile import extent_over, height_at, stretch

FLOOR_TARGETS = frozenset({"clear", "kiss", "break", "puddle"})


class HemTarget(Struct, frozen=True, gc=False):
    """What a layer's hem is to reach: a gap to the floor (minus: lies on it), a level height, or a length; one is set."""

    gap_mm: float | None = None
    height_mm: float | None = None
    length_mm: float | None = None


class HemOut(Struct, frozen=True, gc=False):
    """A panel's hem: finished length (None: not known yet), its line as drawn, lowest reach, least and greatest gap."""

    finished_mm: float | None
    line: tuple[Point, ...]
    low_mm: float
    gap_low_mm: float
    gap_high_mm: float


def target_of(hem: Hem, openings: Sequence[OpeningOut], defaults: Defaults) -> HemTarget:
    """The target of a layer's hem in plain numbers.

    A sill target is over the lowest covered sill; an apron target below the lowest apron, or below the sill where there
    is none.
    """
    at = hem.at.mm if hem.at else None
    if hem.target == "clear":
        return HemTarget(gap_mm=defaults.hem_clear_mm if at is None else at)
    if hem.target == "kiss":
        return HemTarget(gap_mm=defaults.hem_kiss_mm if at is None else at)
    if hem.target == "break":
        return HemTarget(gap_mm=-(defaults.hem_break_mm if at is None else at))
    if hem.target == "puddle":
        return HemTarget(gap_mm=-(defaults.hem_puddle_mm if at is None else at))
    if hem.target == "sill":
        return HemTarget(height_mm=min(o.bottom_mm for o in openings) + (defaults.hem_sill_mm if at is None else at))
    if hem.target == "apron":
        return HemTarget(height_mm=min(_apron_hem(o, at, defaults) for o in openings))
    if hem.target == "length" and at is not None:
        return HemTarget(length_mm=at)
    # A panel in hand, or a length not typed yet: drawn to clear the floor until one is known.
    return HemTarget()


def _apron_hem(opening: OpeningOut, at: float | None, defaults: Defaults) -> float:
    stool = opening.stool[0] if opening.stool else 0.0
    bottom = opening.bottom_mm - stool - opening.apron_mm
    if opening.apron_mm > 0:
        return bottom - (defaults.hem_apron_mm if at is None else at)
    return opening.bottom_mm - (defaults.hem_below_sill_mm if at is None else at)


def length_in_hand(panel: Panel) -> float | None:
    """The length that the panel really has: as it hangs, else as measured, else as its label says."""
    if panel.hung_length is not None:
        return panel.hung_length.mm
    if panel.measured_length is not None:
        return panel.measured_length.mm
    return None if panel.label_length is None else panel.label_length.mm


def length_by(panel: Panel) -> str:
    """How that length is known: ``hung``, ``measured`` or ``label``; empty where the panel has none of its own."""
    if panel.hung_length is not None:
        return "hung"
    if panel.measured_length is not None:
        return "measured"
    return "" if panel.label_length is None else "label"


def hem_of(
    panel: Panel,
    target: HemTarget,
    top_mm: float,
    floor: Profile,
    closed: Span,
    drawn: Span,
    over: Span,
    clear_mm: float,
    seen: Profile | None = None,
) -> HemOut:
    """The hem of one panel.

    Parameters
    ----------
    panel : Panel
    target : HemTarget
    top_mm : float
        Top of the cloth.
    floor : Profile
    closed, drawn, over : Span
        What it covers closed, as drawn, and all that it travels over.
    clear_mm : float
        The gap it is drawn with where its length is not known.
    seen : Profile or None
        The height that is its target as a rod out of level sees it.

    Notes
    -----
    A panel in hand hangs level and as long as it is, whatever the target; so does a length, a sill or an apron. A panel
    made for the floor follows the floor that it hangs over when closed, and its finished length is the shortest drop.
    """
    finished = length_in_hand(panel)
    if finished is None:
        finished = target.length_mm
    if finished is None and seen is not None:
        return _level(seen, top_mm, floor, closed, drawn, over)
    if finished is None and target.height_mm is not None:
        finished = top_mm - target.height_mm
    low, high = extent_over(floor, over[0], over[1])
    if finished is not None:
        level = top_mm - finished
        return HemOut(finished, _hung(level, floor, drawn), level, level - high, level - low)
    gap = clear_mm if target.gap_mm is None else target.gap_mm
    floor_low, floor_high = extent_over(floor, closed[0], closed[1])
    line = stretch(floor, drawn[0], drawn[1], max(gap, 0.0))
    known = top_mm - floor_high - gap if target.gap_mm is not None else None
    return HemOut(known, line, floor_low + gap, gap, gap)


def _level(seen: Profile, top_mm: float, floor: Profile, closed: Span, drawn: Span, over: Span) -> HemOut:
    """A hem that is level under a rod which is not: its finished length is the shortest drop."""
    low, _ = extent_over(seen, over[0], over[1])
    _, high = extent_over(seen, closed[0], closed[1])
    places = [*over, *(x for x, _ in (*floor.points, *seen.points) if over[0] < x < over[1])]
    gaps = [height_at(seen, x) - height_at(floor, x) for x in places]
    return HemOut(top_mm - high, stretch(seen, drawn[0], drawn[1]), low, min(gaps), max(gaps))


def _hung(level: float, floor: Profile, drawn: Span) -> tuple[Point, ...]:
    """A level edge, lying on the floor where the floor is higher."""
    left, right = drawn
    low, high = extent_over(floor, left, right)
    if level >= high:
        return ((left, level), (right, level))
    if level <= low:
        return stretch(floor, left, right)
    points: list[Point] = []
    line = stretch(floor, left, right)
    for (x0, y0), (x1, y1) in pairwise(line):
        points.append((x0, max(y0, level)))
        if (y0 - level) * (y1 - level) < 0:
            points.append((x0 + (level - y0) / (y1 - y0) * (x1 - x0), level))
    points.append((line[-1][0], max(line[-1][1], level)))
    return tuple(points)
