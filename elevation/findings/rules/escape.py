"""escape: in a sleeping room, open panels or rod stand inside the opening that a sleeper climbs out of.

IRC R310.2: net clear area 5.7 ft2 (5.0 at grade floor), height 24 in, width 20 in, sill at most 44 in above the floor; the
local code governs. Wall, ceiling and reveal mounts: what hangs on a sash moves out of the way with it. Stop
where rod or open cloth take away what the code asks for; consider where the window alone does not have it. Only windows
marked as the escape. The clear opening is taken between the jambs up to the lowest point of
the head: half of the height for a double-hung, half of the width for a sliding sash (the worse half), none where fixed.
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from elevation.findings.changing import ends_or_end, rod_height
from elevation.findings.changing_cloth import narrower
from elevation.findings.limits import authority_of, limit_mm, said_limit
from elevation.findings.looking import layer_at, noun_at, panel_at, treatment_at
from elevation.findings.model import FIXED, Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import noun_of, opening_name
from elevation.findings.shapes import Rect, boxes_before, cloth, hanging, height_at, meet, rod_rects
from elevation.room.model import Ref
from elevation.setting_out.model import OpeningOut, TreatmentOut
from elevation.units.tolerance import TOUCH_MM, exceeds, falls_short, less_ratio
from elevation.words import Message, Mm, Ratio, msg

_FT2 = 304.8 * 304.8
_M2 = 1e6


class Free(Struct, frozen=True, gc=False):
    """What is left of a clear opening, in mm, and what takes most of it (None where nothing does)."""

    width_mm: float
    height_mm: float
    taken_by: Ref | None
    taken_mm: float


def clear_parts(opening: OpeningOut) -> tuple[Rect, ...]:
    """The clear opening when the sash is open; more than one rectangle where either may be the open one."""
    top = min(opening.left_top_mm, opening.right_top_mm)  # the springing of an arch
    left, bottom, right = opening.left_mm, opening.bottom_mm, opening.right_mm
    if opening.sash == "fixed":
        return ()
    if opening.sash == "double-hung":
        return ((left, bottom, right, bottom + (top - bottom) / 2),)
    if opening.sash == "sliding":
        middle = (left + right) / 2
        return (left, bottom, middle, top), (middle, bottom, right, top)
    return ((left, bottom, right, top),)


def _free(treatment: TreatmentOut, part: Rect) -> Free:
    """What open cloth and rods leave of one clear rectangle."""
    left, bottom, right, top = part
    height, taken_by, taken = top - bottom, None, 0.0
    spans: list[tuple[float, float]] = []
    for layer in treatment.layers:
        support = layer.support
        for kind, (along_left, low, along_right, high), _, _ in rod_rects(support):
            if kind != "rod" or not meet((along_left, low, along_right, high), part):
                continue
            free = max(low - bottom, top - high)
            if free < height:
                height, taken_by, taken = free, layer.ref, top - bottom - free
        for panel in hanging(layer):
            # A stack longer than its own wall goes on round the corner.
            if panel.open[1] - panel.open[0] > TOUCH_MM and meet(cloth(panel, panel.open, support), part):
                spans.append(panel.open)
                wide = min(panel.open[1], right) - max(panel.open[0], left)
                if wide > taken:
                    taken_by, taken = panel.ref if panel.ref[:4] == layer.ref else layer.ref, wide
    for rect in boxes_before(treatment):
        if meet(rect, part) and rect[1] - bottom < height:
            height, taken_by, taken = rect[1] - bottom, treatment.ref, top - rect[1]
    return Free(_widest_gap(left, right, spans), max(height, 0.0), taken_by, taken)


def _widest_gap(left: float, right: float, spans: list[tuple[float, float]]) -> float:
    widest, at = 0.0, left
    for low, high in sorted(spans):
        widest = max(widest, min(low, right) - at)
        at = max(at, high)
    return max(widest, right - at, 0.0)


def _lacks(scene: Scene, wide: float, high: float) -> Message | None:
    """What is missing of the code's opening, in words; None where nothing is."""
    if falls_short(wide, limit_mm(scene, "escape-width"), scene.half_mm):
        return msg("{wide} wide where {limit} is asked for", wide=Mm(wide), limit=said_limit(scene, "escape-width"))
    if falls_short(high, limit_mm(scene, "escape-height"), scene.half_mm):
        return msg("{high} high where {limit} is asked for", high=Mm(high), limit=said_limit(scene, "escape-height"))
    asked, grade = scene.trade.limits["escape-area"].value, scene.trade.limits["escape-area-grade"].value
    if less_ratio(wide * high, asked):
        if scene.room.unit == "in":
            return msg(
                "{area} square feet where {limit} are asked for ({grade} at grade floor)",
                area=Ratio(wide * high / _FT2, 1),
                limit=Ratio(asked / _FT2, 1),
                grade=Ratio(grade / _FT2, 1),
            )
        return msg(
            "{area} square metres where {limit} are asked for ({grade} at grade floor)",
            area=Ratio(wide * high / _M2, 2),
            limit=Ratio(asked / _M2, 2),
            grade=Ratio(grade / _M2, 2),
        )
    return None


