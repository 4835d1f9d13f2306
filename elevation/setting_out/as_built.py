"""A layer as it hangs: what was read on the wall after hanging takes the place of the plan.

Readings from the rod's underside down to the floor give the line that its axis really has. Where the floor's own profile
was measured that line stands over the datum; where it was not, the floor counts as level. Cloth drops from that line, so
the floor is seen from it: the hem's gap is then right wherever the error lies, in the rod or in the floor.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec.structs import replace

from elevation.room.model import Built, Layer
from elevation.setting_out.facts import WallFacts
from elevation.setting_out.model import BracketOut, Point, Profile, SupportOut
from elevation.setting_out.profile import height_at
from elevation.units.tolerance import TOUCH_MM

NOTHING = Built()


def is_hung(layer: Layer) -> bool:
    """Whether anything of a layer was read after hanging."""
    return (
        layer.built != NOTHING
        or any(bracket.height is not None for bracket in layer.brackets)
        or any(panel.hung_length is not None for panel in layer.panels)
    )


def as_hung(
    layer: Layer, support: SupportOut, brackets: tuple[BracketOut, ...], facts: WallFacts
) -> tuple[SupportOut, tuple[BracketOut, ...], WallFacts]:
    """Rod, brackets and what the cloth sees of the wall, with the readings of ``layer.built`` in place of the plan.

    Parameters
    ----------
    layer : Layer
    support : SupportOut
        The rod as planned.
    brackets : tuple of BracketOut
        As planned, left to right.
    facts : WallFacts

    Returns
    -------
    support, brackets, facts
        The rod's height is that of its axis midway between the outer readings; a bracket stands on the line unless its
        own height was read. The end brackets are as far apart as they were read, the difference to the plan shared
        between them (all of it at the other one where one is held at a stud): which of them is off cannot be told, so
        each stands within half the difference. The floor is lowered by what the line rises over the rod's height.
        Without readings rod and brackets are the very same objects; under a level rod the wall's facts are too.
    """
    if layer.built == NOTHING:
        return support, brackets, _under(support, facts)
    brackets = _apart(layer, brackets, support.tilt)
    line = _line(layer.built, support, brackets, facts)
    if line is None:
        return support, brackets, _under(support, facts)
    height_mm = (line.points[0][1] + line.points[-1][1]) / 2
    own = {bracket.id for bracket in layer.brackets if bracket.height is not None}
    hung = tuple(
        bracket if bracket.ref[-1] in own else _moved(bracket, up_mm=height_at(line, bracket.x_mm) - bracket.height_mm)
        for bracket in brackets
    )
    heights = [y for _, y in line.points]
    is_level = max(heights) - min(heights) <= TOUCH_MM
    read = replace(support, height_mm=height_mm, planned_mm=support.height_mm, line=None if is_level else line)
    return read, hung, replace(facts, floor=seen_floor(facts.floor, line, height_mm))


def _under(support: SupportOut, facts: WallFacts) -> WallFacts:
    """What the cloth on a rod that is out of level by plan sees of the wall."""
    if support.line is None:
        return facts
    return replace(facts, floor=seen_floor(facts.floor, support.line, support.height_mm))


def _line(built: Built, support: SupportOut, brackets: Sequence[BracketOut], facts: WallFacts) -> Profile | None:
    """The rod's axis over the datum, through the readings: at the end brackets (or ends) and in the middle."""
    left = brackets[0].x_mm if brackets else support.left_mm
    right = brackets[-1].x_mm if brackets else support.right_mm
    points: list[Point] = []
    for x, reading in ((left, built.floor_left), ((left + right) / 2, built.floor_middle), (right, built.floor_right)):
        if reading is not None:
            # The tape stands on the floor of today, under what is still to be laid.
            floor = height_at(facts.floor, x) - facts.floor_to_come_mm
            points.append((x, floor + reading.mm + support.diameter_mm / 2))
    if len(points) == 1 and support.tilt:
        # One reading says how high it hangs; how steep is then as planned.
        ((x, y),) = points
        points = [(end, y + support.tilt * (end - x)) for end in (support.left_mm, support.right_mm)]
    return Profile(tuple(points)) if points else None


def seen_floor(floor: Profile, line: Profile, height_mm: float) -> Profile:
    """The floor as it lies under a level rod at ``height_mm`` that hangs as far over it as the real line does."""
    places = sorted({x for x, _ in (*floor.points, *line.points)})
    return Profile(tuple((x, height_at(floor, x) - height_at(line, x) + height_mm) for x in places), floor.known)


def _apart(layer: Layer, brackets: tuple[BracketOut, ...], tilt: float) -> tuple[BracketOut, ...]:
    read = layer.built.bracket_to_bracket
    if read is None or len(brackets) < 2:
        return brackets
    more_mm = read.mm - (brackets[-1].x_mm - brackets[0].x_mm)
    held: Mapping[str, str] = {bracket.id: bracket.place.hold for bracket in layer.brackets}
    at_stud = [held[bracket.ref[-1]] == "from-wall-left" for bracket in (brackets[0], brackets[-1])]
    share = 0.5 if at_stud[0] == at_stud[1] else float(at_stud[1])
    back, on = -more_mm * share, more_mm * (1.0 - share)
    first = _moved(brackets[0], along_mm=back, up_mm=back * tilt)
    last = _moved(brackets[-1], along_mm=on, up_mm=on * tilt)
    return (first, *brackets[1:-1], last)


def _moved(bracket: BracketOut, *, along_mm: float = 0.0, up_mm: float = 0.0) -> BracketOut:
    left, bottom, right, top = bracket.plate
    return replace(
        bracket,
        x_mm=bracket.x_mm + along_mm,
        height_mm=bracket.height_mm + up_mm,
        built=True,
        shift_mm=bracket.shift_mm + along_mm,
        plate=(left + along_mm, bottom + up_mm, right + along_mm, top + up_mm),
    )
