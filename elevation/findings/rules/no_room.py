"""no-room: the gap between head and ceiling cannot hold a rod that is clear of both.

Broken, wall mounts; stands in place of ``rod-low`` and ``rod-under-ceiling``, which would contradict each other.
Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing_mount import mount_on
from elevation.findings.limits import authority_of, limit_mm
from elevation.findings.model import Change, Finding, Rule, Scene, Sticking, Weight
from elevation.findings.naming import noun_of, where
from elevation.findings.shapes import rod_over
from elevation.setting_out.model import TreatmentOut
from elevation.units.tolerance import falls_short
from elevation.words import Message, Mm, msg


def needed_mm(scene: Scene) -> float:
    """The least gap that holds both: the room's own figure, else what the two limits need together."""
    if "no-room" in scene.room.limits:
        return limit_mm(scene, "no-room")
    return limit_mm(scene, "rod-low") + limit_mm(scene, "rod-under-ceiling")


def is_tight(scene: Scene, treatment: TreatmentOut) -> bool:
    """Whether the gap over the covered openings is too small for both limits."""
    gap = treatment.clearances.head_to_ceiling_mm
    return gap is not None and falls_short(gap, needed_mm(scene), scene.half_mm)


def _text(scene: Scene, treatment: TreatmentOut, gap: float) -> Message:
    if gap < 0:
        return msg(
            "{where}: the ceiling comes down {by} below the head; fix the {support} to the ceiling, or hang it "
            "in the reveal.",
            support=noun_of(treatment.layers[0]),
            where=where(treatment),
            by=Mm(-gap),
        )
    return msg(
        "{where}: the gap between head and ceiling is {gap}, too small to keep a {support} {low} above the head and "
        "{ceiling} below the ceiling; split the gap, fix the {support} to the ceiling, or hang it in the reveal.",
        support=noun_of(treatment.layers[0]),
        where=where(treatment),
        gap=Mm(gap),
        low=Mm(limit_mm(scene, "rod-low"), about=True),
        ceiling=Mm(limit_mm(scene, "rod-under-ceiling"), about=True),
    )


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    if not treatment.layers or not treatment.openings or not is_tight(scene, treatment):
        return
    gap = treatment.clearances.head_to_ceiling_mm
    assert gap is not None  # is_tight saw it
    top = max(opening.casing_top_mm for opening in treatment.openings)
    middle = (treatment.openings[0].left_mm + treatment.openings[-1].right_mm) / 2
    yield Finding(
        "no-room",
        Weight.BROKEN,
        treatment.ref,
        _text(scene, treatment, gap),
        authority_of(scene, "no-room"),
        measured_mm=gap,
        limit_mm=needed_mm(scene),
        at=(middle, top + gap / 2),
    )


def _stickings(scene: Scene, treatment: TreatmentOut) -> Iterator[Sticking]:
    gap = treatment.clearances.head_to_ceiling_mm
    if gap is None or gap <= 0 or not treatment.openings or not is_tight(scene, treatment):
        return
    for layer in treatment.layers:
        middle = rod_over(treatment, layer, gap / 2)
        yield Sticking("rod-height", layer.ref, middle, msg("splits the gap between head and ceiling"), 1, "no-room")


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    yield from mount_on(scene, finding.subject, "ceiling")
    yield from mount_on(scene, finding.subject, "reveal")


RULE = Rule("no-room", msg("room for the rod between head and ceiling"), _find, changes=_changes, stickings=_stickings)