def _caution() -> Message:
    return msg("Local code governs: ask the building department before you rely on this window as a way out.")


def _stop(scene: Scene, treatment: TreatmentOut, opening: OpeningOut) -> Finding | None:
    worst: tuple[Free, Message] | None = None
    for part in clear_parts(opening):
        free = _free(treatment, part)
        if free.taken_by is None or free.taken_mm <= TOUCH_MM:
            continue
        lacks = _lacks(scene, free.width_mm, free.height_mm)
        if lacks is not None and (worst is None or free.taken_mm > worst[0].taken_mm):
            worst = free, lacks
    if worst is None:
        return None
    free, lacks = worst
    assert free.taken_by is not None  # only those were kept
    text = msg(
        "{opening}: {support} or open cloth takes {taken} of the way out and leaves an opening {lacks}.",
        support=noun_at(scene, free.taken_by if len(free.taken_by) > 3 else treatment.ref),
        opening=opening_name(opening),
        taken=Mm(free.taken_mm),
        lacks=lacks,
    )
    return Finding(
        "escape",
        Weight.STOP,
        free.taken_by,
        text,
        authority_of(scene, "escape-area"),
        measured_mm=-free.taken_mm,
        limit_mm=0.0,
        at=((opening.left_mm + opening.right_mm) / 2, (opening.bottom_mm + opening.top_mm) / 2),
        caution=_caution(),
    )


def _alone(scene: Scene, opening: OpeningOut) -> Finding | None:
    """The window itself, without any cloth."""
    parts = clear_parts(opening)
    sill = opening.bottom_mm - height_at(scene.set_out.floor, (opening.left_mm + opening.right_mm) / 2)
    name = opening_name(opening)
    measured, limit = None, None
    if not parts:
        text = msg("{opening}: it is marked as the way out but its sash is fixed.", opening=name)
    elif exceeds(sill, limit_mm(scene, "escape-sill"), scene.half_mm):
        measured, limit = sill, limit_mm(scene, "escape-sill")
        text = msg(
            "{opening}: the sill of the way out is {sill} above the floor, {more} more than {limit}.",
            opening=name,
            sill=Mm(sill),
            more=Mm(sill - limit),
            limit=said_limit(scene, "escape-sill"),
        )
    else:
        lacks = _lacks(scene, parts[0][2] - parts[0][0], parts[0][3] - parts[0][1])
        if lacks is None:
            return None
        text = msg("{opening}: even without cloth the way out is {lacks}.", opening=name, lacks=lacks)
    at = ((opening.left_mm + opening.right_mm) / 2, opening.bottom_mm)
    return Finding(
        "escape",
        Weight.CONSIDER,
        opening.ref,
        text,
        authority_of(scene, "escape-sill"),
        measured_mm=measured,
        limit_mm=limit,
        at=at,
        caution=_caution(),
    )


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not scene.room.sleeping:
        return
    for opening in treatment.openings:
        if opening.escape:
            found = _stop(scene, treatment, opening) or _alone(scene, opening)
            if found is not None:
                yield found


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    if len(finding.subject) < 4:
        return
    layer = layer_at(scene, finding.subject)
    openings = [opening for opening in treatment_at(scene, finding.subject).openings if opening.escape]
    if len(finding.subject) == 4:
        top = max(part[3] for opening in openings for part in clear_parts(opening))
        yield from rod_height(scene, layer.ref, top + layer.support.diameter_mm / 2)
        return
    panel = panel_at(scene, finding.subject)
    taken = max(min(panel.open[1], one.right_mm) - max(panel.open[0], one.left_mm) for one in openings)
    yield from ends_or_end(scene, finding.subject, panel.side, taken)
    yield from narrower(scene, finding.subject, taken)


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    if not scene.room.sleeping:
        return
    for layer in treatment.layers:
        for opening in treatment.openings:
            for part in clear_parts(opening) if opening.escape else ():
                reason = msg(
                    "the {support} just clears the way out of {opening}",
                    support=noun_of(layer),
                    opening=opening_name(opening),
                )
                yield Sticking("rod-height", layer.ref, part[3] + layer.support.diameter_mm / 2, reason)


RULE = Rule("escape", msg("the way out of a sleeping room"), _find, changes=_changes, stickings=_stickings, mounts=FIXED)
