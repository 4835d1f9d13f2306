"""The wall's own dimensions: the measuring chain, the whole width, the ceiling's heights."""

from __future__ import annotations

from itertools import pairwise

from elevation.room.model import Ref
from elevation.setting_out.model import OpeningOut, Profile, SetOut
from elevation.sheet.annotation.figures import figure, figures
from elevation.sheet.annotation.model import Chain, Segment
from elevation.sheet.paths import height_at
from elevation.sheet.records import Ink
from elevation.words import Style

NOT_MEASURED = "?"
"""Stands where a figure would be made up: the drawing assumes a length that nobody measured."""
LEAST_MM = 0.5
"""Shorter links are no dimension: a casing that is not there, a gap that is closed."""


def foot_mm(set_out: SetOut) -> float:
    """The lowest point of the wall's outline: extension lines below it start there."""
    return min(0.0, min(height for _, height in set_out.floor.points))


def edge_mm(set_out: SetOut, height: float, side: str) -> float:
    """Where the wall's outline is at a height, at its left or right side: a raked ceiling brings it inward."""
    points = set_out.ceiling.points
    outer = 0.0 if side == "left" else set_out.width_mm
    if height_at(set_out.ceiling, outer) >= height - LEAST_MM:
        return outer
    inward = sorted(points, key=lambda point: abs(point[0] - outer))
    before = (outer, height_at(set_out.ceiling, outer))
    for x, y in inward:
        if y >= height:
            return before[0] + (x - before[0]) * (height - before[1]) / (y - before[1]) if y > before[1] else x
        before = (x, y)
    return outer


def wall_ref(set_out: SetOut) -> Ref:
    """The wall's Ref."""
    return (set_out.wall,)


def measuring_chain(set_out: SetOut, style: Style) -> Chain | None:
    """Corner, casing, opening, casing ... corner; measured links keep their figure."""
    links = [link for link in set_out.chain.links if link.right_mm - link.left_mm > LEAST_MM]
    if len(links) < 2:
        return None
    texts = figures([link.right_mm - link.left_mm for link in links], style, [link.typed for link in links])
    foot = foot_mm(set_out)
    unplaced = {opening.ref for opening in set_out.openings if not opening.placed}
    segments = []
    for link, text in zip(links, texts, strict=True):
        is_assumed = link.key.startswith("gap") and (
            link.ref in unplaced or (link.key == "gap-right" and not set_out.known_width)
        )
        segments.append(
            Segment(
                link.ref,
                _field_of(link.key),
                link.left_mm,
                link.right_mm,
                foot,
                foot,
                (NOT_MEASURED if is_assumed else text,),
                Ink.GHOST if is_assumed else Ink.THIN,
                priority=_rank(link.key),
            )
        )
    return Chain(wall_ref(set_out), tuple(segments))


def _field_of(key: str) -> str:
    kind = key.split(":", 1)[0]
    return {"casing-left": "casing", "casing-right": "casing", "gap-right": "gap_right"}.get(kind, kind)


def _rank(key: str) -> int:
    # Openings first, then gaps: a casing is the one that can best be led out.
    return 2 if key.startswith("width") else 1 if key.startswith("gap") else 0


def whole_width(set_out: SetOut, style: Style) -> Chain:
    """The wall from end to end."""
    foot = foot_mm(set_out)
    known = set_out.known_width
    text = figure(set_out.width_mm, style) if known else NOT_MEASURED
    ref = wall_ref(set_out)
    ink = Ink.THIN if known else Ink.GHOST
    return Chain(ref, (Segment(ref, "width", 0.0, set_out.width_mm, foot, foot, (text,), ink),))


def is_level(profile: Profile) -> bool:
    """Whether a ceiling or floor is level over the whole wall."""
    heights = [height for _, height in profile.points]
    return max(heights) - min(heights) < LEAST_MM


def whole_height(set_out: SetOut, style: Style) -> Chain | None:
    """Floor to ceiling at the left end."""
    if not set_out.ceiling.known:
        return None
    height = height_at(set_out.ceiling, 0.0)
    ref = wall_ref(set_out)
    segment = Segment(ref, "ceiling.0.height", 0.0, height, 0.0, 0.0, (figure(height, style),))
    return Chain(ref, (segment,))


def far_heights(set_out: SetOut, style: Style) -> tuple[Chain, ...]:
    """Heights of a ceiling that is not level: its right end, and a peak between the ends."""
    if not set_out.ceiling.known or is_level(set_out.ceiling):
        return ()
    ref, width = wall_ref(set_out), set_out.width_mm
    chains = []
    last = len(set_out.ceiling.points) - 1
    right = height_at(set_out.ceiling, width)
    low = height_at(set_out.floor, width)
    text = figure(right - low, style)
    chains.append(Chain(ref, (Segment(ref, f"ceiling.{last}.height", low, right, width, width, (text,)),)))
    peak = max(range(last + 1), key=lambda index: set_out.ceiling.points[index][1])
    x, height = set_out.ceiling.points[peak]
    if height > right + LEAST_MM and height > height_at(set_out.ceiling, 0.0) + LEAST_MM:
        segment = Segment(ref, f"ceiling.{peak}.height", 0.0, height, width, x, (figure(height, style),))
        chains.append(Chain(ref, (segment,)))
    return tuple(chains)


def opening_heights(set_out: SetOut, opening: OpeningOut, style: Style) -> Chain | None:
    """Floor, sill, head, ceiling of an opening that no treatment covers."""
    return heights_chain(set_out, wall_ref(set_out), opening_levels(opening), style)


Level = tuple[float, Ref, str, bool]
"""Height, what it belongs to, the field that its segment (from the level below) opens, whether it is held."""


def opening_levels(opening: OpeningOut) -> list[Level]:
    """The sill and head of an opening."""
    levels: list[Level] = []
    if opening.bottom_mm > LEAST_MM:
        levels.append((opening.bottom_mm, opening.ref, "sill", False))
    levels.append((opening.top_mm, opening.ref, "height", False))
    return levels


def heights_chain(set_out: SetOut, owner: Ref, levels: list[Level], style: Style) -> Chain | None:
    """A chain upward from the floor through ``levels``, to the ceiling where that is level and known."""
    rising = sorted(levels, key=lambda level: level[0])
    top = rising[-1]
    ceiling = set_out.ceiling
    if ceiling.known and is_level(ceiling) and ceiling.points[0][1] > top[0] + LEAST_MM:
        # The gap under the ceiling is where the rod may be held from above.
        rising.append((ceiling.points[0][1], wall_ref(set_out), "ceiling.0.height", False))
    merged: list[Level] = []
    below = 0.0
    for level in rising:
        if level[0] > below + LEAST_MM:
            merged.append(level)
            below = level[0]
    if not merged:
        return None
    heights = [0.0, *(level[0] for level in merged)]
    texts = figures([high - low for low, high in pairwise(heights)], style)
    segments = tuple(
        Segment(
            level[1],
            level[2],
            low,
            level[0],
            edge_mm(set_out, low, "left"),
            edge_mm(set_out, level[0], "left"),
            (text,),
            held=level[3],
        )
        for level, low, text in zip(merged, heights, texts, strict=False)
    )
    return Chain(owner, segments)
