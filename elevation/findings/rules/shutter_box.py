"""shutter-box: a bracket is to be fixed where the box of a roller shutter is, which holds no screw.

Stop; wall mounts; a bracket that hangs there already, or that a mounting board carries, is not drilled there. The box is
hollow, thin and holds the shutter: common practice, no source; how wide it is beside the opening is only likely.
"""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import bracket_name, bracket_to, ends_or_end, rod_height
from elevation.findings.changing_mount import mount_on
from elevation.findings.limits import common_practice
from elevation.findings.looking import bracket_at, ends_of, layer_at
from elevation.findings.model import Change, Finding, Rule, Scene, Weight
from elevation.findings.naming import where
from elevation.findings.shapes import meet
from elevation.setting_out.model import BracketOut, TreatmentOut, ZoneOut
from elevation.words import msg


def _hit(scene: Scene, bracket: BracketOut) -> ZoneOut | None:
    if bracket.is_there or bracket.on != "wall":
        return None
    for zone in scene.set_out.zones:
        if zone.kind == "shutter-box" and meet((zone.left_mm, zone.bottom_mm, zone.right_mm, zone.top_mm), bracket.plate):
            return zone
    return None


def _find(scene: Scene, treatment: TreatmentOut) -> Iterator[Finding]:
    for layer in treatment.layers:
        for bracket in layer.brackets if layer.board is None else ():
            if _hit(scene, bracket) is not None:
                text = msg(
                    "{where}: {bracket} is to be fixed over the roller shutter's box, where nothing holds.",
                    where=where(treatment),
                    bracket=bracket_name(scene, bracket.ref),
                )
                at = (bracket.x_mm, bracket.height_mm)
                yield Finding("shutter-box", Weight.STOP, bracket.ref, text, common_practice(), at=at)


def _changes(scene: Scene, finding: Finding) -> Iterator[Change]:
    bracket, layer = bracket_at(scene, finding.subject), layer_at(scene, finding.subject)
    zone = _hit(scene, bracket)
    if zone is None:  # pragma: no cover - the finding was made of it
        return
    yield from rod_height(scene, finding.subject, bracket.height_mm + zone.top_mm - bracket.plate[1])
    to_left = bracket.x_mm - (bracket.plate[2] - zone.left_mm)
    to_right = bracket.x_mm + zone.right_mm - bracket.plate[0]
    ends = ends_of(layer)
    if ends is not None and ends[0].ref == bracket.ref:
        yield from ends_or_end(scene, finding.subject, "left", bracket.x_mm - to_left)
    if ends is not None and ends[1].ref == bracket.ref:
        yield from ends_or_end(scene, finding.subject, "right", to_right - bracket.x_mm)
    for wanted in sorted((to_left, to_right), key=lambda x: abs(x - bracket.x_mm)):
        yield from bracket_to(scene, finding.subject, wanted)
    yield from mount_on(scene, finding.subject[:3], "ceiling")


RULE = Rule("shutter-box", msg("brackets off the boxes of roller shutters"), _find, changes=_changes)
