"""The part of ``meets`` about the ceiling: a rod on the wall that would pass through it, as under a slope."""

from __future__ import annotations

from collections.abc import Iterator

from elevation.findings.changing import rod_height
from elevation.findings.changing_mount import mount_on
from elevation.findings.model import Change, Finding, Scene
from elevation.findings.naming import noun_of, where
from elevation.findings.rules.meets_told import stop
from elevation.findings.shapes import lowest_under_ceiling
from elevation.setting_out.model import LayerOut, TreatmentOut
from elevation.setting_out.tilt import under_line
from elevation.units.tolerance import TOUCH_MM
from elevation.words import Mm, msg


def over_mm(scene: Scene, layer: LayerOut) -> float:
    """By how much the rod's upper edge stands above the ceiling, where it does most; negative: below it."""
    if not scene.set_out.ceiling.known:
        return -1.0
    return layer.support.diameter_mm / 2 - under_line(layer.support, scene.set_out.ceiling)


def find(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Finding]:
    """A finding where a rod on the wall passes into the ceiling; what hangs on the ceiling takes its height from it."""
    over = over_mm(scene, layer)
    if treatment.mount == "wall" and over > TOUCH_MM:
        text = msg(
            "{where}: the {support} runs {by} into the ceiling.",
            support=noun_of(layer),
            where=where(treatment),
            by=Mm(over),
        )
        yield stop(layer.ref, text, over, (lowest_under_ceiling(scene.set_out, layer.support), layer.support.height_mm))


def rod_changes(scene: Scene, treatment: TreatmentOut, layer: LayerOut) -> Iterator[Change]:
    """The rod lowered until it is under the ceiling; else hung from the ceiling itself, or in the reveal."""
    over = over_mm(scene, layer)
    if treatment.mount == "wall" and over > TOUCH_MM:
        yield from rod_height(scene, layer.ref, layer.support.height_mm - over)
        yield from mount_on(scene, treatment.ref, "ceiling")
        yield from mount_on(scene, treatment.ref, "reveal")
